#pragma once
#include <string>
#include <vector>

#include "render/view/hold_figures.hpp"
#include "sim/report/sortie_summary.hpp"

namespace stallwright::view {

/// One thing to work on: what, in two or three words, and a sentence with its numbers.
struct WorkItem {
  std::string what, sentence;
  bool danger = false;
};

/// What is looked at.
struct WorkInput {
  std::vector<HoldFigures> records;
  std::vector<PointCount> counts;
  std::vector<SortieEvent> events;
  double sigma_kt = kNone;  ///< rms of the gusts, kt; NaN: not known
};

/// From what share of a band's half width on an rms is worth a word: at half of it a tenth of the samples stand near an edge.
inline constexpr double kWorthSayingShare = 0.5;
/// A steady offset from the target of this much is a habit, kt.
inline constexpr double kOffset_kt = 0.6;

/// Things that the numbers show, gravest first; one entry that says so when there is nothing. Pure.
///   safety first (stalls nobody asked for, points knocked off), then records off condition or out of band, then hands (speed,
///   bank, ball, entry rate, stick let go), then time lost (attempts, timeouts).
std::vector<WorkItem> work_on(const WorkInput& input);

}  // namespace stallwright::view
