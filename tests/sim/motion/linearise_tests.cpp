#include <Eigen/LU>
#include <catch2/catch.hpp>
#include <cmath>

#include "sim/motion/linearise.hpp"
#include "sim/motion/modes.hpp"
#include "tests/sim/motion/marram.hpp"

using namespace stallwright;
using namespace stallwright::testing;

namespace {

struct Level {
  Aircraft aircraft = marram();
  TrimCondition condition;
  Trim trim;
  Level() {
    condition.true_airspeed_mps = 33.0;
    trim = find_trim(aircraft, condition);
  }
};

/// RK4 of dx' = A dx + B du, the flight's own step and method, so that only linearity is compared.
Eigen::VectorXd linear_flight(const LinearModel& model, Eigen::VectorXd x, const Eigen::VectorXd& u,
                              int steps) {
  const auto rate = [&](const Eigen::VectorXd& at) -> Eigen::VectorXd { return model.a * at + model.b * u; };
  for (int i = 0; i < steps; ++i) {
    const Eigen::VectorXd k1 = rate(x), k2 = rate(x + 0.5 * kStep_s * k1), k3 = rate(x + 0.5 * kStep_s * k2),
                          k4 = rate(x + kStep_s * k3);
    x += kStep_s / 6.0 * (k1 + 2.0 * (k2 + k3) + k4);
  }
  return x;
}

/// Distance of two rigid motions: speeds in m/s, angles and rates weighed by 30 m/s a radian.
double apart(const Eigen::VectorXd& a, const Eigen::VectorXd& b) {
  Eigen::VectorXd d = (a - b).head(kRigidPlaces);
  d.tail(5) *= 30.0;
  return d.norm();
}

/// How far linear and nonlinear flight are apart after 2 s from an offset, and how far the flight moved.
struct Parting {
  double error, moved;
};

Parting parting(const Level& level, const LinearModel& model, const Eigen::VectorXd& offset) {
  const Eigen::VectorXd trim = linear_state(level.trim.state);
  FlightState<double> s = flight_state(level.trim.state, trim + offset);
  const AirSample<double> air = trim_air(level.condition);
  Parting p{0.0, 0.0};
  for (int tenth = 1; tenth <= 20; ++tenth) {
    for (int i = 0; i < 10; ++i) s = flight_step(level.aircraft, s, level.trim.controls, air);
    const Eigen::VectorXd linear =
        linear_flight(model, offset, Eigen::VectorXd::Zero(kInputPlaces), 10 * tenth);
    p.error = std::max(p.error, apart(linear_state(s) - trim, linear));
    p.moved = std::max(p.moved, linear.head(kRigidPlaces).norm());
  }
  return p;
}

}  // namespace

TEST_CASE("central differences give the matrix of a damped oscillator exactly", "[motion]") {
  // x'' + 2 z w x' + w^2 x = 0: linear, so only rounding is left.
  const double w = 3.0, z = 0.2;
  const auto oscillator = [&](const Eigen::VectorXd& x) {
    return Eigen::VectorXd(Eigen::Vector2d(x[1], -w * w * x[0] - 2.0 * z * w * x[1]));
  };
  const Eigen::MatrixXd j =
      central_jacobian(oscillator, Eigen::Vector2d(0.3, -0.1), Eigen::Vector2d(1e-6, 1e-6));
  Eigen::Matrix2d exact;
  exact << 0.0, 1.0, -w * w, -2.0 * z * w;
  CHECK((j - exact).cwiseAbs().maxCoeff() < 1e-8);
}

TEST_CASE("central differences of a cubic err by the square of the step", "[motion]") {
  const auto cubic = [](const Eigen::VectorXd& x) { return Eigen::VectorXd(x.array().cube().matrix()); };
  for (const double h : {1e-1, 1e-2}) {
    const Eigen::MatrixXd j =
        central_jacobian(cubic, Eigen::VectorXd::Constant(1, 2.0), Eigen::VectorXd::Constant(1, h));
    CHECK(j(0, 0) - 12.0 == Approx(h * h).epsilon(1e-6));
  }
}

TEST_CASE("the numbers of a flight survive the way to a linear state and back", "[motion]") {
  const Level level;
  const Eigen::VectorXd x = linear_state(level.trim.state);
  REQUIRE(x.size() == kLinearPlaces);
  CHECK((linear_state(flight_state(level.trim.state, x)) - x).cwiseAbs().maxCoeff() < 1e-14);
}

TEST_CASE("the rigid part of the linear model in free fall is Newton's and Euler's by hand", "[motion]") {
  Aircraft a = marram();
  a.idle_throttle = 0.0;
  FlightState<double> s;
  s.rigid.velocity_B_mps = {20.0, -3.0, 5.0};
  s.rigid.rate_B_radps = {0.3, -0.2, 0.5};
  const double phi = 0.4, theta = -0.3;
  s.rigid.attitude_EB = quaternion(EulerAngles<double>{1.0, theta, phi});
  AirSample<double> nothing;
  nothing.density_kgpm3 = 1e-30;  // the propeller divides by density
  const Eigen::MatrixXd found = linearise(a, s, nothing).a.topLeftCorner(kRigidPlaces, kRigidPlaces);

  const auto skew = [](const Eigen::Vector3d& v) {
    Eigen::Matrix3d m;
    m << 0, -v[2], v[1], v[2], 0, -v[0], -v[1], v[0], 0;
    return m;
  };
  const Eigen::Vector3d v(20.0, -3.0, 5.0), w(0.3, -0.2, 0.5);
  Eigen::Matrix3d inertia;
  for (int i = 0; i < 3; ++i)
    for (int k = 0; k < 3; ++k) inertia(i, k) = a.mass.inertia(i, k);
  const double sf = std::sin(phi), cf = std::cos(phi), st = std::sin(theta), ct = std::cos(theta);
  const double g = gravity(0.0);
  Eigen::MatrixXd exact = Eigen::MatrixXd::Zero(kRigidPlaces, kRigidPlaces);
  exact.block<3, 3>(kU, kU) = -skew(w);
  exact.block<3, 3>(kU, kP) = skew(v);
  exact.block<3, 1>(kU, kPhi) = g * Eigen::Vector3d(0.0, cf * ct, -sf * ct);
  exact.block<3, 1>(kU, kTheta) = g * Eigen::Vector3d(-ct, -sf * st, -cf * st);
  exact.block<3, 3>(kP, kP) = inertia.inverse() * (skew(inertia * w) - skew(w) * inertia);
  exact.block<1, 3>(kPhi, kP) << 1.0, st / ct * sf, st / ct * cf;
  exact(kPhi, kPhi) = st / ct * (w[1] * cf - w[2] * sf);
  exact(kPhi, kTheta) = (w[1] * sf + w[2] * cf) / (ct * ct);
  exact.block<1, 3>(kTheta, kP) << 0.0, cf, -sf;
  exact(kTheta, kPhi) = -w[1] * sf - w[2] * cf;
  CAPTURE(found, exact);
  CHECK((found - exact).cwiseAbs().maxCoeff() < 1e-7);
}

TEST_CASE("the linear model follows the flight for 2 s, and twice as closely for half the disturbance",
          "[motion]") {
  const Level level;
  REQUIRE(level.trim.converged);
  const LinearModel model = linearise(level.aircraft, level.trim.state, trim_air(level.condition));
  struct Case {
    Eigen::Index place;
    double size;
  };
  for (const Case& c : {Case{kU, 0.5}, Case{kV, 0.5}, Case{kW, 0.5}, Case{kP, 0.02}, Case{kQ, 0.02},
                        Case{kR, 0.02}, Case{kPhi, 0.02}, Case{kTheta, 0.02}}) {
    Eigen::VectorXd offset = Eigen::VectorXd::Zero(kLinearPlaces);
    offset[c.place] = c.size;
    const Parting whole = parting(level, model, offset), half = parting(level, model, 0.5 * offset);
    CAPTURE(c.place, whole.error, whole.moved, half.error, half.moved);
    CHECK(half.error < 0.03 * half.moved);
    // What is left out is quadratic: relative error goes with the size, absolute with its square.
    CHECK(whole.error / half.error == Approx(4.0).epsilon(0.25));
  }
}

TEST_CASE("the control matrix predicts the first second after a small move of each control", "[motion]") {
  const Level level;
  const LinearModel model = linearise(level.aircraft, level.trim.state, trim_air(level.condition));
  const Eigen::VectorXd trim = linear_state(level.trim.state);
  for (const Eigen::Index input : {kElevator, kAileron, kRudder, kThrottle, kFlap}) {
    const double move = 0.002;
    FlightState<double> s = level.trim.state;
    Controls<double> hands = level.trim.controls;
    const AircraftType& type = level.aircraft.type;
    if (input == kElevator) hands.stick_aft -= move / type.elevator.max_negative_rad;
    if (input == kAileron) hands.stick_right += move / type.aileron.max_negative_rad;
    if (input == kRudder) hands.pedal_right -= move / type.rudder.max_negative_rad;
    if (input == kThrottle) hands.throttle += move;
    if (input == kFlap) hands.flap_rad += move;
    // What the linkage makes of it, at once: a surface that has arrived stays.
    s.airframe.elevator_rad = geared(type.elevator, -hands.stick_aft);
    s.airframe.aileron_rad = hands.stick_right * type.aileron.max_negative_rad;
    s.airframe.rudder_rad = geared(type.rudder, -hands.pedal_right);
    s.airframe.throttle = hands.throttle;
    s.airframe.flap_rad = hands.flap_rad;
    Eigen::VectorXd u = Eigen::VectorXd::Zero(kInputPlaces);
    const AirframeState<double>&after = s.airframe, &before = level.trim.state.airframe;
    u << after.elevator_rad - before.elevator_rad, after.aileron_rad - before.aileron_rad,
        after.rudder_rad - before.rudder_rad, after.throttle - before.throttle,
        after.flap_rad - before.flap_rad;
    for (int i = 0; i < 100; ++i) s = flight_step(level.aircraft, s, hands, trim_air(level.condition));
    const Eigen::VectorXd linear = linear_flight(model, Eigen::VectorXd::Zero(kLinearPlaces), u, 100);
    const Eigen::VectorXd flown = linear_state(s) - trim;
    CAPTURE(input, u, linear.head(kRigidPlaces), flown.head(kRigidPlaces));
    CHECK(u[input] != 0.0);
    CHECK(apart(linear, flown) < 0.02 * apart(linear, Eigen::VectorXd::Zero(kLinearPlaces)));
  }
}
