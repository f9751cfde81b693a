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
  AirSample<double> air;
  air.density_kgpm3 = density_kgpm3;
  constexpr double kStick = 0.03;
  // Greatest rate within the first second after a small step of one control: what a hand learns to expect.
  const auto answer = [&](double aft, double right) {
    FlightState<double> s = about.state;
    Controls<double> c = about.controls;
    c.stick_aft += aft;
    c.stick_right += right;
    double most = 0.0;
    for (int i = 0; i < 100; ++i) {
      s = flight_step(aircraft, s, c, air);
      const Vec3<double>& w = s.rigid.rate_B_radps;
      most = std::max(most, aft != 0.0 ? w.y : w.x);
    }
    return most / kStick;
  };
  ControlFeel feel;
  feel.reference_mps = about.true_airspeed_mps;
  feel.pitch_rate_per_stick = answer(kStick, 0.0);
  feel.roll_rate_per_stick = answer(0.0, kStick);
  // Thrust power over weight, less what the propeller cannot give: rated power at 0.7.
  feel.climb_per_throttle =
      0.7 * aircraft.type.engine.rated_power_w / (aircraft.mass.mass_kg * kStandardGravity_mps2);
  return feel;
}

}  // namespace stallwright
