#pragma once
#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "sim/motion/flight_model.hpp"
#include "sim/motion/trim.hpp"

namespace stallwright {

/// The unknowns of a steady flight behind those of the memory (each over its unit). `path` is speed over 50 m/s where
/// alpha is given and alpha where speed is given; the last is a tenth of the climb where the throttle is given.
enum SteadyPlace : std::size_t {
  kPath,
  kBeta,
  kPitch,
  kSteadyElevator,
  kSteadyAileron,
  kSteadyRudder,
  kThrottleOrClimb,
  kSteadyPlaces
};

/// Search for a steady flight of a model: unknowns x, residual f(x) = 0 when no rate is left but position, heading and (in
/// a pull-up) pitch. All that x does not hold is taken from `held`.
template <FlightModel Model>
struct SteadyFlight {
  using State = typename Model::State;
  static constexpr std::size_t kMemory = Model::kMemory;
  static constexpr std::size_t kUnknowns = kMemory + kSteadyPlaces;
  using Vector = Eigen::Matrix<double, kUnknowns, 1>;
  using Matrix = Eigen::Matrix<double, kUnknowns, kUnknowns>;

  const Model& model;
  const TrimCondition& condition;
  State held{};

  bool alpha_given() const { return std::isfinite(condition.alpha_rad); }
  bool throttle_given() const { return condition.power == TrimCondition::Power::throttle; }

  static void pack_memory(const State& s, double* out) {
    Model::each_memory(s, [&](double value, double unit) { *out++ = value / unit; });
  }

  State state(const Vector& x) const;
  Vector residual(const Vector& x) const;

  /// x moved to a steady flight, or to where the search ended. Returns the residual there.
  Vector search(Vector& x) const;

 private:
  RigidState<double> motion(const double* m) const;
  Matrix jacobian(const Vector& x, const Vector& f) const;
  static double damping(const Vector& step);
};

template <FlightModel Model>
RigidState<double> SteadyFlight<Model>::motion(const double* m) const {
  RigidState<double> s = held.rigid;
  const double alpha = alpha_given() ? condition.alpha_rad : m[kPath];
  const double speed = alpha_given() ? m[kPath] * 50.0 : condition.true_airspeed_mps;
  double sa, ca, sb, cb;
  math::sincos(alpha, sa, ca);
  math::sincos(m[kBeta], sb, cb);
  s.velocity_B_mps = {speed * cb * ca, speed * sb, speed * cb * sa};
  s.attitude_EB = quaternion(EulerAngles<double>{0.0, m[kPitch], condition.bank_rad});
  s.position_E_m.z = -condition.altitude_m;
  // Steady turn with the ball in the middle: no side force is left when r u - p w = g sin(bank) cos(pitch),
  // where the heading rate about the vertical gives p = -rate sin(pitch), r = rate cos(pitch) cos(bank).
  double sp, cp, sr, cr;
  math::sincos(m[kPitch], sp, cp);
  math::sincos(condition.bank_rad, sr, cr);
  const Vec3<double>& v = s.velocity_B_mps;
  const double turn = model.gravity_mps2(condition.altitude_m) * sr * cp / (cp * cr * v.x + sp * v.z);
  s.rate_B_radps = rotation_EB(s.attitude_EB).row(2) * turn;
  s.rate_B_radps.y += condition.pull_up_radps;
  return s;
}

template <FlightModel Model>
typename Model::State SteadyFlight<Model>::state(const Vector& x) const {
  State s = held;
  const double* from = x.data();
  Model::each_memory(s, [&](double& value, double unit) { value = *from++ * unit; });
  const double* m = x.data() + kMemory;
  s.rigid = motion(m);
  std::size_t place = kSteadyElevator;
  Model::each_input(s, [&](double& input) {
    if (place < kThrottleOrClimb || (place == kThrottleOrClimb && !throttle_given())) input = m[place];
    if (place == kThrottleOrClimb && throttle_given()) input = condition.throttle;
    ++place;
  });
  return s;
}

template <FlightModel Model>
typename SteadyFlight<Model>::Vector SteadyFlight<Model>::residual(const Vector& x) const {
  const State rate = model.rate(state(x));
  Vector f;
  pack_memory(rate, f.data());
  double* m = f.data() + kMemory;
  const double* u = x.data() + kMemory;
  const Vec3<double>& v = rate.rigid.velocity_B_mps;
  const Vec3<double>& w = rate.rigid.rate_B_radps;
  m[0] = v.x;
  m[1] = v.z;
  m[2] = w.y;
  m[3] = condition.longitudinal_only ? u[kBeta] : v.y;
  m[4] = condition.longitudinal_only ? u[kSteadyAileron] : w.x;
  m[5] = condition.longitudinal_only ? u[kSteadyRudder] : w.z;
  // With the throttle given, the seventh unknown is only the climb that comes out.
  const double climb = -rate.rigid.position_E_m.z;
  m[6] = throttle_given() ? u[kThrottleOrClimb] - 0.1 * climb : 0.1 * (climb - condition.climb_mps);
  return f;
}

template <FlightModel Model>
typename SteadyFlight<Model>::Matrix SteadyFlight<Model>::jacobian(const Vector& x, const Vector& f) const {
  Matrix j;
  for (std::size_t k = 0; k < kUnknowns; ++k) {
    constexpr double kMove = 1e-7;
    Vector nudged = x;
    nudged[k] += kMove;
    j.col(k) = (residual(nudged) - f) / kMove;
  }
  return j;
}

/// Newton's step shortened so that nothing jumps: angles by 0.1 rad, separation by 0.25, throttle by 0.25.
template <FlightModel Model>
double SteadyFlight<Model>::damping(const Vector& step) {
  double scale = 1.0;
  for (std::size_t k = 0; k < kUnknowns; ++k) {
    const double limit = k < kMemory ? 0.25 : k == kMemory + kThrottleOrClimb ? 0.25 : 0.1;
    scale = std::min(scale, limit / std::max(std::abs(step[k]), 1e-300));
  }
  return scale;
}

template <FlightModel Model>
typename SteadyFlight<Model>::Vector SteadyFlight<Model>::search(Vector& x) const {
  Vector f = residual(x);
  constexpr double kSmall = 1e-9;
  for (int i = 0; i < 60 && f.cwiseAbs().maxCoeff() > kSmall; ++i) {
    const Vector step = jacobian(x, f).partialPivLu().solve(-f);
    if (!step.allFinite()) break;
    double scale = damping(step);
    // Backtrack while the residual grows a lot: separation makes the equations stiff near the stall.
    Vector tried = x + scale * step;
    Vector g = residual(tried);
    for (int k = 0; k < 6 && !(g.norm() < 2.0 * f.norm() + 1e-6); ++k) {
      scale *= 0.5;
      tried = x + scale * step;
      g = residual(tried);
    }
    x = tried;
    f = g;
  }
  return f;
}

}  // namespace stallwright
