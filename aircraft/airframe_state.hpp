#pragma once
#include <array>

#include "aircraft/strip.hpp"

namespace stallwright {

/// All that the airframe remembers from one moment to the next, apart from its motion.
/// Plain numbers only, so that it can be stepped as one array.
template <class T>
struct AirframeState {
  /// Lagging part of the induced normal velocity at each strip (downwash positive): the whole of it is this and
  /// kShedShare of the strip's own normal velocity, which the vorticity that it has just shed takes at once.
  std::array<T, kStrips> inflow_mps{};
  std::array<T, kStrips> lagged_alpha_rad{};  ///< angle of attack that the boundary layer has seen
  std::array<T, kStrips> separation{};        ///< x, 1 attached .. 0 separated from the leading edge
  std::array<T, kTailStrips> downwash_mps{};  ///< from the wing, at each tail strip, after the travel time
  std::array<T, kFinStrips> sidewash_mps{};   ///< from the wing, at each fin strip (to the right positive)
  T wake{};  ///< share of the wing root that is separated, as the tail meets it
  T elevator_rad{}, aileron_rad{}, rudder_rad{};  ///< trailing edge down / rolling right / trailing edge left
  T flap_rad{};
  T throttle{};  ///< as the engine feels it, 0 idle .. 1 full
  T propeller_radps{};

  friend bool operator==(const AirframeState&, const AirframeState&) = default;
};

/// What the hands ask for. Stick aft, stick right, right pedal positive, each -1..1; throttle 0..1; flap rad.
template <class T>
struct Controls {
  T stick_aft{}, stick_right{}, pedal_right{};
  T throttle{};
  T flap_rad{};

  friend bool operator==(const Controls&, const Controls&) = default;
};

inline constexpr std::size_t kShakes = 6;  ///< left/right outer wing, left/right inner wing, left/right tail

/// The air that meets the aeroplane at one moment, as far as the airframe needs to know it.
///   velocity_B  of the centre of gravity through the air, m/s;  rate_B  of the body against the air's own rotation, rad/s
///   shake       unit-variance noise that separated flow turns into buffet
template <class T>
struct RelativeFlow {
  Vec3<T> velocity_B, rate_B;
  T density_kgpm3{};
  std::array<T, kShakes> shake{};
};

}  // namespace stallwright
