#pragma once
#include "aircraft/airframe.hpp"
#include "sim/motion/runge_kutta.hpp"
#include "tests/sim/motion/marram.hpp"

namespace stallwright::testing {

/// Nothing that turns: what is left is the airframe's own.
inline Aircraft airframe_alone(std::uint64_t seed = 0) {
  AircraftType type = marram_type();
  for (double& c : type.propeller.thrust_coefficient) c = 0.0;
  for (double& c : type.propeller.power_coefficient) c = 0.0;
  return make_aircraft(type, default_loading(type), seed);
}

/// Air that meets the aeroplane at a speed, angle of attack and sideslip, at sea-level density.
inline RelativeFlow<double> flow_at(double speed_mps, double alpha_rad, double beta_rad = 0.0) {
  RelativeFlow<double> flow;
  flow.velocity_B = {speed_mps * math::cos(beta_rad) * math::cos(alpha_rad), speed_mps * math::sin(beta_rad),
                     speed_mps * math::cos(beta_rad) * math::sin(alpha_rad)};
  flow.density_kgpm3 = 1.225;
  return flow;
}

inline AirframeState<double> attached(double propeller_radps = 150.0) {
  AirframeState<double> s;
  s.separation.fill(1.0);
  s.propeller_radps = propeller_radps;
  return s;
}

/// The model held in a steady stream: controls and propeller speed as they are, flow memory left to settle.
inline AirframeState<double> settled(const Aircraft& a, AirframeState<double> s,
                                     const RelativeFlow<double>& flow, double time_s = 3.0) {
  for (int i = 0; i < static_cast<int>(time_s * 100.0); ++i)
    s = runge_kutta_step(s, 0.01, [&](const AirframeState<double>& at) {
      AirframeState<double> rate = airframe_loads(a, at, flow, Controls<double>{}).rate;
      rate.elevator_rad = rate.aileron_rad = rate.rudder_rad = rate.flap_rad = 0.0;
      rate.throttle = rate.propeller_radps = 0.0;
      return rate;
    });
  return s;
}

/// Loads once the flow has settled.
inline AirframeLoads<double> measured(const Aircraft& a, const AirframeState<double>& s,
                                      const RelativeFlow<double>& flow) {
  return airframe_loads(a, settled(a, s, flow), flow, Controls<double>{});
}

/// Lift of the whole, N: force square to the flow, upwards.
inline double lift_n(const AirframeLoads<double>& loads, double alpha_rad) {
  return loads.force_B.x * math::sin(alpha_rad) - loads.force_B.z * math::cos(alpha_rad);
}

}  // namespace stallwright::testing
