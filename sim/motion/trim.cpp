#include "sim/motion/trim.hpp"

#include <Eigen/Dense>
#include <array>
#include <cmath>
#include <functional>

namespace stallwright {
namespace {

constexpr std::size_t kMemory = 3 * kStrips + kTailStrips + 2;  // flow states, wake, propeller speed
constexpr std::size_t kMotion = 7;
constexpr std::size_t kUnknowns = kMemory + kMotion;
using Vector = Eigen::Matrix<double, kUnknowns, 1>;
using Matrix = Eigen::Matrix<double, kUnknowns, kUnknowns>;

/// The airframe's flow memory as a run of numbers, controls left out, scaled to order one.
void pack_memory(const AirframeState<double>& s, double* out) {
  std::size_t n = 0;
  for (double v : s.inflow_mps) out[n++] = v / 10.0;
  for (double v : s.lagged_alpha_rad) out[n++] = v;
  for (double v : s.separation) out[n++] = v;
  for (double v : s.downwash_mps) out[n++] = v / 10.0;
  out[n++] = s.wake;
  out[n++] = s.propeller_radps / 100.0;
}

void unpack_memory(const double* in, AirframeState<double>& s) {
  std::size_t n = 0;
  for (double& v : s.inflow_mps) v = in[n++] * 10.0;
  for (double& v : s.lagged_alpha_rad) v = in[n++];
  for (double& v : s.separation) v = in[n++];
  for (double& v : s.downwash_mps) v = in[n++] * 10.0;
  s.wake = in[n++];
  s.propeller_radps = in[n++] * 100.0;
}

/// The unknowns of motion by name. `path` is speed where alpha is given and alpha where speed is given.
struct Motion {
  double path, beta, pitch, elevator, aileron, rudder, throttle_or_climb;
};

struct Problem {
  const Aircraft& aircraft;
  const TrimCondition& condition;
  AirSample<double> air;

  bool alpha_given() const { return std::isfinite(condition.alpha_rad); }

  FlightState<double> state(const Vector& x) const {
    FlightState<double> s;
    unpack_memory(x.data(), s.airframe);
    const double* m = x.data() + kMemory;
    const double alpha = alpha_given() ? condition.alpha_rad : m[0];
    const double speed = alpha_given() ? m[0] * 50.0 : condition.true_airspeed_mps;
    double sa, ca, sb, cb;
    math::sincos(alpha, sa, ca);
    math::sincos(m[1], sb, cb);
    s.rigid.velocity_B_mps = {speed * cb * ca, speed * sb, speed * cb * sa};
    s.rigid.attitude_EB = quaternion(EulerAngles<double>{0.0, m[2], condition.bank_rad});
    s.rigid.position_E_m.z = -condition.altitude_m;
    // Steady turn with the ball in the middle: no side force is left when r u - p w = g sin(bank) cos(pitch),
    // where the heading rate about the vertical gives p = -rate sin(pitch), r = rate cos(pitch) cos(bank).
    double sp, cp, sr, cr;
    math::sincos(m[2], sp, cp);
    math::sincos(condition.bank_rad, sr, cr);
    const Vec3<double>& v = s.rigid.velocity_B_mps;
    const double turn = gravity(condition.altitude_m) * sr * cp / (cp * cr * v.x + sp * v.z);
    s.rigid.rate_B_radps = rotation_EB(s.rigid.attitude_EB).row(2) * turn;
    s.airframe.elevator_rad = m[3];
    s.airframe.aileron_rad = m[4];
    s.airframe.rudder_rad = m[5];
    s.airframe.flap_rad = condition.flap_rad;
    s.airframe.throttle = condition.power == TrimCondition::Power::throttle ? condition.throttle : m[6];
    return s;
  }

  Vector residual(const Vector& x) const {
    const FlightState<double> s = state(x);
    const FlightDerivative<double> d = flight_derivative(aircraft, s, Controls<double>{}, air);
    Vector f;
    pack_memory(d.rate.airframe, f.data());
    double* m = f.data() + kMemory;
    const Vec3<double>& v = d.rate.rigid.velocity_B_mps;
    const Vec3<double>& w = d.rate.rigid.rate_B_radps;
    m[0] = v.x;
    m[1] = v.z;
    m[2] = w.y;
    if (condition.longitudinal_only) {
      const double* u = x.data() + kMemory;
      m[3] = u[1];
      m[4] = u[4];
      m[5] = u[5];
    } else {
      m[3] = v.y;
      m[4] = w.x;
      m[5] = w.z;
    }
    // With the throttle given, the seventh unknown is only the climb that comes out.
    const double climb = -d.rate.rigid.position_E_m.z;
    m[6] = condition.power == TrimCondition::Power::path ? 0.1 * (climb - condition.climb_mps)
                                                         : x[kMemory + 6] - 0.1 * climb;
    return f;
  }
};

Matrix jacobian(const Problem& problem, const Vector& x, const Vector& f) {
  Matrix j;
  for (std::size_t k = 0; k < kUnknowns; ++k) {
    constexpr double kNudge = 1e-7;
    Vector nudged = x;
    nudged[k] += kNudge;
    j.col(k) = (problem.residual(nudged) - f) / kNudge;
  }
  return j;
}

Vector first_guess(const Problem& problem, const Trim* start) {
  const TrimCondition& c = problem.condition;
  Vector x = Vector::Zero();
  const bool path = c.power == TrimCondition::Power::path;
  if (start != nullptr) {
    pack_memory(start->state.airframe, x.data());
    const EulerAngles<double> e = euler_angles(start->state.rigid.attitude_EB);
    double* m = x.data() + kMemory;
    m[0] = problem.alpha_given() ? start->true_airspeed_mps / 50.0 : start->alpha_rad;
    m[1] = start->beta_rad;
    m[2] = e.pitch_rad;
    m[3] = start->state.airframe.elevator_rad;
    m[4] = start->state.airframe.aileron_rad;
    m[5] = start->state.airframe.rudder_rad;
    m[6] = path ? start->state.airframe.throttle : 0.1 * start->climb_mps;
    return x;
  }
  AirframeState<double> s;
  s.separation.fill(1.0);
  s.flap_rad = c.flap_rad;
  const double speed = problem.alpha_given() ? 40.0 : c.true_airspeed_mps;
  // Plain guesses: lift slope 4.5 per rad from -4 deg; a closed throttle windmills near J = 0.95 and glides at 1 in 8.
  const double weight = problem.aircraft.mass.mass_kg * kStandardGravity_mps2;
  const double lift = weight / (0.5 * c.density_kgpm3 * speed * speed * problem.aircraft.wing_area_m2);
  const double alpha = problem.alpha_given() ? c.alpha_rad : std::clamp(lift / 4.5 - 0.07, -0.1, 0.15);
  const bool idle = !path && c.throttle < 0.2;
  s.propeller_radps = idle ? 2.0 * math::kPi * speed / (0.95 * problem.aircraft.type.propeller.diameter_m)
                           : problem.aircraft.type.engine.rated_speed_radps * 0.8;
  // Let the induced flow settle on a fixed attitude before Newton sees it.
  RelativeFlow<double> flow;
  flow.velocity_B = {speed * math::cos(alpha), 0.0, speed * math::sin(alpha)};
  flow.density_kgpm3 = c.density_kgpm3;
  const double propeller = s.propeller_radps;
  for (int i = 0; i < 100; ++i) {
    s = runge_kutta_step(s, 0.01, [&](const AirframeState<double>& at) {
      return airframe_loads(problem.aircraft, at, flow, Controls<double>{}).rate;
    });
    s.propeller_radps = propeller;
    s.flap_rad = c.flap_rad;
  }
  pack_memory(s, x.data());
  double* m = x.data() + kMemory;
  m[0] = problem.alpha_given() ? speed / 50.0 : alpha;
  m[2] = alpha + (path ? c.climb_mps / speed : idle ? -0.125 : 0.05);
  m[6] = path ? 0.5 : 0.1 * speed * (idle ? -0.125 : 0.05);
  return x;
}

/// Newton's step shortened so that nothing jumps: angles by 0.1 rad, separation by 0.25, throttle by 0.25.
double damping(const Vector& step) {
  double scale = 1.0;
  for (std::size_t k = 0; k < kUnknowns; ++k) {
    const double limit = k < kMemory ? 0.25 : k == kMemory + 6 ? 0.25 : 0.1;
    scale = std::min(scale, limit / std::max(std::abs(step[k]), 1e-300));
  }
  return scale;
}

}  // namespace

AirSample<double> trim_air(const TrimCondition& condition) {
  AirSample<double> air;
  air.density_kgpm3 = condition.density_kgpm3;
  return air;
}

Trim find_trim(const Aircraft& aircraft, const TrimCondition& condition, const Trim* start) {
  const Problem problem{aircraft, condition, trim_air(condition)};
  Vector x = first_guess(problem, start);
  Vector f = problem.residual(x);
  constexpr double kSmall = 1e-9;
  for (int i = 0; i < 60 && f.cwiseAbs().maxCoeff() > kSmall; ++i) {
    const Vector step = jacobian(problem, x, f).partialPivLu().solve(-f);
    if (!step.allFinite()) break;
    double scale = damping(step);
    // Backtrack while the residual grows a lot: separation makes the equations stiff near the stall.
    Vector tried = x + scale * step;
    Vector g = problem.residual(tried);
    for (int k = 0; k < 6 && !(g.norm() < 2.0 * f.norm() + 1e-6); ++k) {
      scale *= 0.5;
      tried = x + scale * step;
      g = problem.residual(tried);
    }
    x = tried;
    f = g;
  }
  Trim t;
  t.state = problem.state(x);
  const FlightDerivative<double> d = flight_derivative(aircraft, t.state, Controls<double>{}, problem.air);
  t.residual = f.cwiseAbs().maxCoeff();
  t.converged = f.allFinite() && t.residual <= 1e-7;
  const double* m = x.data() + kMemory;
  t.alpha_rad = problem.alpha_given() ? condition.alpha_rad : m[0];
  t.true_airspeed_mps = problem.alpha_given() ? m[0] * 50.0 : condition.true_airspeed_mps;
  t.beta_rad = m[1];
  t.climb_mps = -d.rate.rigid.position_E_m.z;
  t.load_factor = norm(d.specific_force_B_mps2) / kStandardGravity_mps2;

  const AircraftType& type = aircraft.type;
  const auto stick = [&](const ControlSurface& surface, double angle) {
    return angle > 0.0 ? angle / surface.max_positive_rad : angle / surface.max_negative_rad;
  };
  t.controls.stick_aft = -stick(type.elevator, m[3]);
  t.controls.stick_right = m[4] / type.aileron.max_negative_rad;
  t.controls.pedal_right = -stick(type.rudder, m[5]);
  t.controls.throttle = t.state.airframe.throttle;
  t.controls.flap_rad = condition.flap_rad;
  const double most = std::max(
      {std::abs(t.controls.stick_aft), std::abs(t.controls.stick_right), std::abs(t.controls.pedal_right)});
  t.within_stops = most <= 1.0 && t.controls.throttle >= 0.0 && t.controls.throttle <= 1.0;
  return t;
}

}  // namespace stallwright
