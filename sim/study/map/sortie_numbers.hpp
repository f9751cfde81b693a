#pragma once
#include <optional>
#include <string>
#include <vector>

#include "sim/study/fly_many.hpp"
#include "sim/study/nested_windows.hpp"

namespace stallwright {

/// What a map keeps of one set point and window in one sortie.
struct LineNumbers : WindowValue {
  /// Records altogether that would bring the interval under what the card wants, 1 to 9; 0: no number does, or not found.
  int records_wanted = 0;
};

/// What a map keeps of one sortie: its numbers, and none of its rows.
struct SortieNumbers {
  std::string failure;  ///< as in StudySortie; empty: all went well
  std::optional<Verdict>
      verdict;  ///< none when nothing could be reduced; without what the warning protects elsewhere
  std::optional<bool> out_of_order;                  ///< some complete set is; none when no set is complete
  double hold_rms_kt = kNone, gust_rms_mps = kNone;  ///< record_rms of the whole records
  /// Speed at which the recorded warning ratio is reached less the true 1 g stall speed, through the one map of ratio to
  /// speed; the least of all sets that have one.
  double warning_margin_kt = kNone;
  std::vector<LineNumbers> lines;  ///< in the order of window_lines
};

/// Reduces a sortie that has ended, once for each window length, and takes its numbers. The whole records are reduced and
/// judged exactly as fly_and_judge does; the verdict knows the gusts, as a debrief does. The rows are used up.
SortieNumbers sortie_numbers(EndedSortie& ended, const SortieConfig& config,
                             const std::vector<TrueSet>& truth);

}  // namespace stallwright
