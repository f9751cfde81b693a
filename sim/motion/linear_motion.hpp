#pragma once
#include <vector>

#include "sim/motion/linearise.hpp"

/// Linearisation of any model of forces and moments; linearise.hpp says what the numbers mean.
namespace stallwright {

/// Step of the differences, times a number's unit: rounding leaves 1e-9 of a rate, curvature (at 0.7 deg of stall
/// width) 1e-8.
inline constexpr double kNudge = 1e-6;

/// The numbers of a motion that a linear model follows, the memory in its own units.
template <FlightModel Model>
Eigen::VectorXd motion_numbers(const typename Model::State& s) {
  const Vec3<double>&v = s.rigid.velocity_B_mps, &w = s.rigid.rate_B_radps;
  const EulerAngles<double> e = euler_angles(s.rigid.attitude_EB);
  Eigen::VectorXd x(kRigidPlaces + static_cast<Eigen::Index>(Model::kMemory));
  x.head(kRigidPlaces) << v.x, v.y, v.z, w.x, w.y, w.z, e.roll_rad, e.pitch_rad;
  Eigen::Index n = kRigidPlaces;
  Model::each_memory(s, [&](double value, double) { x[n++] = value; });
  return x;
}

/// The motion with these numbers; position, heading and inputs are those of `about`.
template <FlightModel Model>
typename Model::State motion_state(const typename Model::State& about, const Eigen::VectorXd& x) {
  typename Model::State s = about;
  s.rigid.velocity_B_mps = {x[kU], x[kV], x[kW]};
  s.rigid.rate_B_radps = {x[kP], x[kQ], x[kR]};
  const double yaw = euler_angles(about.rigid.attitude_EB).yaw_rad;
  s.rigid.attitude_EB = quaternion(EulerAngles<double>{yaw, x[kTheta], x[kPhi]});
  Eigen::Index n = kRigidPlaces;
  Model::each_memory(s, [&](double& value, double) { value = x[n++]; });
  return s;
}

/// Rates of those numbers.
template <FlightModel Model>
Eigen::VectorXd motion_rate(const Model& model, const typename Model::State& s) {
  const typename Model::State d = model.rate(s);
  const Vec3<double>&v = d.rigid.velocity_B_mps, &w = d.rigid.rate_B_radps;
  const Vec3<double>& turn = s.rigid.rate_B_radps;
  const EulerAngles<double> e = euler_angles(s.rigid.attitude_EB);
  double sine, cosine;
  math::sincos(e.roll_rad, sine, cosine);
  const double roll_rate = turn.x + math::tan(e.pitch_rad) * (turn.y * sine + turn.z * cosine);
  const double pitch_rate = turn.y * cosine - turn.z * sine;
  Eigen::VectorXd x(kRigidPlaces + static_cast<Eigen::Index>(Model::kMemory));
  x.head(kRigidPlaces) << v.x, v.y, v.z, w.x, w.y, w.z, roll_rate, pitch_rate;
  Eigen::Index n = kRigidPlaces;
  Model::each_memory(d, [&](double value, double) { x[n++] = value; });
  return x;
}

/// The inputs of a state, in the order in which its model names them.
template <FlightModel Model>
Eigen::VectorXd motion_inputs(const typename Model::State& s) {
  std::vector<double> u;
  Model::each_input(s, [&](double value) { u.push_back(value); });
  return Eigen::VectorXd::Map(u.data(), static_cast<Eigen::Index>(u.size()));
}

template <FlightModel Model>
typename Model::State with_inputs(typename Model::State s, const Eigen::VectorXd& u) {
  Eigen::Index n = 0;
  Model::each_input(s, [&](double& value) { value = u[n++]; });
  return s;
}

/// Linear model of `model` about a motion, steady or not; B is taken about the inputs u.
template <FlightModel Model>
LinearModel linearise_model(const Model& model, const typename Model::State& about,
                            const Eigen::VectorXd& u) {
  Eigen::VectorXd step(kRigidPlaces + static_cast<Eigen::Index>(Model::kMemory));
  step.head(kRigidPlaces) << 10.0, 10.0, 10.0, 1.0, 1.0, 1.0, 1.0, 1.0;
  Eigen::Index n = kRigidPlaces;
  Model::each_memory(about, [&](double, double unit) { step[n++] = unit; });
  LinearModel linear;
  linear.a = central_jacobian(
      [&](const Eigen::VectorXd& x) { return motion_rate(model, motion_state<Model>(about, x)); },
      motion_numbers<Model>(about), step * kNudge);
  linear.b = central_jacobian(
      [&](const Eigen::VectorXd& at) { return motion_rate(model, with_inputs<Model>(about, at)); }, u,
      Eigen::VectorXd::Constant(u.size(), kNudge));
  return linear;
}

}  // namespace stallwright
