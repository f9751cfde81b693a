#pragma once
#include <string>
#include <vector>

#include "sim/reduction/flight_log.hpp"
#include "sim/reduction/set_points.hpp"
#include "sim/sensing/instrument_grade.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// Lag of lift behind angle that the reduction takes out of a stall, s.
inline constexpr double kAssumedLiftLag_s = 0.4;

/// What the estimator takes for granted; other terms serve to take an error apart (sim/truth/error_split.hpp).
struct ReductionTerms {
  double lift_lag_s = kAssumedLiftLag_s;
  const SetPoints* breaks = nullptr;  ///< breaks are taken from its windows instead of being looked for
};

/// From a log and its card to set points, without any knowledge of the aeroplane or of the truth.
///
/// Steady points. Every record gives three readings: the ratio at the button, the mean over the window, and the
/// lift-corrected one, which is adopted:
///   r* = mean(r) + b(x_t) (x_t - mean(x)),   x = n m g/q_c,  x_t = m g/q_c(target),  b = dr/dx
/// b is the slope of one curve (straight line to parabola, by how many different points there are) through all the
/// samples of all the steady points of the set. Ratio is nearly linear in x, and speed error, load factor and most
/// of a gust move both together: that is what the correction takes out.
///
/// Stalls. Adopted: the ratio at maximum lift, the vertex of a parabola through filtered x against filtered ratio,
/// before the break and within 4 % of the largest x (14 CFR 25.103 corrects for load factor in the same way [14CFR25]).
/// The ratio is taken behind the lag of separating flow, 0.4 s: lift lags angle, and against the bare ratio its maximum
/// would come out late by lag times rate (half a knot at 1 kt/s, well over one at 3 kt/s). How well that lag is known is a Type B
/// term; if repeats at two entry rates exist, what is left is corrected by a straight line in the rate of ratio.
///
/// Uncertainty: Type A from the scatter about the curve with its autocorrelation, Type B from the instruments' grade;
/// combined and expanded by JCGM 100 [JCGM-100].
///   instruments  whose errors the budget states
///   terms        as they stand for a recorder's rows
SetPoints reduce(const std::vector<LogRow>& rows, const TestCard& card, const InstrumentGrade& instruments,
                 const ReductionTerms& terms = {});

/// Bits of it, for tests and the debrief.
struct SetSlope {
  std::vector<double> coefficients;  ///< of r = c0 + c1 x + c2 x^2
  double at(double x) const;         ///< b(x)
};

}  // namespace stallwright
