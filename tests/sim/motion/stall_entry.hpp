#pragma once
#include <stdexcept>

#include "sim/motion/trim.hpp"

namespace stallwright::testing {

struct Flight {
  FlightState<double> state;
  Controls<double> controls;
};

/// An idle glide at a speed, in still air at sea-level density, flaps up.
inline Flight glide(const Aircraft& aircraft, double speed_mps, double altitude_m = 1000.0) {
  TrimCondition c;
  c.true_airspeed_mps = speed_mps;
  c.power = TrimCondition::Power::throttle;
  c.altitude_m = altitude_m;
  const Trim t = find_trim(aircraft, c);
  if (!t.converged) throw std::runtime_error("no glide found");
  return {t.state, t.controls};
}

/// The glide with the stick moved aft in no time (the elevator is where it asks): from there on the controls
/// stay, the aeroplane slows down, stalls and drops its nose, and nothing but the flow decides how.
inline Flight stall_entry(const Aircraft& aircraft, double speed_mps, double stick_aft) {
  Flight f = glide(aircraft, speed_mps);
  f.controls.stick_aft = stick_aft;
  f.state.airframe.elevator_rad = geared(aircraft.type.elevator, -stick_aft);
  return f;
}

inline double alpha_rad(const FlightState<double>& s) {
  return math::atan2(s.rigid.velocity_B_mps.z, s.rigid.velocity_B_mps.x);
}

}  // namespace stallwright::testing
