#pragma once
#include <span>
#include <vector>

#include "sim/random/philox.hpp"
#include "sim/reduction/intervals.hpp"
#include "sim/reduction/set_points.hpp"

namespace stallwright {

/// How much of the variance of an output goes back to one input of it.
///   first order  S  = V(E(y | x_i))/V(y): the share that would go if the input were known and the others were not
///   total        ST = E(V(y | all but x_i))/V(y): the share that would stay if all others were known; ST - S is what the
///                     input does together with others
struct SobolIndex {
  double first = kNone, total = kNone;
  Interval first_interval{kNone, kNone},
      total_interval{kNone, kNone};  ///< 95 %, bootstrap over the base points
  int used = 0;                      ///< base points whose three outputs exist
};

/// Outputs of a SaltelliSample in its order, n (d + 2) of them, NaN where there is none. For each input
///   S  = 1/n sum_j (f(B)_j - m) (f(AB_i)_j - f(A)_j) / V                    [SALTELLI-2010 table 2 (b)]
///   ST = 1/(2n) sum_j (f(A)_j - f(AB_i)_j)^2 / V                            [JANSEN-1999; SALTELLI-2010 table 2 (f)]
///   m, V  mean and variance of f(A) and f(B) together. The printed (b) has no m: its mean is the same, its scatter greater.
/// over the base points that have all three outputs. An output that does not vary (V = 0), and fewer than two points: none.
/// Estimates are not clipped: from few points they may come out under 0 or over 1.
///   stream  of the bootstrap; 1000 resamples of the base points; input i takes stream.sortie + i
std::vector<SobolIndex> sobol_indices(std::span<const double> outputs, int inputs,
                                      const random::Stream& stream);

}  // namespace stallwright
