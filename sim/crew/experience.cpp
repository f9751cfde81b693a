#include "sim/crew/experience.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace stallwright {
namespace {

TrimCondition condition_for(PowerRule power, double descent_mps, double flap_rad, double altitude_m,
                            double density_kgpm3) {
  TrimCondition c;
  c.flap_rad = flap_rad;
  c.altitude_m = altitude_m;
  c.density_kgpm3 = density_kgpm3;
  c.power = power == PowerRule::idle ? TrimCondition::Power::throttle : TrimCondition::Power::path;
  c.climb_mps = power == PowerRule::descent ? -descent_mps : 0.0;
  return c;
}

/// Rates of the body a moment after a small change, by finite difference of the derivative itself.
FlightState<double> rates(const Aircraft& aircraft, const FlightState<double>& s, double density_kgpm3) {
  AirSample<double> air;
  air.density_kgpm3 = density_kgpm3;
  return flight_derivative(aircraft, s, Controls<double>{}, air).rate;
}

}  // namespace

SteadyCurve steady_curve(const Aircraft& aircraft, PowerRule power, double descent_mps, double flap_rad,
                         double altitude_m, double density_kgpm3, double fastest_mps) {
  TrimCondition c = condition_for(power, descent_mps, flap_rad, altitude_m, density_kgpm3);
  std::vector<Trim> found;
  double step = 1.0;
  for (double v = fastest_mps; v > 8.0; v -= step) {
    c.true_airspeed_mps = v;
    const Trim t = find_trim(aircraft, c, found.empty() ? nullptr : &found.back());
    if (t.converged && t.controls.stick_aft < 1.0) {
      found.push_back(t);
    } else if (found.empty()) {
      throw std::runtime_error("no steady flight at the fastest speed of the card");
    } else if (step > 0.3) {
      v = found.back().true_airspeed_mps;  // nearer the stall: shorter steps from the last one found
      step = 0.25;
    } else {
      break;
    }
  }
  SteadyCurve curve;
  for (auto t = found.rbegin(); t != found.rend(); ++t) {
    curve.speed_mps.push_back(t->true_airspeed_mps * math::sqrt(density_kgpm3 / 1.225));
    curve.pitch_rad.push_back(euler_angles(t->state.rigid.attitude_EB).pitch_rad);
    curve.throttle.push_back(t->controls.throttle);
    curve.stick_aft.push_back(t->controls.stick_aft);
    curve.alpha_rad.push_back(t->alpha_rad);
  }
  return curve;
}

ControlFeel control_feel(const Aircraft& aircraft, const Trim& about, double density_kgpm3) {
  const FlightState<double> base = rates(aircraft, about.state, density_kgpm3);
  const double v = about.true_airspeed_mps;
  const auto change = [&](auto&& edit) {
    FlightState<double> s = about.state;
    edit(s);
    return rates(aircraft, s, density_kgpm3);
  };
  constexpr double kStick = 0.05, kRate = 0.02, kAlpha = 0.005;
  const AircraftType& type = aircraft.type;
  const auto elevator = change([&](auto& s) { s.airframe.elevator_rad -= kStick * type.elevator.max_negative_rad; });
  const auto pitching = change([&](auto& s) { s.rigid.rate_B_radps.y += kRate; });
  const auto steeper = change([&](auto& s) { s.rigid.velocity_B_mps.z += kAlpha * v; });
  const auto aileron = change([&](auto& s) { s.airframe.aileron_rad += kStick * type.aileron.max_negative_rad; });
  const auto rolling = change([&](auto& s) { s.rigid.rate_B_radps.x += kRate; });

  const auto q_dot = [&](const auto& d) { return d.rigid.rate_B_radps.y - base.rigid.rate_B_radps.y; };
  const auto p_dot = [&](const auto& d) { return d.rigid.rate_B_radps.x - base.rigid.rate_B_radps.x; };
  const double m_stick = q_dot(elevator) / kStick, m_q = q_dot(pitching) / kRate, m_alpha = q_dot(steeper) / kAlpha;
  const double l_alpha = -(steeper.rigid.velocity_B_mps.z - base.rigid.velocity_B_mps.z) / (kAlpha * v);

  ControlFeel feel;
  feel.reference_mps = v;
  // Short-period approximation: steady pitch rate per control = M_delta L_alpha/(L_alpha (-M_q) - M_alpha).
  feel.pitch_rate_per_stick = m_stick * l_alpha / std::max(l_alpha * -m_q - m_alpha, 0.5);
  feel.roll_rate_per_stick = p_dot(aileron) / kStick / std::max(-p_dot(rolling) / kRate, 0.5);
  // Thrust power over weight, less what the propeller cannot give: rated power at 0.7.
  feel.climb_per_throttle = 0.7 * type.engine.rated_power_w / (aircraft.mass.mass_kg * kStandardGravity_mps2);
  return feel;
}

}  // namespace stallwright
