#pragma once
#include <string>

#include "aircraft/type_file.hpp"
#include "tests/sim/motion/wind_tunnel.hpp"

namespace stallwright::published {

inline constexpr double kTunnelSpeed_mps = 30.0;

inline AircraftType type_named(const std::string& name) {
  return load_aircraft_type(std::string(STALLWRIGHT_SOURCE_DIR) + "/aircraft/types/" + name + ".toml");
}

/// An aeroplane in the tunnel, its propeller giving and taking nothing.
inline Aircraft in_tunnel(const std::string& name, std::uint64_t airframe_seed = 0) {
  AircraftType type = type_named(name);
  for (double& c : type.propeller.thrust_coefficient) c = 0.0;
  for (double& c : type.propeller.power_coefficient) c = 0.0;
  return make_aircraft(type, default_loading(type), airframe_seed);
}

/// Flow memory as it is after the angle has risen slowly from attached flow (controls as given).
inline AirframeState<double> risen_to(const Aircraft& a, double alpha_rad,
                                      AirframeState<double> s = testing::attached()) {
  for (double at = math::min(alpha_rad, 8.0 * math::kDegree); at < alpha_rad; at += math::kDegree)
    s = testing::settled(a, s, testing::flow_at(kTunnelSpeed_mps, at), 0.5);
  return testing::settled(a, s, testing::flow_at(kTunnelSpeed_mps, alpha_rad), 2.0);
}

/// Coefficients of one steady point: lift, drag, and moments over span (roll, yaw) or chord (pitch).
struct TunnelReading {
  double lift, drag, roll, pitch, yaw;
};
inline TunnelReading reading(const Aircraft& a, const AirframeState<double>& s, double alpha_rad,
                             double beta_rad = 0.0) {
  const RelativeFlow<double> flow = testing::flow_at(kTunnelSpeed_mps, alpha_rad, beta_rad);
  const auto loads = airframe_loads(a, s, flow, Controls<double>{});
  const double q = 0.5 * 1.225 * kTunnelSpeed_mps * kTunnelSpeed_mps * a.wing_area_m2;
  return {testing::lift_n(loads, alpha_rad) / q, -dot(loads.force_B, flow.velocity_B) / kTunnelSpeed_mps / q,
          loads.moment_B.x / q / a.span_m, loads.moment_B.y / q / a.mean_chord_m,
          loads.moment_B.z / q / a.span_m};
}

/// Angle of the greatest lift as the angle rises slowly, to a quarter of a degree, rad.
inline double stall_angle(const Aircraft& a) {
  AirframeState<double> s = testing::attached();
  double best = -1.0, at = 0.0;
  for (double alpha = 8.0 * math::kDegree; alpha < 22.0 * math::kDegree; alpha += 0.25 * math::kDegree) {
    s = testing::settled(a, s, testing::flow_at(kTunnelSpeed_mps, alpha), 0.4);
    const double lift = reading(a, s, alpha).lift;
    if (lift > best) best = lift, at = alpha;
    if (lift < 0.97 * best) break;
  }
  return at;
}

/// The even aeroplane, its stick half aft as in a stall entry (a tail at no deflection would itself stall), at an
/// angle of attack to which it has risen slowly.
struct Held {
  Aircraft aircraft;
  AirframeState<double> state;
  double alpha_rad;
};
Held held(const Aircraft& a, double alpha_rad);

/// Derivatives by one-sided differences from the held state, 1/rad; controls by 5 deg of deflection, positive where
/// they work as they do in attached flow (stick aft: nose up; stick right: rolls right; right pedal: nose right).
struct Derivatives {
  double roll_by_sideslip, yaw_by_sideslip, pitch_by_alpha, elevator, aileron, rudder;
};
Derivatives derivatives(const Held& h);

}  // namespace stallwright::published
