#pragma once
#include <array>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "sim/study/study_sortie.hpp"

namespace stallwright {

/// Window lengths that every record is reduced with, as shares of the card's record_s. All begin at the button, so each
/// lies within the one before, and the sortie flown is the same for all.
inline constexpr std::array<double, 3> kWindowShares{1.0, 0.5, 0.25};

/// One set point as reduced from one window length. A stall has no window: it is there once, with window_s none.
struct WindowLine {
  std::size_t set = 0, card_point = 0;
  std::string name;
  bool is_stall = false;
  double share = 1.0;  ///< of the record
  double window_s = kNone;
};

/// What a sortie says to one line. Not found: both numbers are none.
struct WindowValue {
  bool found = false;
  bool covered = false;          ///< the adopted 95 % interval holds the truth
  double error_kt = kNone;       ///< adopted less true, through the one map of ratio to speed
  double half_width_kt = kNone;  ///< of that interval
};

/// Lines of a card: set by set, each steady point with all windows, longest first, then the stall.
std::vector<WindowLine> window_lines(const TestCard& card);

/// Takes the mark of recording from the rows of every steady record that counts but its first share (rounded down to
/// whole rows, never under the 20 that a record must have). Stalls are left alone.
void cut_records(std::vector<LogRow>& log, const TestCard& card, double share);

/// The line's set point, if it was found with an interval and has a truth; else nothing.
const JudgedPoint* point_of(const WindowLine& line, const Judgement& judgement);

/// Reduces and judges a flown log once for each window length, longest first. The log loses its marks of recording on
/// the way.
void for_each_window(std::vector<LogRow>& log, const SortieConfig& config, const std::vector<TrueSet>& truth,
                     const SortieOutcome& outcome,
                     const std::function<void(double share, const Judgement&)>& told);

/// Flies one sortie and reduces its log once for each window length; values in the order of window_lines. A sortie of
/// which nothing can be reduced has no line found.
std::vector<WindowValue> fly_windows(const SortieConfig& config, const std::vector<TrueSet>& truth);

/// Sorties with seeds first_seed, first_seed + 1, ... in that order, whatever the number of threads. Only their values
/// are kept, so that memory is that of one log for each thread.
std::vector<std::vector<WindowValue>> fly_window_sorties(const SortieConfig& base,
                                                         const std::vector<TrueSet>& truth,
                                                         std::uint64_t first_seed, int sorties, int threads,
                                                         const StudyProgress& progress = {});

}  // namespace stallwright
