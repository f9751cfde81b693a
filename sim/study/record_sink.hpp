#pragma once
#include <algorithm>
#include <array>
#include <set>

#include "sim/sortie/sortie.hpp"

namespace stallwright {

/// Less than this share of the root's chord attached is a stalled wing.
inline constexpr double kStalledRoot = 0.5;

/// On the way to a point or on it.
inline constexpr std::array kHeldPhases{Phase::clearing, Phase::transit, Phase::settle, Phase::record};
inline bool is_held(Phase phase) {
  return std::find(kHeldPhases.begin(), kHeldPhases.end(), phase) != kHeldPhases.end();
}

/// Keeps the rows of records, and the one after each so that two in a row stay two: all that is reduced and judged, and a
/// small part of a sortie. Of the rest it keeps at which points of the card the wing stalled while they were being held.
class RecordSink : public MemorySink {
 public:
  bool wants(const Marks& marks, double attached_root) override {
    // As truth.csv would print it.
    if (is_held(marks.phase) && as_printed(attached_root, 5) < kStalledRoot) stalled_.insert(marks.point);
    const bool wanted = marks.recording || recording_;
    recording_ = marks.recording;
    return wanted;
  }

  /// As new, but with the room that it has had.
  void forget() {
    log.clear();
    truth.clear();
    recording_ = false;
    stalled_.clear();
  }

  /// As wing_stalled_at tells it from all the rows.
  std::vector<bool> wing_stalled_at(const TestCard& card) const {
    std::vector<bool> out(card.points.size(), false);
    for (std::size_t k = 0; k < out.size(); ++k)
      out[k] = card.points[k].is_steady() && stalled_.contains(static_cast<int>(k) + 1);
    return out;
  }

 private:
  bool recording_ = false;
  std::set<int> stalled_;  ///< numbers of points, from 1
};

}  // namespace stallwright
