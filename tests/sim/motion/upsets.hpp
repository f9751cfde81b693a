#pragma once
#include "sim/motion/flight.hpp"
#include "sim/random/philox.hpp"

namespace stallwright::testing {

/// Uniform numbers of one random flight, in the order they are asked for.
class Draw {
 public:
  explicit Draw(std::uint64_t seed) : stream_{seed, 0, random::Channel::kCard} {}
  double between(double low, double high) { return low + (high - low) * random::uniform(stream_, tick_++); }
  bool chance(double share) { return between(0.0, 1.0) < share; }
  double noise() { return random::normal({stream_.seed, 1, stream_.channel}, tick_++); }

 private:
  random::Stream stream_;
  std::uint64_t tick_ = 0;
};

/// Attitude drawn evenly from all there are (Shoemake's three uniforms, from memory).
inline Quaternion<double> any_attitude(Draw& draw) {
  const double u = draw.between(0.0, 1.0), a = draw.between(0.0, 2.0 * math::kPi),
               b = draw.between(0.0, 2.0 * math::kPi);
  return {math::sqrt(1.0 - u) * math::sin(a), math::sqrt(1.0 - u) * math::cos(a),
          math::sqrt(u) * math::sin(b), math::sqrt(u) * math::cos(b)};
}

/// A state the aeroplane could have been thrown into: half of them upsets, with the flow from anywhere, at
/// any speed from rest to 1.2 V_NE and rates up to 150 deg/s; the others near flight. Flow memory and
/// controls anywhere in their ranges.
inline FlightState<double> any_state(const Aircraft& a, Draw& draw) {
  FlightState<double> s;
  const bool upset = draw.chance(0.5);
  const double fastest = 1.2 * a.type.limits.v_ne_mps;
  s.rigid.position_E_m = {0.0, 0.0, -draw.between(500.0, 4000.0)};
  s.rigid.attitude_EB = any_attitude(draw);
  const double speed = draw.between(upset ? 0.0 : 15.0, fastest);
  const double alpha = upset ? draw.between(-math::kPi, math::kPi) : draw.between(-0.1, 0.35);
  const double beta = upset ? draw.between(-1.5, 1.5) : draw.between(-0.3, 0.3);
  s.rigid.velocity_B_mps = {speed * math::cos(beta) * math::cos(alpha), speed * math::sin(beta),
                            speed * math::cos(beta) * math::sin(alpha)};
  const double rate = upset ? 150.0 * math::kDegree : 30.0 * math::kDegree;
  s.rigid.rate_B_radps = {draw.between(-rate, rate), draw.between(-rate, rate), draw.between(-rate, rate)};

  AirframeState<double>& f = s.airframe;
  for (std::size_t i = 0; i < kStrips; ++i) {
    f.inflow_mps[i] = draw.between(-3.0, 3.0);
    f.lagged_alpha_rad[i] = upset ? draw.between(-math::kPi, math::kPi) : draw.between(-0.2, 0.5);
    f.separation[i] = draw.between(0.0, 1.0);
  }
  for (double& w : f.downwash_mps) w = draw.between(-2.0, 5.0);
  for (double& w : f.sidewash_mps) w = draw.between(-2.0, 2.0);
  f.wake = draw.between(0.0, 1.0);
  f.elevator_rad = draw.between(-a.type.elevator.max_negative_rad, a.type.elevator.max_positive_rad);
  f.aileron_rad = draw.between(-a.type.aileron.max_negative_rad, a.type.aileron.max_negative_rad);
  f.rudder_rad = draw.between(-a.type.rudder.max_negative_rad, a.type.rudder.max_positive_rad);
  f.flap_rad = draw.between(0.0, a.type.flaps.back().deflection_rad);
  f.throttle = draw.between(0.0, 1.0);
  f.propeller_radps = draw.between(0.0, 1.1 * a.type.engine.rated_speed_radps);
  return s;
}

/// Hands anywhere: each lever at a stop now and then, mostly between.
inline Controls<double> any_controls(const Aircraft& a, Draw& draw) {
  const auto lever = [&] { return math::clamp(draw.between(-1.4, 1.4), -1.0, 1.0); };
  Controls<double> c;
  c.stick_aft = lever();
  c.stick_right = lever();
  c.pedal_right = lever();
  c.throttle = math::clamp(draw.between(-0.3, 1.3), 0.0, 1.0);
  c.flap_rad = draw.between(0.0, a.type.flaps.back().deflection_rad);
  return c;
}

/// Energy of the flight, J: kinetic, of height, and of the turning propeller (its rate counted against the
/// air, its inertia left in the airframe's tensor: what the equations of motion hold).
///   m v^2/2 + w.I w/2 + m g0 r0 h/(r0 + h) + J_p Omega^2/2;  the height term is the integral of gravity
inline double energy_j(const Aircraft& a, const FlightState<double>& s) {
  const double h = -s.rigid.position_E_m.z;
  const Vec3<double>& v = s.rigid.velocity_B_mps;
  const Vec3<double>& w = s.rigid.rate_B_radps;
  const double omega = s.airframe.propeller_radps;
  return 0.5 * a.mass.mass_kg * dot(v, v) + 0.5 * dot(w, a.mass.inertia * w) +
         a.mass.mass_kg * kStandardGravity_mps2 * geopotential_height(h) +
         0.5 * a.type.propeller.inertia_kgm2 * omega * omega;
}

}  // namespace stallwright::testing
