// Where a discrete gust is met, which way it blows, and that its rates are its own slope.
#include <catch2/catch.hpp>
#include <cmath>

#include "sim/air/discrete_gust.hpp"
#include "sim/motion/rigid_body.hpp"

using namespace stallwright;

namespace {

constexpr double kStep = 0.01;

DiscreteGust planned() {
  DiscreteGust g;
  g.start_s = 2.0;
  g.length_m = 60.0;
  g.peak_mps = {1.0, 2.0, 4.0};
  return g;
}

math::Mat3<double> to_body(double roll, double pitch, double yaw) {
  return transpose(rotation_EB(quaternion(EulerAngles<double>{yaw, pitch, roll})));
}

}  // namespace

TEST_CASE("a gust is met at its time and is as long as the air flown through", "[air][gust]") {
  const DiscreteGust g = planned();
  DiscreteGustState<double> x;
  const math::Mat3<double> level = to_body(0.0, 0.0, 0.0);
  for (int i = 0; i < 600; ++i) {
    const double t = kStep * i, airspeed = i % 2 ? 30.0 : 50.0, s = i <= 200 ? 0.0 : 40.0 * (t - 2.0);
    const double up = -gust(g, x, level).v_B_mps.z;
    CAPTURE(t);
    CHECK(up == Approx(s > 60.0 ? 0.0 : 2.0 * (1.0 - std::cos(2.0 * M_PI * s / 60.0))).margin(0.05));
    x = advance(g, x, t, {1.0, 0.0, 0.0}, airspeed, kStep);
  }
  CHECK(gust(g, x, level).v_B_mps == math::Vec3<double>{0.0, 0.0, 0.0});
}

TEST_CASE("a gust keeps the heading it was met on, and its up is the earth's", "[air][gust]") {
  const DiscreteGust g = planned();
  DiscreteGustState<double> x;
  // Met on an easterly heading with the nose up; then the aeroplane turns and banks.
  x = advance(g, x, 3.0, {0.0, 0.9, -0.3}, 100.0, 0.3);
  x = advance(g, x, 3.3, {1.0, 0.0, 0.0}, 0.0, 0.01);
  CHECK(x.distance_m == Approx(30.0));
  const auto in_E = gust(g, x, to_body(0.0, 0.0, 0.0)).v_B_mps;
  CHECK(in_E.x == Approx(-2.0));  // right of east is south
  CHECK(in_E.y == Approx(1.0));
  CHECK(in_E.z == Approx(-4.0));
  const math::Mat3<double> banked = to_body(0.7, 0.2, 1.1);
  const auto in_B = gust(g, x, banked).v_B_mps, expected = banked * in_E;
  CHECK(in_B.x == Approx(expected.x));
  CHECK(in_B.y == Approx(expected.y));
  CHECK(in_B.z == Approx(expected.z));
}

TEST_CASE("the rates of a gust are its slope along the path, and it has none across", "[air][gust]") {
  const auto shape = GENERATE(GustShape::kOneMinusCosine, GustShape::kRampAndHold);
  DiscreteGust g = planned();
  g.shape = shape;
  const auto at = [&](double s) {
    DiscreteGustState<double> x;
    x.ahead_E = {1.0, 0.0, 0.0};
    x.distance_m = s;
    return gust(g, x, to_body(0.0, 0.0, 0.0));
  };
  for (const double s : {-3.0, 7.0, 30.0, 52.0, 59.0, 75.0}) {
    const double h = 1e-4;
    const auto slope = (at(s + h).v_B_mps - at(s - h).v_B_mps) / (2.0 * h);
    CAPTURE(s);
    CHECK(at(s).omega_B_radps.x == 0.0);
    CHECK(at(s).omega_B_radps.y == Approx(-slope.z).margin(1e-7));
    CHECK(at(s).omega_B_radps.z == Approx(slope.y).margin(1e-7));
    // A point ahead feels what the reference point is about to.
    const auto nose = at(s).v_B_mps + math::cross(at(s).omega_B_radps, {0.01, 0.0, 0.0});
    CHECK(nose.z == Approx(at(s + 0.01).v_B_mps.z).margin(5e-6));
  }
}
