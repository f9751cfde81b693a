#include <catch2/catch.hpp>

#include "tests/sim/sensing/sensing_cases.hpp"

using namespace stallwright;
using namespace stallwright::sensing_cases;

namespace {
const ProbeType kProbe = installation().probe;

double over_q(double speed, double alpha, double beta = 0.0, double rho = 1.225) {
  return static_probe_pressure(kProbe, velocity(speed, alpha, beta), rho) / (0.5 * rho * speed * speed);
}
}  // namespace

TEST_CASE("the probe's pressure difference is that of the sphere's two ports for any flow direction",
          "[sensing][closed-form]") {
  const double theta = kProbe.port_angle_rad, mount = kProbe.mount_rad;
  // Port normals in body axes: off the axis by theta, down for the lower and up for the upper.
  const auto normal = [&](double angle) {
    return Vec3<double>{math::cos(mount + angle), 0.0, math::sin(mount + angle)};
  };
  for (const double alpha : {-0.3, 0.0, 0.14, 0.4})
    for (const double beta : {-0.2, 0.0, 0.15}) {
      CAPTURE(alpha, beta);
      const Vec3<double> v = velocity(1.0, alpha, beta);
      const double lower = sphere_pressure_coefficient(math::acos(dot(normal(theta), v)));
      const double upper = sphere_pressure_coefficient(math::acos(dot(normal(-theta), v)));
      CHECK(over_q(35.0, alpha, beta) == Approx(lower - upper).margin(1e-14));
    }
}

TEST_CASE(
    "the probe axis points below body x: it reads zero at an angle of attack equal to the mounting angle",
    "[sensing][invariant]") {
  CHECK(over_q(30.0, 8.0 * kDeg) == Approx(0.0).margin(1e-15));
  CHECK(over_q(30.0, 0.0) < -0.5);
  CHECK(over_q(30.0, 16.0 * kDeg) > 0.5);
  // An axis further down than nominal reads lower.
  CHECK(static_probe_pressure(kProbe, velocity(30.0, 0.2), 1.2, 0.01) <
        static_probe_pressure(kProbe, velocity(30.0, 0.2), 1.2));
}

TEST_CASE("the probe's pressure rises with angle of attack from -30 to 50 degrees", "[sensing][limits]") {
  for (double alpha = -30.0; alpha < 50.0; alpha += 0.5) {
    CAPTURE(alpha);
    CHECK(over_q(30.0, (alpha + 0.5) * kDeg) > over_q(30.0, alpha * kDeg));
  }
}

TEST_CASE("over dynamic pressure the probe depends on neither speed nor density", "[sensing][invariant]") {
  const double reference = over_q(30.0, 0.2, 0.1);
  for (const double speed : {5.0, 20.0, 80.0})
    for (const double rho : {0.7, 1.0, 1.3})
      CHECK(over_q(speed, 0.2, 0.1, rho) == Approx(reference).epsilon(1e-13));
}

TEST_CASE("sideslip acts on the probe through one factor common to all angles of attack",
          "[sensing][invariant]") {
  for (const double beta : {-0.3, 0.05, 0.2})
    for (const double alpha : {-0.1, 0.05, 0.3}) {
      // The axis lies in the plane of symmetry, so beta to the axis is beta to the body.
      const double factor = math::cos(beta) * math::cos(beta);
      CHECK(over_q(30.0, alpha, beta) == Approx(factor * over_q(30.0, alpha)).epsilon(1e-12));
      CHECK(over_q(30.0, alpha, beta) == Approx(over_q(30.0, alpha, -beta)).epsilon(1e-12));
    }
}

TEST_CASE("a probe at rest feels nothing", "[sensing][limits]") {
  CHECK(static_probe_pressure(kProbe, Vec3<double>{}, 1.225) == 0.0);
}
