#include <catch2/catch.hpp>
#include <cmath>
#include <stdexcept>

#include "sim/motion/modes.hpp"

using namespace stallwright;

namespace {

/// Writes x'' + 2 z w x' + w^2 x = 0 on two places.
void put_oscillator(Eigen::MatrixXd& a, Eigen::Index x, Eigen::Index rate, double w, double z) {
  a(x, rate) = 1.0;
  a(rate, x) = -w * w;
  a(rate, rate) = -2.0 * z * w;
}

/// An aeroplane made of five things that do not know of each other.
Eigen::MatrixXd uncoupled(double short_damping, Eigen::Index memory = 0) {
  Eigen::MatrixXd a = Eigen::MatrixXd::Zero(kRigidPlaces + memory, kRigidPlaces + memory);
  put_oscillator(a, kW, kQ, 5.0, short_damping);
  put_oscillator(a, kTheta, kU, 0.3, 0.05);
  put_oscillator(a, kV, kR, 2.0, 0.15);
  a(kP, kP) = -8.0;
  a(kPhi, kPhi) = 0.02;
  for (Eigen::Index i = kRigidPlaces; i < a.rows(); ++i) a(i, i) = -10.0 - static_cast<double>(i);
  return a;
}

}  // namespace

TEST_CASE("five uncoupled motions are found by name with their own period and damping", "[motion]") {
  for (const Eigen::Index memory : {0, 6}) {
    const std::vector<Mode> modes = classical_modes({uncoupled(0.6, memory), {}});
    const Mode &brief = mode_named(modes, "short period"), &phugoid = mode_named(modes, "phugoid"),
               &dutch = mode_named(modes, "dutch roll");
    CAPTURE(memory);
    CHECK(brief.natural_period_s == Approx(2.0 * math::kPi / 5.0));
    CHECK(brief.damping_ratio == Approx(0.6));
    CHECK(brief.time_constant_s == Approx(1.0 / 3.0));
    CHECK(phugoid.natural_period_s == Approx(2.0 * math::kPi / 0.3));
    CHECK(phugoid.damping_ratio == Approx(0.05));
    CHECK(dutch.natural_period_s == Approx(math::kPi));
    CHECK(dutch.damping_ratio == Approx(0.15));
    CHECK(mode_named(modes, "roll").time_constant_s == Approx(0.125));
    CHECK(mode_named(modes, "spiral").time_constant_s == Approx(-50.0));
    CHECK(std::isnan(mode_named(modes, "roll").natural_period_s));
    for (const Mode& mode : modes) CHECK(mode.participation == Approx(1.0));
  }
}

TEST_CASE("a short period damped beyond swinging keeps its natural period from both its eigenvalues",
          "[motion]") {
  const std::vector<Mode> modes = classical_modes({uncoupled(1.25), {}});
  const Mode& brief = mode_named(modes, "short period");
  // -2 z w = -12.5, w^2 = 25: -2.5 and -10.
  CHECK(brief.eigenvalue.real() == Approx(-2.5));
  CHECK(brief.partner.real() == Approx(-10.0));
  CHECK(brief.natural_period_s == Approx(2.0 * math::kPi / 5.0));
  CHECK(brief.damping_ratio == Approx(1.25));
  CHECK(brief.time_constant_s == Approx(0.4));
}

TEST_CASE("the roll that is reported is that of the air with its memory, not of the quasi-static guide",
          "[motion]") {
  // p' = -12 p + 6 y, y' = 10 (p - y): lambda^2 + 22 lambda + 60 = 0, the slower root -3.19. Air that follows
  // at once gives -6, and with its lag to first order (1 + 6/10) p' = -6 p: -3.75.
  Eigen::MatrixXd a = uncoupled(0.6, 1);
  a(kP, kP) = -12.0;
  a(kP, kRigidPlaces) = 6.0;
  a(kRigidPlaces, kP) = 10.0;
  a(kRigidPlaces, kRigidPlaces) = -10.0;
  const Mode roll = mode_named(classical_modes({a, {}}), "roll");
  CHECK(roll.guide.real() == Approx(-3.75));
  CHECK(roll.eigenvalue.real() == Approx(-11.0 + std::sqrt(61.0)));
  CHECK(roll.participation > 0.2);
  CHECK(roll.participation < 0.8);
}

TEST_CASE("modes of a matrix that is too small or not finite are refused", "[motion]") {
  CHECK_THROWS_AS(classical_modes({Eigen::MatrixXd::Zero(7, 7), {}}), std::invalid_argument);
  Eigen::MatrixXd a = uncoupled(0.6);
  a(0, 0) = std::nan("");
  CHECK_THROWS_AS(classical_modes({a, {}}), std::invalid_argument);
  CHECK_THROWS_AS(mode_named({}, "roll"), std::out_of_range);
}
