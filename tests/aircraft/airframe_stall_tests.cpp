#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/airframe.hpp"
#include "tests/sim/motion/marram.hpp"
#include "tests/sim/motion/wind_tunnel.hpp"

using namespace stallwright;
using namespace stallwright::testing;

namespace {
constexpr double kDeg = math::kDegree;
constexpr double kSpeed = 28.0;
}  // namespace

TEST_CASE("roll damping turns to autorotation beyond the stall", "[aircraft]") {
  // The state of the steady stall is disturbed by a roll of 0.1 rad/s; what it adds to the rolling moment
  // changes sign.
  const Aircraft a = airframe_alone();
  const auto damping = [&](double alpha_deg) {
    RelativeFlow<double> flow = flow_at(kSpeed, alpha_deg * kDeg);
    const AirframeState<double> still = settled(a, attached(), flow, 5.0);
    const double before = airframe_loads(a, still, flow, Controls<double>{}).moment_B.x;
    flow.rate_B.x = 0.1;
    return airframe_loads(a, settled(a, still, flow, 3.0), flow, Controls<double>{}).moment_B.x - before;
  };
  CAPTURE(damping(6.0), damping(12.0), damping(18.0), damping(22.0));
  CHECK(damping(6.0) < -200.0);
  CHECK(damping(18.0) > 0.5 * damping(6.0));
  CHECK(damping(22.0) > 30.0);
}

TEST_CASE("lift at an angle near the stall is more on the way up than on the way down", "[aircraft]") {
  const Aircraft a = airframe_alone();
  AirframeState<double> s = settled(a, attached(), flow_at(kSpeed, 8.0 * kDeg));
  double rising = 0.0, falling = 0.0;
  const double rate = 10.0 * kDeg, at = 18.0 * kDeg;
  for (double t = 0.0; t < 3.0; t += 0.01) {
    const double alpha = t < 1.5 ? 8.0 * kDeg + rate * t : 23.0 * kDeg - rate * (t - 1.5);
    const RelativeFlow<double> flow = flow_at(kSpeed, alpha);
    const double lift = lift_n(airframe_loads(a, s, flow, Controls<double>{}), alpha);
    if (std::abs(alpha - at) < 0.06 * kDeg) (t < 1.5 ? rising : falling) = lift;
    s = settled(a, s, flow, 0.01);
  }
  CAPTURE(rising, falling);
  REQUIRE(falling > 0.0);
  CHECK(rising > 1.1 * falling);
  const double held = lift_n(measured(a, attached(), flow_at(kSpeed, at)), at);
  CHECK(rising > held);
  CHECK(falling < held);
}

TEST_CASE("the stall begins at the root and the washed-out tips stall last", "[aircraft]") {
  const Aircraft a = airframe_alone();
  const AirframeState<double> s = settled(a, attached(), flow_at(kSpeed, 17.0 * kDeg), 5.0);
  CHECK(s.separation[7] < 0.7);
  CHECK(s.separation[0] > s.separation[7] + 0.15);
}

TEST_CASE("buffet comes with separation and only then", "[aircraft]") {
  const Aircraft a = airframe_alone();
  const auto shaken = [&](double alpha_deg) {
    RelativeFlow<double> flow = flow_at(kSpeed, alpha_deg * kDeg);
    const AirframeState<double> s = settled(a, attached(), flow, 5.0);
    const Vec3<double> calm = airframe_loads(a, s, flow, Controls<double>{}).force_B;
    flow.shake.fill(1.0);
    return norm(airframe_loads(a, s, flow, Controls<double>{}).force_B - calm) / (a.mass.mass_kg * 9.80665);
  };
  CAPTURE(shaken(3.0), shaken(18.0));
  CHECK(shaken(3.0) < 0.003);
  CHECK(shaken(18.0) > 0.02);
}

TEST_CASE("a tail as high as the stalled wing's wake stands in it, a low one passes below", "[aircraft]") {
  // At the angles of the stall the wake rises by about a fifth of the tail arm: above the tail of the
  // high-wing Marram, and onto the same tail raised by a metre. Unstalled there is no wake to stand in.
  const auto wake = [](double raised_m, double alpha_deg) {
    AircraftType type = marram_type();
    for (SurfaceStation& station : type.tail.stations) station.rise_m += raised_m;
    const Aircraft a = make_aircraft(type, default_loading(type), 0);
    const RelativeFlow<double> flow = flow_at(kSpeed, alpha_deg * kDeg);
    const AirframeState<double> s = settled(a, attached(), flow, 5.0);
    return s.wake * detail::wake_closeness(a, a.strips[kWingStrips], false, detail::wake_slope(s, flow));
  };
  CAPTURE(wake(0.0, 18.0), wake(1.0, 18.0), wake(1.5, 18.0), wake(1.0, 4.0));
  CHECK(wake(0.0, 18.0) < 0.05);
  CHECK(std::max(wake(1.0, 18.0), wake(1.5, 18.0)) > 0.3);
  CHECK(wake(0.0, 4.0) < 0.02);
  CHECK(wake(1.0, 4.0) < 0.02);
}
