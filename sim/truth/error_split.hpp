#pragma once
#include <map>
#include <vector>

#include "sim/reduction/reduce.hpp"
#include "sim/truth/judge.hpp"
#include "sim/truth/steady_surface.hpp"

namespace stallwright {

/// The errors of set points taken apart, on the one flight that was flown.
///
/// A chain of rows goes from what the recorder saw to what the truth says; the one estimator (`reduce`) is applied to each
/// over the same windows, and what it moves from one link to the next is that link's part, in knots through the one map:
///   seen      the recorder's rows
///   ideal     the same moments with ideal instruments and the true mass                  sensor = seen - ideal
///   smooth    ideal instruments aboard the same handling without gusts (SmoothTwin)      air = ideal - smooth
///   static    steady points: what the probe would show in steady flight at the lift area and thrust that were held;
///             stalls: the lift that steady flight makes at the ratio of the moment, and no lag assumed
///   truth                                                                     hold = static - truth (steady points)
/// For stalls  entry rate = smooth - static  is what the lag of lift did beyond the lag that the estimator takes out (to
/// the readings at break and peak: the whole overshoot); nothing is held in a stall. What is left is the remainder: unsteady flow of the handling itself at steady points, the
/// estimator's own fault on a perfect record of a stall. The pilot's answer to the air (speed, power) counts as hold.
/// The parts add up to the error (1e-9). Whoever reduced the log: a difference from this estimator is in the remainder.
///
/// This departs from taking the gusts out of the flow at the probe while the path stays as it was: an aeroplane rides slow
/// gusts, and a path of which the air has been taken away stands at angles that were never flown (some degrees in light air).

/// What steady flight reads near each steady point of a card; once for an aeroplane as loaded.
struct SplitReference {
  std::map<std::size_t, SteadySurface> around;  ///< by card point
};
SplitReference split_reference(const Aircraft& aircraft, const TestCard& card,
                               const std::vector<TrueSet>& truth, const StillAir& air);

/// Rows of one link of the chain. Down to `smooth` they are rounded as a log is; static rows have targets at which the
/// lift area wanted is the truth's to the last digit (weight there is 0.03 % less than on the ground), so that what is held
/// exactly has no part at all.
std::vector<LogRow> ideal_rows(const std::vector<LogRow>& log, const std::vector<TruthRow>& truth,
                               const TestCard& card, const AircraftType& type, double mass_kg);
std::vector<LogRow> smooth_rows(const std::vector<LogRow>& ideal, const std::vector<TruthRow>& truth);
std::vector<LogRow> static_rows(const std::vector<LogRow>& smooth, const std::vector<TruthRow>& truth,
                                const TestCard& card, const Aircraft& aircraft,
                                const std::vector<TrueSet>& true_sets, const SplitReference& reference);

/// Fills in the splits of a judgement. A point that some link of the chain does not give has none; without the twin's rows
/// none has.
///   instruments    only for the budgets, which play no part
///   assumed_lag_s  of the estimator, for all links but the static one
void split_errors(Judgement& judgement, const std::vector<LogRow>& log, const std::vector<TruthRow>& truth,
                  const TestCard& card, const Aircraft& aircraft, const InstrumentGrade& instruments,
                  const std::vector<TrueSet>& true_sets, const SplitReference& reference,
                  double assumed_lag_s = kAssumedLiftLag_s);

}  // namespace stallwright
