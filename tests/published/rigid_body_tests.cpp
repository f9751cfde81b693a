#include <gsl/gsl_sf_elljac.h>

#include <catch2/catch.hpp>
#include <cmath>

#include "sim/motion/rigid_body.hpp"
#include "sim/motion/runge_kutta.hpp"
#include "tests/published/csv_rows.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;
using evidence::Published;
using evidence::WorstRow;

namespace {

std::string seconds(double time_s) { return std::to_string(time_s).substr(0, 5) + " s"; }

constexpr double kDeg = M_PI / 180.0;
using Rates = Vec3<double>;

Inertia<double> principal(double a, double b, double c) {
  return {1.0, Mat3<double>::diagonal(a, b, c), Mat3<double>::diagonal(1.0 / a, 1.0 / b, 1.0 / c)};
}

/// The brick of check case 02, slug ft2: the unit falls out of torque-free motion.
Inertia<double> brick() { return principal(0.001894220, 0.006211019, 0.007194665); }

RigidState<double> tumbled(const Inertia<double>& body, const Rates& start, double time_s, int steps) {
  RigidState<double> s;
  s.rate_B_radps = start;
  for (int i = 0; i < steps; ++i)
    s = runge_kutta_step(s, time_s / steps, [&](const RigidState<double>& at) {
      return rigid_rates(at, body, Wrench<double>{}, 0.0);
    });
  return s;
}

/// Landau and Lifshitz, Mechanics, section 37: p = P cn, q = Q sn, r = R dn of n t + u0, for A < B < C and
/// L^2 > 2T B, first and third components positive [LANDAU-1976].
Rates jacobi_rates(const Inertia<double>& body, const Rates& w, double time_s) {
  const double a = body.tensor_kgm2(0, 0), b = body.tensor_kgm2(1, 1), c = body.tensor_kgm2(2, 2);
  const double t2 = a * w.x * w.x + b * w.y * w.y + c * w.z * w.z;
  const double l2 = a * a * w.x * w.x + b * b * w.y * w.y + c * c * w.z * w.z;
  const double p = std::sqrt((t2 * c - l2) / (a * (c - a)));
  const double q = std::sqrt((t2 * c - l2) / (b * (c - b)));
  const double r = std::sqrt((l2 - t2 * a) / (c * (c - a)));
  const double n = std::sqrt((c - b) * (l2 - t2 * a) / (a * b * c));
  const double m = (b - a) * (t2 * c - l2) / ((c - b) * (l2 - t2 * a));
  // u0 is the incomplete integral of the amplitude asin(q/Q), found by Newton: d sn/du = cn dn.
  double sn = 0, cn = 1, dn = 1, u0 = 0.5;
  for (int i = 0; i < 50; ++i) {
    gsl_sf_elljac_e(u0, m, &sn, &cn, &dn);
    u0 -= (sn - w.y / q) / (cn * dn);
  }
  gsl_sf_elljac_e(n * time_s + u0, m, &sn, &cn, &dn);
  return {p * cn, q * sn, r * dn};
}

}  // namespace

TEST_CASE("torque-free tumbling follows Jacobi's elliptic functions to 1e-10 rad/s over 30 s",
          "[motion][published]") {
  // Steps of 1.5 ms: RK4 leaves about 1e-13 rad/s there; the functions are good to 1e-15.
  const Rates start{10 * kDeg, 20 * kDeg, 30 * kDeg};
  WorstRow roll, pitch, yaw;
  for (const double time : {3.0, 11.0, 17.384489271939, 30.0}) {
    const Rates w = tumbled(brick(), start, time, static_cast<int>(time / 0.0015)).rate_B_radps;
    const Rates exact = jacobi_rates(brick(), start, time);
    roll.difference(seconds(time), w.x, exact.x, 1e-10);
    pitch.difference(seconds(time), w.y, exact.y, 1e-10);
    yaw.difference(seconds(time), w.z, exact.z, 1e-10);
  }
  const Published jacobi{"LANDAU-1976", "section 37, Jacobi's elliptic functions", "from memory; verified"};
  const char* left = "a thousand times what the steps of 1.5 ms leave";
  roll.hold(jacobi, "tumbling brick, roll rate to 30 s", "rad/s", left);
  pitch.hold(jacobi, "tumbling brick, pitch rate to 30 s", "rad/s", left);
  yaw.hold(jacobi, "tumbling brick, yaw rate to 30 s", "rad/s", left);
}

TEST_CASE("the tumbling brick of NASA's check case 02 keeps its published rates to 1e-7 deg/s",
          "[motion][published]") {
  // [NESC-2015] case 02, tools 01 and 04, printed to 1e-8 deg/s; a third decimal place for rounding and
  // theirs.
  const auto rows = published::csv_rows("torque_free_brick.csv");
  REQUIRE(rows.size() == 16);
  REQUIRE(rows.back()[0] == 30.0);
  WorstRow roll, pitch, yaw;
  for (const auto& row : rows) {
    const Rates w =
        tumbled(brick(), {10 * kDeg, 20 * kDeg, 30 * kDeg}, row[0], static_cast<int>(row[0] * 100))
            .rate_B_radps;
    for (const std::size_t tool : {4u, 7u}) {
      const std::string at = seconds(row[0]) + ", tool " + (tool == 4u ? "01" : "04");
      roll.row(at, w.x / kDeg, row[tool], 1e-7);
      pitch.row(at, w.y / kDeg, row[tool + 1], 1e-7);
      yaw.row(at, w.z / kDeg, row[tool + 2], 1e-7);
    }
  }
  const Published brick_case{"NESC-2015", "case 02, tumbling brick, tools 01 and 04", "read"};
  roll.hold(brick_case, "case 02, roll rate", "deg/s", "ten units of the last digit");
  pitch.hold(brick_case, "case 02, pitch rate", "deg/s", "ten units of the last digit");
  yaw.hold(brick_case, "case 02, yaw rate", "deg/s", "ten units of the last digit");
}

TEST_CASE("halving the step of the tumbling brick divides the error by 2^4", "[motion][published]") {
  const Rates start{10 * kDeg, 20 * kDeg, 30 * kDeg};
  const Rates exact = jacobi_rates(brick(), start, 30.0);
  double before = 0.0;
  for (const int steps : {150, 300, 600, 1200}) {
    const double error = norm(tumbled(brick(), start, 30.0, steps).rate_B_radps - exact);
    if (before > 0.0)
      evidence::hold({"LANDAU-1976", "section 37, Jacobi's elliptic functions", "from memory; verified"},
                     "tumbling brick, order of the integrator from " + std::to_string(steps / 2) + " to " +
                         std::to_string(steps) + " steps",
                     std::log2(before / error), 4.0, 0.15, "1", "terms of the next order");
    before = error;
  }
}

TEST_CASE("a symmetric top precesses at r (C - A)/A seen from the body and at L/A seen from the earth",
          "[motion][published]") {
  // [LANDAU-1976] section 33, exact.
  const double a = 2.0, c = 3.0, spin = 4.0, across = 1.0;
  const double time = 2.5;
  const RigidState<double> s = tumbled(principal(a, a, c), {across, 0.0, spin}, time, 5000);
  const double turned = spin * (c - a) / a * time;
  const Published top{"LANDAU-1976", "section 33, symmetrical top", "from memory; worked by hand"};
  const char* steps = "what steps of 0.5 ms leave";
  evidence::hold(top, "symmetrical top, rate across after 2.5 s, x", s.rate_B_radps.x,
                 across * std::cos(turned), 1e-9, "rad/s", steps);
  evidence::hold(top, "symmetrical top, rate across after 2.5 s, y", s.rate_B_radps.y,
                 across * std::sin(turned), 1e-9, "rad/s", steps);
  // Angular momentum, in earth axes, stays where it was.
  const Vec3<double> l_E = rotation_EB(s.attitude_EB) *
                           Vec3<double>{a * s.rate_B_radps.x, a * s.rate_B_radps.y, c * s.rate_B_radps.z};
  WorstRow momentum;
  momentum.difference("north", l_E.x, a * across, 1e-9);
  momentum.difference("east", l_E.y, 0.0, 1e-9);
  momentum.difference("down", l_E.z, c * spin, 1e-9);
  momentum.hold(top, "symmetrical top, angular momentum after 2.5 s", "kg m2/s", steps);
  // The body's axis circles the angular momentum at L/A.
  const Vec3<double> l{a * across, 0.0, c * spin};
  const Vec3<double> axis_E = rotation_EB(s.attitude_EB) * Vec3<double>{0.0, 0.0, 1.0};
  const Vec3<double> e1 = l * (1.0 / norm(l)), start{0.0, 0.0, 1.0};
  const double angle = norm(l) / a * time;
  const Vec3<double> turned_axis = start * std::cos(angle) + cross(e1, start) * std::sin(angle) +
                                   e1 * (dot(e1, start) * (1.0 - std::cos(angle)));
  WorstRow axis;
  axis.difference("2.5 s", norm(axis_E - turned_axis), 0.0, 1e-9);
  axis.hold(top, "symmetrical top, its axis off the cone after 2.5 s", "rad", steps);
}
