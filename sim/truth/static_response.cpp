#include "sim/truth/static_response.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "aircraft/math/units.hpp"
#include "sim/air/airspeed.hpp"

namespace stallwright {
namespace {

constexpr double kFreeBeyond_rad = 0.5 * math::kDegree;

TrimCondition condition(double flap_rad, PowerRule power, double descent_mps, const StillAir& air) {
  TrimCondition c;
  c.flap_rad = flap_rad;
  c.altitude_m = air.altitude_m;
  c.density_kgpm3 = air.density_kgpm3;
  c.power = power == PowerRule::idle ? TrimCondition::Power::throttle : TrimCondition::Power::path;
  c.climb_mps = power == PowerRule::descent ? -descent_mps : 0.0;
  return c;
}

StaticPoint read(const Aircraft& aircraft, const Trim& trim, const TrimCondition& c, const StillAir& air) {
  const RelativeFlow<double> flow = relative_flow(trim.state.rigid, trim_air(c));
  const SensedFlow<double> sensed{flow.velocity_B, probe_velocity(aircraft, trim.state.airframe, flow),
                                  air.density_kgpm3, air.pressure_pa};
  const StaticReadings<double> r = static_readings(aircraft.type, sensed);
  StaticPoint p;
  p.found = trim.converged;
  p.indicated_mps = r.indicated_airspeed_mps;
  p.true_airspeed_mps = trim.true_airspeed_mps;
  p.ratio = r.probe_ratio;
  p.alpha_rad = trim.alpha_rad;
  p.lift_area_m2 = trim.load_factor * kStandardGravity_mps2 * aircraft.mass.mass_kg / r.impact_pressure_pa;
  p.climb_mps = trim.climb_mps;
  p.thrust_n = flight_derivative(aircraft, trim.state, trim.controls, trim_air(c)).loads.thrust_n;
  p.thrust_area_m2 = p.thrust_n / r.impact_pressure_pa;
  p.elevator_left = trim.controls.stick_aft < 1.0;
  return p;
}

}  // namespace

StaticPoint steady_at(const Aircraft& aircraft, double flap_rad, PowerRule power, double descent_mps,
                      const StillAir& air, double indicated_mps) {
  TrimCondition c = condition(flap_rad, power, descent_mps, air);
  // Position error depends on angle of attack, so true airspeed is found by iteration; the error is small and smooth.
  double speed = indicated_mps * math::sqrt(1.225 / air.density_kgpm3);
  Trim trim;
  StaticPoint p;
  // Begin well above and come down, so that slow speeds start from a neighbour.
  const double start = std::max(speed, 1.25 * speed);
  bool have = false;
  for (double v = start; v > speed; v -= 2.0) {
    c.true_airspeed_mps = v;
    const Trim next = find_trim(aircraft, c, have ? &trim : nullptr);
    if (!next.converged) continue;
    trim = next;
    have = true;
  }
  for (int i = 0; i < 12; ++i) {
    c.true_airspeed_mps = speed;
    const Trim next = find_trim(aircraft, c, have ? &trim : nullptr);
    if (!next.converged) return {};
    trim = next;
    have = true;
    p = read(aircraft, trim, c, air);
    const double off = indicated_mps - p.indicated_mps;
    if (std::abs(off) < 1e-7) break;
    speed += off * math::sqrt(1.225 / air.density_kgpm3);
  }
  // A flight that asks more of the throttle or a control than there is cannot be flown.
  p.found = p.found && p.elevator_left && trim.within_stops;
  return p;
}

std::vector<StaticPoint> angle_sweep(const Aircraft& aircraft, double flap_rad, PowerRule power,
                                     double descent_mps, const StillAir& air, double from_rad,
                                     double step_rad, double beyond_rad, double bank_rad) {
  TrimCondition c = condition(flap_rad, power, descent_mps, air);
  c.bank_rad = bank_rad;
  const bool turning = bank_rad != 0.0;
  std::vector<StaticPoint> sweep;
  Trim trim;
  bool have = false;
  double best = 0.0, best_alpha = from_rad;
  int failures = 0;
  for (double alpha = from_rad; alpha < 0.8 && alpha <= best_alpha + beyond_rad; alpha += step_rad) {
    c.alpha_rad = alpha;
    // Well past maximum lift the wing will not stay level by itself, and what lateral trim there is belongs to the
    // controls, not to the wing: hold it by decree from here on.
    if (alpha > best_alpha + kFreeBeyond_rad && !turning) c.longitudinal_only = true;
    Trim next = find_trim(aircraft, c, have ? &trim : nullptr);
    if (!next.converged && have && failures >= 2 && !c.longitudinal_only && !turning) {
      c.longitudinal_only = true;
      next = find_trim(aircraft, c, &trim);
    }
    if (next.converged && c.power == TrimCondition::Power::path && next.controls.throttle > 1.0) {
      c.power = TrimCondition::Power::throttle;
      c.throttle = 1.0;
      next = find_trim(aircraft, c, have ? &trim : &next);
    }
    if (!next.converged) {
      if (have && ++failures > (turning ? 4 : 40)) break;
      continue;
    }
    failures = 0;
    trim = next;
    have = true;
    sweep.push_back(read(aircraft, trim, c, air));
    if (sweep.back().lift_area_m2 > best && sweep.back().elevator_left) {
      best = sweep.back().lift_area_m2;
      best_alpha = alpha;
    }
  }
  return sweep;
}

StaticPoint maximum_lift(const std::vector<StaticPoint>& sweep) {
  if (sweep.empty()) throw std::runtime_error("no steady flight found near the stall");
  std::size_t top = 0;
  for (std::size_t i = 0; i < sweep.size() && sweep[i].elevator_left; ++i)
    if (sweep[i].lift_area_m2 > sweep[top].lift_area_m2) top = i;
  StaticPoint p = sweep[top];
  if (top == 0 || top + 1 >= sweep.size() || !sweep[top + 1].elevator_left) return p;
  const StaticPoint &a = sweep[top - 1], &b = sweep[top], &d = sweep[top + 1];
  // Parabola through three points in ratio.
  const double h1 = b.ratio - a.ratio, h2 = d.ratio - b.ratio;
  const double s1 = (b.lift_area_m2 - a.lift_area_m2) / h1, s2 = (d.lift_area_m2 - b.lift_area_m2) / h2;
  const double curvature = (s2 - s1) / (h1 + h2);
  // Neighbours that lie unevenly, as at a sudden stall, carry no parabola.
  if (!(curvature < 0.0) || !(h1 > 0.2 * h2) || !(h2 > 0.2 * h1)) return p;
  const double slope_at_b = s1 + curvature * h1;
  const double shift = -slope_at_b / (2.0 * curvature);
  const double t = shift > 0.0 ? shift / h2 : shift / h1;
  const StaticPoint& to = shift > 0.0 ? d : a;
  const double weight = std::min(1.0, std::abs(t));
  p.ratio = b.ratio + shift;
  p.lift_area_m2 = b.lift_area_m2 + slope_at_b * shift + curvature * shift * shift;
  p.alpha_rad = b.alpha_rad + weight * (to.alpha_rad - b.alpha_rad);
  p.true_airspeed_mps = b.true_airspeed_mps * math::sqrt(b.lift_area_m2 / p.lift_area_m2);
  p.indicated_mps = b.indicated_mps * math::sqrt(b.lift_area_m2 / p.lift_area_m2);
  return p;
}

}  // namespace stallwright
