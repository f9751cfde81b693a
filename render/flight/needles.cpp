#include "render/flight/needles.hpp"

#include <cmath>
#include <numbers>

#include "aircraft/math/units.hpp"

namespace stallwright {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
/// Below this normal force the ball floats about anyway; keeps the quotient finite through zero g.
constexpr double kLeastNormal_mps2 = 2.0;

double toward(double before, double seen, double share) {
  return std::isfinite(seen) ? before + (seen - before) * share : before;
}

/// As toward(), the short way round a circle of 360 degrees; the result in low_deg .. low_deg + 360.
double turn_toward(double before, double seen, double share, double low_deg) {
  if (!std::isfinite(seen)) return before;
  const double turned = before + std::remainder(seen - before, 360.0) * share;
  return turned - 360.0 * std::floor((turned - low_deg) / 360.0);
}

/// The ball rolls away from the side force that the seat exerts: to the right where that force is to the left.
double balls(const Readings<double>& seen) {
  const double normal = std::max(std::abs(seen.down_mps2), kLeastNormal_mps2);
  return -seen.right_mps2 / normal / kBall_g;
}

}  // namespace

Needles advance(const Needles& before, const Readings<double>& seen, double dt_s) {
  const auto share = [&](double lag_s) { return before.started ? -std::expm1(-dt_s / lag_s) : 1.0; };
  const NeedleLag& lag = kNeedleLag;
  Needles n = before;
  n.started = true;
  n.airspeed_kt = toward(n.airspeed_kt, seen.indicated_airspeed_mps / kKnot, share(lag.airspeed_s));
  n.altitude_ft = toward(n.altitude_ft, seen.indicated_altitude_m / kFoot, share(lag.altitude_s));
  n.vertical_speed_fpm =
      toward(n.vertical_speed_fpm, seen.vertical_speed_mps / kFootPerMinute, share(lag.vertical_speed_s));
  n.pitch_deg = toward(n.pitch_deg, seen.pitch_rad / kDegree, share(lag.attitude_s));
  n.bank_deg = turn_toward(n.bank_deg, seen.bank_rad / kDegree, share(lag.attitude_s), -180.0);
  n.heading_deg = turn_toward(n.heading_deg, seen.heading_rad / kDegree, share(lag.heading_s), 0.0);
  n.turn_rate_degps = toward(n.turn_rate_degps, seen.yaw_rate_radps / kDegree, share(lag.turn_s));
  n.slip_balls = toward(n.slip_balls, balls(seen), share(lag.slip_s));
  n.rpm = toward(n.rpm, seen.propeller_radps / (2.0 * std::numbers::pi) * 60.0, share(lag.rpm_s));
  n.probe_ratio = toward(n.probe_ratio, seen.probe_ratio, share(lag.probe_s));
  return n;
}

}  // namespace stallwright
