#pragma once
#include <array>
#include <cstddef>

#include "render/flight/snapshot.hpp"

namespace stallwright::view {

/// One set point on the probe scale.
struct Peg {
  std::array<char, 64> name{};  ///< UTF-8, ends with 0; a longer one is cut between letters
  double ratio = 0.0;
  double low = 0.0, high = 0.0;  ///< its 95 % interval
  double flap_deg = 0.0;
  bool lit = false;  ///< of the flap setting nearest to where the flaps are now
};

inline constexpr std::size_t kPegs = 48;  ///< a card has at most 40 points; what is beyond is left off

/// The ruler along the glareshield: probe ratio, low (fast) on the left, high (slow) on the right.
struct ProbeScaleView {
  double ratio = 0.0;           ///< where the needle stands, not limited to the ruler
  double from = 0.0, to = 0.0;  ///< of the ruler
  std::array<Peg, kPegs> pegs{};
  std::size_t peg_count = 0;  ///< 0: no set points yet
};

/// The usual ruler. Steady flight of our three types spans about -0.9 (flaps down, fast) to 0.8 (stall).
inline constexpr double kRulerFrom = -1.0, kRulerTo = 1.2;
/// It grows by steps of this, only for a peg or whisker that would stand off it; never for the needle, which would make the
/// pegs wander.
inline constexpr double kRulerStep = 0.2;

/// The scale as of this snapshot: needle after its lag, set points recorded so far. Pure, and without allocation.
ProbeScaleView probe_scale_view(const Snapshot& now);

}  // namespace stallwright::view
