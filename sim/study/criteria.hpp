#pragma once
#include <string>
#include <vector>

#include "sim/study/coverage.hpp"

namespace stallwright {

/// What the 95 % interval of a set point is held to: that it holds the truth in 90 to 99 % of sorties. Less
/// is a promise broken, if that share is known well enough to say so: 95 % must lie beyond the interval of Clopper and
/// Pearson (StudyRow::coverage_interval). Of 20 sorties 16 are too few and 17 say nothing; from 100 on that
/// interval is so short that the 90 % alone decide. More than 99 % is a promise kept, but too dear: the interval is
/// wider than it need be, and one says through what.
inline constexpr double kLeastCoverage = 0.90;
inline constexpr double kStatedCoverage = 0.95;
inline constexpr double kMostCoverage = 0.99;

enum class CoverageCall {
  not_asked,     ///< a stall; the warning in moderate air, where gusts may stall the wing; any point in worse
                 ///< air
  none_found,    ///< no sortie gave this set point
  below,         ///< under 90 %, and 95 % refuted
  holds,         ///< neither below nor above
  conservative,  ///< above 99 %
};

/// Steady points in calm and light air; in moderate air the fast reference and the approach.
CoverageCall coverage_call(const StudyRow& row, const AirPreset& air);

/// "holds", "wide", "BELOW", "NONE"; a dash where nothing is asked.
std::string coverage_word(CoverageCall call);

/// One sentence that is true or not.
struct Criterion {
  std::string text;
  bool holds = false;
};

/// Beside the coverage of each row:
///   - coverage: every row that it is asked of (one criterion);
///   - in rougher air the window mean is worse: its RMS error rises from each air to the next of rising
///   severity, at every
///     steady point (one criterion for each point; with two airs of different severity or more);
///   - an unintended stall always ends in the verdict to wait for better air, and so does a wing that stalled
///   in truth at
///     a steady point, whether or not anybody aboard noticed;
///   - every sortie was finished.
std::vector<Criterion> study_criteria(const Study& study);

/// A row above 99 %, and through what, in words; empty for others.
std::string conservative_note(const StudyRow& row, const AirPreset& air);

}  // namespace stallwright
