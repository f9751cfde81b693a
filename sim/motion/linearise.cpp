#include "sim/motion/linearise.hpp"

#include <algorithm>

namespace stallwright {
namespace {

/// Calls visit(number, unit) for each number of the flow memory in the order of a linear model; the unit is
/// the size of a middling change.
template <class Airframe, class Visit>
void for_each_memory(Airframe& s, Visit&& visit) {
  for (auto& v : s.inflow_mps) visit(v, 10.0);
  for (auto& v : s.lagged_alpha_rad) visit(v, 1.0);
  for (auto& v : s.separation) visit(v, 1.0);
  for (auto& v : s.downwash_mps) visit(v, 10.0);
  visit(s.wake, 1.0);
  visit(s.propeller_radps, 100.0);
}

constexpr double kNudge = 1e-6;  // rounding leaves 1e-9 of a rate, curvature (at 0.7 deg of stall width) 1e-8

Eigen::VectorXd state_steps() {
  Eigen::VectorXd h(kLinearPlaces);
  h.head(kRigidPlaces) << 10.0, 10.0, 10.0, 1.0, 1.0, 1.0, 1.0, 1.0;
  Eigen::Index n = kRigidPlaces;
  const AirframeState<double> any;
  for_each_memory(any, [&](double, double unit) { h[n++] = unit; });
  return h * kNudge;
}

Eigen::VectorXd inputs(const AirframeState<double>& s) {
  Eigen::VectorXd u(Eigen::Index{kInputPlaces});
  u << s.elevator_rad, s.aileron_rad, s.rudder_rad, s.throttle, s.flap_rad;
  return u;
}

FlightState<double> with_inputs(FlightState<double> s, const Eigen::VectorXd& u) {
  s.airframe.elevator_rad = u[kElevator];
  s.airframe.aileron_rad = u[kAileron];
  s.airframe.rudder_rad = u[kRudder];
  s.airframe.throttle = u[kThrottle];
  s.airframe.flap_rad = u[kFlap];
  return s;
}

}  // namespace

Eigen::VectorXd linear_state(const FlightState<double>& s) {
  const Vec3<double>&v = s.rigid.velocity_B_mps, &w = s.rigid.rate_B_radps;
  const EulerAngles<double> e = euler_angles(s.rigid.attitude_EB);
  Eigen::VectorXd x(kLinearPlaces);
  x.head(kRigidPlaces) << v.x, v.y, v.z, w.x, w.y, w.z, e.roll_rad, e.pitch_rad;
  Eigen::Index n = kRigidPlaces;
  for_each_memory(s.airframe, [&](double value, double) { x[n++] = value; });
  return x;
}

FlightState<double> flight_state(const FlightState<double>& about, const Eigen::VectorXd& x) {
  FlightState<double> s = about;
  s.rigid.velocity_B_mps = {x[kU], x[kV], x[kW]};
  s.rigid.rate_B_radps = {x[kP], x[kQ], x[kR]};
  const double yaw = euler_angles(about.rigid.attitude_EB).yaw_rad;
  s.rigid.attitude_EB = quaternion(EulerAngles<double>{yaw, x[kTheta], x[kPhi]});
  Eigen::Index n = kRigidPlaces;
  for_each_memory(s.airframe, [&](double& value, double) { value = x[n++]; });
  return s;
}

Eigen::VectorXd linear_state_rate(const Aircraft& aircraft, const FlightState<double>& s,
                                  const AirSample<double>& air) {
  const FlightState<double> d = flight_derivative(aircraft, s, Controls<double>{}, air).rate;
  const Vec3<double>&v = d.rigid.velocity_B_mps, &w = d.rigid.rate_B_radps;
  const Vec3<double>& turn = s.rigid.rate_B_radps;
  const EulerAngles<double> e = euler_angles(s.rigid.attitude_EB);
  double sine, cosine;
  math::sincos(e.roll_rad, sine, cosine);
  const double roll_rate = turn.x + math::tan(e.pitch_rad) * (turn.y * sine + turn.z * cosine);
  const double pitch_rate = turn.y * cosine - turn.z * sine;
  Eigen::VectorXd x(kLinearPlaces);
  x.head(kRigidPlaces) << v.x, v.y, v.z, w.x, w.y, w.z, roll_rate, pitch_rate;
  Eigen::Index n = kRigidPlaces;
  for_each_memory(d.airframe, [&](double value, double) { x[n++] = value; });
  return x;
}

Eigen::MatrixXd central_jacobian(const std::function<Eigen::VectorXd(const Eigen::VectorXd&)>& f,
                                 const Eigen::VectorXd& x, const Eigen::VectorXd& step) {
  Eigen::MatrixXd j;
  for (Eigen::Index k = 0; k < x.size(); ++k) {
    Eigen::VectorXd up = x, down = x;
    up[k] += step[k];
    down[k] -= step[k];
    const Eigen::VectorXd column = (f(up) - f(down)) / (up[k] - down[k]);
    if (k == 0) j.resize(column.size(), x.size());
    j.col(k) = column;
  }
  return j;
}

LinearModel linearise(const Aircraft& aircraft, const FlightState<double>& about,
                      const AirSample<double>& air) {
  LinearModel model;
  model.a = central_jacobian(
      [&](const Eigen::VectorXd& x) { return linear_state_rate(aircraft, flight_state(about, x), air); },
      linear_state(about), state_steps());
  // Beyond its end settings the flap does nothing: there the difference is taken from the inner side alone.
  Eigen::VectorXd u = inputs(about.airframe);
  const std::vector<FlapSetting>& flaps = aircraft.type.flaps;
  u[kFlap] =
      std::clamp(u[kFlap], flaps.front().deflection_rad + kNudge, flaps.back().deflection_rad - kNudge);
  model.b = central_jacobian(
      [&](const Eigen::VectorXd& at) { return linear_state_rate(aircraft, with_inputs(about, at), air); }, u,
      Eigen::VectorXd::Constant(kInputPlaces, kNudge));
  return model;
}

}  // namespace stallwright
