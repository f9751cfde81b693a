#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/section.hpp"
#include "tests/sim/motion/marram.hpp"

using namespace stallwright;

namespace {

constexpr double kDeg = math::kDegree;

SectionType wing_section() { return testing::marram_type().wing.section; }

SectionCoefficients<double> static_coefficients(const SectionType& s, double alpha,
                                                const SectionShift<double>& shift = {}) {
  return section_coefficients(s, alpha, static_separation(s, alpha, shift.stall_rad), shift);
}

double largest_jump(const SectionCoefficients<double>& a, const SectionCoefficients<double>& b) {
  return std::max({std::abs(a.lift - b.lift), std::abs(a.drag - b.drag), std::abs(a.moment - b.moment)});
}

}  // namespace

TEST_CASE("half the chord is separated at the stall angle, on either side", "[aircraft]") {
  const SectionType s = wing_section();
  CHECK(static_separation(s, s.stall_rad, 0.0) == Approx(0.5).margin(1e-6));
  CHECK(static_separation(s, s.negative_stall_rad, 0.0) == Approx(0.5).margin(1e-6));
  CHECK(static_separation(s, s.stall_rad + 2.0 * kDeg, 2.0 * kDeg) == Approx(0.5).margin(1e-6));
  CHECK(static_separation(s, 0.0, 0.0) > 0.99);
  CHECK(static_separation(s, s.stall_rad - s.stall_width_rad, 0.0) ==
        Approx(1.0 / (1.0 + std::exp(-1.0))).margin(1e-6));
  for (const double beyond : {40.0, 90.0, 180.0, -40.0, -90.0, -180.0})
    CHECK(static_separation(s, beyond * kDeg, 0.0) < 1e-4);
}

TEST_CASE("the section is finite and unbroken all the way round, flap and control out or in", "[aircraft]") {
  // A scan each 0.01 deg: steepest is the moment's fall across the stall, about 0.1 of lift a degree; a break
  // of 0.01 would show. The last step crosses +-180 deg.
  const SectionType s = wing_section();
  for (const double flap : {0.0, -10.0 * kDeg, 12.0 * kDeg})
    for (const double x : {-1.0, 0.0, 0.04, 0.5, 1.0}) {  // -1: the static one
      const SectionShift<double> shift{flap, -1.0 * kDeg, 0.02, -0.1};
      const auto at = [&](double alpha) {
        return x < 0.0 ? static_coefficients(s, alpha, shift) : section_coefficients(s, alpha, x, shift);
      };
      auto before = at(180.0 * kDeg);
      double worst = 0.0, worst_at = 0.0;
      for (int i = -18000; i <= 18000; ++i) {
        const auto now = at(0.01 * i * kDeg);
        REQUIRE(std::isfinite(now.lift + now.drag + now.moment));
        REQUIRE(now.drag > 0.0);
        if (largest_jump(now, before) > worst) worst = largest_jump(now, before), worst_at = 0.01 * i;
        before = now;
      }
      CAPTURE(flap, x, worst_at);
      CHECK(worst < 0.01);
    }
}

TEST_CASE("zero lift stands at the zero-lift angle, which a flap moves down", "[aircraft]") {
  const SectionType s = wing_section();
  CHECK(static_coefficients(s, s.zero_lift_rad).lift == Approx(0.0).margin(2e-3));
  const SectionShift<double> flap{-8.0 * kDeg, 0.0, 0.03, -0.1};
  CHECK(static_coefficients(s, s.zero_lift_rad - 8.0 * kDeg, flap).lift == Approx(0.0).margin(1e-2));
  const auto clean = static_coefficients(s, 4.0 * kDeg), out = static_coefficients(s, 4.0 * kDeg, flap);
  CHECK(out.lift > clean.lift + 0.7);
  CHECK(out.drag > clean.drag + 0.03);
  CHECK(out.moment < clean.moment - 0.09);
}

TEST_CASE("the static section stalls: lift rises to its maximum and falls, the force goes aft, drag jumps",
          "[aircraft]") {
  const SectionType s = wing_section();
  double most = 0.0, at = 0.0;
  for (double alpha = 0.0; alpha < 30.0 * kDeg; alpha += 0.05 * kDeg)
    if (static_coefficients(s, alpha).lift > most) most = static_coefficients(s, alpha).lift, at = alpha;
  CHECK(at < s.stall_rad);
  CHECK(at > s.stall_rad - 4.0 * s.stall_width_rad);
  const auto before = static_coefficients(s, at), after = static_coefficients(s, s.stall_rad + 4.0 * kDeg),
             deep = static_coefficients(s, s.stall_rad + 12.0 * kDeg);
  CHECK(after.lift < 0.75 * most);
  CHECK(deep.moment < before.moment - 0.02);
  CHECK(after.drag > 3.0 * before.drag);
}

TEST_CASE("at right angles to the flow a section is a plate of its own normal force", "[aircraft]") {
  const SectionType s = wing_section();
  for (const double side : {1.0, -1.0}) {
    const auto c = static_coefficients(s, side * 90.0 * kDeg);
    CHECK(c.lift == Approx(0.0).margin(1e-9));
    CHECK(c.normal == Approx(side * s.flat_plate_normal_force).epsilon(1e-9));
    CHECK(c.drag > s.flat_plate_normal_force);
    CHECK(c.moment == Approx(-0.25 * c.normal).epsilon(1e-9));  // the force stands at mid-chord
  }
}

TEST_CASE("profile drag is least at its own lift coefficient", "[aircraft]") {
  SectionType s = wing_section();
  const auto drag = [&](double lift) {
    const double alpha = s.zero_lift_rad + lift / s.lift_slope_per_rad;
    return section_coefficients(s, alpha, 1.0, SectionShift<double>{}).drag;
  };
  CHECK(drag(s.cl_min_drag) == Approx(s.profile_drag).epsilon(1e-3));
  CHECK(drag(s.cl_min_drag + 0.5) == Approx(s.profile_drag + 0.25 * s.drag_rise).epsilon(0.02));
  CHECK(drag(s.cl_min_drag - 0.5) == Approx(s.profile_drag + 0.25 * s.drag_rise).epsilon(0.02));
}
