#pragma once
#include <string>

#include "aircraft/aircraft.hpp"
#include "aircraft/type_file.hpp"

namespace stallwright::testing {

/// The docile two-seater as its file describes it.
inline AircraftType marram_type() {
  return load_aircraft_type(std::string(STALLWRIGHT_SOURCE_DIR) + "/aircraft/types/marram.toml");
}

/// It, loaded by default. Seed 0 is the perfectly even airframe.
inline Aircraft marram(std::uint64_t airframe_seed = 0) {
  const AircraftType type = marram_type();
  return make_aircraft(type, default_loading(type), airframe_seed);
}

/// The same without anything that tells left from right: no swirl, torque, gyroscope, asymmetric blade
/// loading nor thrust line to the side. Drag of the propeller is left.
inline Aircraft even_handed(AircraftType type, std::uint64_t airframe_seed = 0) {
  type.propeller.swirl_recovery = 0.0;
  type.propeller.asymmetric_moment = 0.0;
  type.propeller.thrust_line_right_rad = 0.0;
  // Torque and spin: an engine without friction or power, and a propeller that takes no power and hardly any
  // inertia.
  for (double& cp : type.propeller.power_coefficient) cp = 0.0;
  type.propeller.inertia_kgm2 = 1e-12;
  type.engine.rated_power_w = 0.0;
  type.engine.friction_torque_nm = 0.0;
  Aircraft a = make_aircraft(type, default_loading(type), airframe_seed);
  a.idle_throttle = 0.0;
  return a;
}

/// Engine that gives nothing: what turns the propeller is the air, what brakes it is friction.
inline Aircraft without_power(Aircraft a) {
  a.idle_throttle = 0.0;
  return a;
}

}  // namespace stallwright::testing
