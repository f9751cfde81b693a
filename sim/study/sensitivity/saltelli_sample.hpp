#pragma once
#include <cstdint>
#include <vector>

namespace stallwright {

/// The sample from which Sobol' indices are estimated: two independent samples A and B of the unit cube, n base points each,
/// and, for each input i, A with its column i taken from B.                            [SALTELLI-2010 eq. 12, table 2]
/// Point j of A and B together is point j of a Sobol' sequence (Boost's, after TOMS 659) of twice as many dimensions as there
/// are inputs; every dimension is scrambled by a word of its own, exclusive or, keyed by `seed`. n should be a power of 2.
struct SaltelliSample {
  int base = 0;    ///< n
  int inputs = 0;  ///< d
  /// n (d + 2) points of d numbers between 0 and 1. For each j: A_j, B_j, A_j with number 0 of B_j, with number 1 of B_j, ...
  std::vector<std::vector<double>> points;

  int columns() const { return inputs + 2; }
};

SaltelliSample saltelli_sample(int inputs, int base, std::uint64_t seed);

}  // namespace stallwright
