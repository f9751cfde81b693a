#include "sim/motion/performance.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>

#include "aircraft/math/units.hpp"

namespace stallwright {
namespace {

TrimCondition idle_glide(double flap_rad) {
  TrimCondition c;
  c.power = TrimCondition::Power::throttle;
  c.flap_rad = flap_rad;
  return c;
}

/// A run of trims, each begun from the last that was found. Without a neighbour a trim begins from a plain
/// guess.
class Continuation {
 public:
  explicit Continuation(const Aircraft& aircraft) : aircraft_(aircraft) {}
  std::optional<Trim> find(const TrimCondition& condition) {
    Trim t = find_trim(aircraft_, condition, near_ ? &*near_ : nullptr);
    if (!t.converged) return std::nullopt;
    near_ = t;
    return t;
  }

 private:
  const Aircraft& aircraft_;
  std::optional<Trim> near_;
};

StallFigure figure_of(const Aircraft& aircraft, double flap_rad, const Trim& t) {
  StallFigure s;
  s.flap_rad = flap_rad;
  s.speed_mps = t.true_airspeed_mps;
  const double qbar = 0.5 * TrimCondition{}.density_kgpm3 * s.speed_mps * s.speed_mps;
  s.cl_max = t.load_factor * aircraft.mass.mass_kg * kStandardGravity_mps2 / (qbar * aircraft.wing_area_m2);
  s.alpha_rad = t.alpha_rad;
  s.stick_aft = t.controls.stick_aft;
  s.sink_mps = -t.climb_mps;
  return s;
}

/// A share of the way from one figure to another (beyond it for t > 1).
StallFigure between(const StallFigure& a, const StallFigure& b, double t) {
  const auto mix = [t](double x, double y) { return x + t * (y - x); };
  StallFigure s = a;
  s.alpha_rad = mix(a.alpha_rad, b.alpha_rad);
  s.stick_aft = mix(a.stick_aft, b.stick_aft);
  s.sink_mps = mix(a.sink_mps, b.sink_mps);
  s.cl_max = mix(a.cl_max, b.cl_max);
  // Weight is what lift coefficient times speed squared has in common.
  s.speed_mps = a.speed_mps * std::sqrt(a.cl_max / s.cl_max);
  return s;
}

/// Vertex of the parabola through three points in angle of attack, b the highest.
StallFigure vertex(const StallFigure& a, const StallFigure& b, const StallFigure& c) {
  const double h1 = b.alpha_rad - a.alpha_rad, h2 = c.alpha_rad - b.alpha_rad;
  const double s1 = (b.cl_max - a.cl_max) / h1, s2 = (c.cl_max - b.cl_max) / h2;
  const double curvature = (s2 - s1) / (h1 + h2);
  const double slope_b = s1 + curvature * h1;
  const double shift = -slope_b / (2.0 * curvature);
  StallFigure top = shift > 0.0 ? between(b, c, shift / h2) : between(b, a, -shift / h1);
  top.cl_max = b.cl_max + 0.5 * slope_b * shift;
  top.speed_mps = b.speed_mps * std::sqrt(b.cl_max / top.cl_max);
  return top;
}

Aircraft without_propeller(Aircraft a) {
  PropellerType& p = a.type.propeller;
  std::fill(p.thrust_coefficient.begin(), p.thrust_coefficient.end(), 0.0);
  std::fill(p.power_coefficient.begin(), p.power_coefficient.end(), 0.0);
  p.normal_force_slope = 0.0;
  p.asymmetric_moment = 0.0;
  return a;
}

/// Greatest value of a curve over speed: steps of 1 m/s from slow to fast, then the parabola through the best
/// three.
BestFigure best_over_speed(double from_mps, double to_mps, const std::function<double(double)>& value) {
  std::vector<BestFigure> curve;
  for (double v = from_mps; v <= to_mps; v += 1.0) {
    const double y = value(v);
    if (std::isfinite(y)) curve.push_back({y, v});
  }
  if (curve.empty()) return {};
  const auto top = std::max_element(
      curve.begin(), curve.end(), [](const BestFigure& x, const BestFigure& y) { return x.value < y.value; });
  if (top == curve.begin() || top + 1 == curve.end()) return *top;
  const double a = (top - 1)->value, b = top->value, c = (top + 1)->value;
  const double shift = 0.5 * (a - c) / (a - 2.0 * b + c);
  return {b - 0.25 * (a - c) * shift, top->speed_mps + shift};
}

double shaft_power_w(const Aircraft& aircraft, const Trim& t) {
  return flight_derivative(aircraft, t.state, t.controls, trim_air(TrimCondition{})).loads.shaft_power_w;
}

}  // namespace

Aircraft book_aircraft(const AircraftType& type) {
  const double mass = type.mass.max_kg;
  return make_aircraft(type, ballasted(type, mass, envelope_range(type, mass).forward_m), 0);
}

StallFigure stall_figure(const Aircraft& aircraft, double flap_rad) {
  constexpr double kCoarse = 0.5 * math::kDegree, kFine = 0.05 * math::kDegree;
  constexpr double kEnough =
      3.0 * math::kDegree;  // past a top: beyond this no higher one is taken for the stall
  Continuation run(aircraft);
  TrimCondition c = idle_glide(flap_rad);
  std::vector<StallFigure> points;
  std::size_t top = 0;
  double step = kCoarse;
  for (double alpha = -2.0 * math::kDegree; alpha < 30.0 * math::kDegree; alpha += step) {
    c.alpha_rad = alpha;
    const std::optional<Trim> t = run.find(c);
    if (!t) {
      if (points.empty()) continue;
      if (step == kFine) break;
      alpha -= step;  // a coarse step too far: go on finely from where it was found last
      step = kFine;
      continue;
    }
    const StallFigure now = figure_of(aircraft, flap_rad, *t);
    if (now.stick_aft >= 1.0) {
      if (points.empty()) return {flap_rad};
      StallFigure s = between(points.back(), now,
                              (1.0 - points.back().stick_aft) / (now.stick_aft - points.back().stick_aft));
      if (s.cl_max < points[top].cl_max) break;
      s.limit = StallFigure::Limit::elevator;
      return s;
    }
    points.push_back(now);
    const std::size_t n = points.size();
    if (now.cl_max > points[top].cl_max) top = n - 1;
    // Lift grows by 0.08 to 0.1 a degree until separation sets in; below half of that the top is near.
    if (n > 1 && (now.cl_max - points[n - 2].cl_max) / (now.alpha_rad - points[n - 2].alpha_rad) < 2.5)
      step = kFine;
    if (now.alpha_rad - points[top].alpha_rad > kEnough) break;
  }
  if (points.empty()) return {flap_rad};
  StallFigure s = points[top];
  if (top > 0 && top + 1 < points.size()) s = vertex(points[top - 1], points[top], points[top + 1]);
  s.limit = StallFigure::Limit::lift;
  return s;
}

BestFigure best_glide(const Aircraft& aircraft, double stall_mps, bool windmilling) {
  const Aircraft flown = windmilling ? aircraft : without_propeller(aircraft);
  Continuation run(flown);
  TrimCondition c = idle_glide(0.0);
  return best_over_speed(1.1 * stall_mps, 2.4 * stall_mps, [&](double v) {
    c.true_airspeed_mps = v;
    const std::optional<Trim> t = run.find(c);
    if (!t || !(t->climb_mps < 0.0)) return kUnset;
    return std::sqrt(v * v - t->climb_mps * t->climb_mps) / -t->climb_mps;
  });
}

BestFigure best_climb(const Aircraft& aircraft, double stall_mps, const ClimbCondition& condition) {
  Continuation run(aircraft);
  TrimCondition c = idle_glide(condition.flap_rad);
  c.throttle = 1.0;
  c.altitude_m = condition.altitude_m;
  c.density_kgpm3 = condition.density_kgpm3;
  return best_over_speed(1.1 * stall_mps, std::min(2.4 * stall_mps, condition.fastest_mps), [&](double v) {
    c.true_airspeed_mps = v;
    const std::optional<Trim> t = run.find(c);
    return t ? t->climb_mps : kUnset;
  });
}

CruiseFigure cruise(const Aircraft& aircraft, double stall_mps, double power_share) {
  const double wanted = power_share * aircraft.type.engine.rated_power_w;
  Continuation run(aircraft);
  TrimCondition c;
  const auto found_at = [&](double v) {
    c.true_airspeed_mps = v;
    return run.find(c);
  };
  // Past best-glide speed level power rises with speed, so the first speed that needs too much brackets it.
  double slow = 1.4 * stall_mps, fast = kUnset;
  for (double v = slow; v < 4.0 * stall_mps; v += 1.0) {
    const std::optional<Trim> t = found_at(v);
    if (!t || shaft_power_w(aircraft, *t) > wanted) {
      fast = v;
      break;
    }
    slow = v;
  }
  if (!std::isfinite(fast)) return {};
  CruiseFigure found;
  for (int i = 0; i < 20; ++i) {
    const double v = 0.5 * (slow + fast);
    const std::optional<Trim> t = found_at(v);
    if (!t) return {};
    const bool too_much = shaft_power_w(aircraft, *t) > wanted;
    (too_much ? fast : slow) = v;
    found = {v, t->controls.throttle, t->state.airframe.propeller_radps};
  }
  return found;
}

double roll_response_ps(const Aircraft& aircraft, double speed_mps) {
  constexpr double kAileron = 1.0 * math::kDegree;
  TrimCondition c = idle_glide(0.0);
  // From well above the stall downwards: close to it a plain guess does not find its way.
  Continuation run(aircraft);
  std::optional<Trim> t;
  for (double v = 1.3 * speed_mps; v > speed_mps; v -= 0.5) {
    c.true_airspeed_mps = v;
    run.find(c);
  }
  c.true_airspeed_mps = speed_mps;
  t = run.find(c);
  if (!t) return kUnset;
  const auto roll_rate = [&](double by) {
    FlightState<double> s = t->state;
    Controls<double> hands = t->controls;
    s.airframe.aileron_rad += by;
    hands.stick_right += by / aircraft.type.aileron.max_negative_rad;
    for (int i = 0; i < 100; ++i) s = flight_step(aircraft, s, hands, trim_air(c));
    return s.rigid.rate_B_radps.x;
  };
  return (roll_rate(kAileron) - roll_rate(-kAileron)) / (2.0 * kAileron);
}

Performance performance(const Aircraft& aircraft) {
  Performance p;
  for (const FlapSetting& flap : aircraft.type.flaps)
    p.stalls.push_back(stall_figure(aircraft, flap.deflection_rad));
  const double stall = p.stalls.front().speed_mps;
  if (std::isfinite(stall)) {
    p.glide_airframe = best_glide(aircraft, stall, false);
    p.glide_idle = best_glide(aircraft, stall, true);
    p.climb = best_climb(aircraft, stall);
    p.cruise = cruise(aircraft, stall);
    p.roll_response_slow_ps = roll_response_ps(aircraft, 1.05 * stall);
    p.roll_response_fast_ps = roll_response_ps(aircraft, 1.5 * stall);
  }
  TrimCondition level;
  level.true_airspeed_mps = p.mode_speed_mps = 1.5 * aircraft.type.limits.book_v_s1_mps;
  const Trim t = find_trim(aircraft, level);
  if (t.converged) p.modes = classical_modes(linearise(aircraft, t.state, trim_air(level)));
  return p;
}

std::vector<NamedFigure> named_figures(const Performance& p) {
  std::vector<NamedFigure> f;
  for (std::size_t i = 0; i < p.stalls.size(); ++i)
    f.push_back({"stall_speed_flap" + std::to_string(i) + "_kt", p.stalls[i].speed_mps / kKnot, "kt"});
  f.push_back({"cl_max_flap0", p.stalls.front().cl_max, "1"});
  f.push_back({"cl_max_full", p.stalls.back().cl_max, "1"});
  f.push_back({"lift_to_drag_max", p.glide_airframe.value, "1"});
  f.push_back({"climb_rate_fpm", p.climb.value / kFootPerMinute, "ft/min"});
  f.push_back({"cruise_speed_kt", p.cruise.speed_mps / kKnot, "kt"});
  const Mode none;
  const auto mode = [&](const char* name) -> const Mode& {
    return p.modes.empty() ? none : mode_named(p.modes, name);
  };
  f.push_back({"phugoid_period_s", mode("phugoid").natural_period_s, "s"});
  f.push_back({"phugoid_damping", mode("phugoid").damping_ratio, "1"});
  f.push_back({"short_period_period_s", mode("short period").natural_period_s, "s"});
  f.push_back({"short_period_damping", mode("short period").damping_ratio, "1"});
  f.push_back({"roll_time_constant_s", mode("roll").time_constant_s, "s"});
  f.push_back({"roll_response_ratio", p.roll_response_slow_ps / p.roll_response_fast_ps, "1"});
  return f;
}

}  // namespace stallwright
