#pragma once
#include <cmath>

namespace stallwright::input {

/// A throttle lever beside keys, and at the start of a flight: the lever counts once it has been moved, so that power does
/// not jump because a lever lies somewhere.
struct LeverTakeover {
  double lay_at = 0.0;
  bool seen = false, counts = false;
};

inline constexpr double kLeverMoved = 0.02;  ///< share of the travel

/// With the lever at `now`, 0 .. 1.
inline LeverTakeover advance(LeverTakeover lever, double now) {
  if (!lever.seen) lever = {now, true, false};
  if (std::abs(now - lever.lay_at) > kLeverMoved) lever.counts = true;
  return lever;
}

}  // namespace stallwright::input
