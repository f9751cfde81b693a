#pragma once
#include "aircraft/aircraft_type.hpp"

namespace stallwright {

/// The aeroplane's own stall warning, with its own setting from the type file: it knows nothing of probe or set points.
/// It sounds above the angle
///   alpha_horn(delta) = horn_alpha + shift(delta)
///   shift  what the flaps move the wing's stalling angle by (flap.setting stall_shift), between the settings in a straight line
/// A vane at the leading edge feels the same flow that decides where the section lets go (common practice). It comes on
/// after 0.1 s above and goes off a half degree below, as a vane with a little friction does.
struct StallHorn {
  double above_s = 0.0;
  bool sounds = false;
};

double horn_alpha_rad(const AircraftType& type, double flap_rad);

/// One sample later; pure. Below 15 m/s there is not enough air to move the vane.
StallHorn advance(const StallHorn& before, const AircraftType& type, double alpha_rad, double flap_rad,
                  double airspeed_mps, double dt_s);

}  // namespace stallwright
