// The dials' own lag, against its closed form.
#include <catch2/catch.hpp>
#include <limits>
#include <numbers>

#include "aircraft/math/units.hpp"
#include "render/flight/needles.hpp"

using namespace stallwright;

namespace {
constexpr double kDegree = std::numbers::pi / 180.0;

Readings<double> level() {
  Readings<double> r;
  r.indicated_airspeed_mps = 60.0 * kKnot;
  r.indicated_altitude_m = 3000.0 * kFoot;
  r.heading_rad = 350.0 * kDegree;
  r.down_mps2 = -9.8;
  r.propeller_radps = 2000.0 * 2.0 * std::numbers::pi / 60.0;
  r.probe_ratio = 0.1;
  return r;
}
}  // namespace

TEST_CASE("the first needles stand at the readings", "[view][needles]") {
  Readings<double> r = level();
  r.vertical_speed_mps = 500.0 * kFootPerMinute;
  r.pitch_rad = 5.0 * kDegree;
  r.bank_rad = -20.0 * kDegree;
  r.yaw_rate_radps = 3.0 * kDegree;
  const Needles n = advance({}, r, 0.02);
  CHECK(n.started);
  CHECK(n.airspeed_kt == Approx(60.0));
  CHECK(n.altitude_ft == Approx(3000.0));
  CHECK(n.vertical_speed_fpm == Approx(500.0));
  CHECK(n.pitch_deg == Approx(5.0));
  CHECK(n.bank_deg == Approx(-20.0));
  CHECK(n.heading_deg == Approx(350.0));
  CHECK(n.turn_rate_degps == Approx(3.0));
  CHECK(n.rpm == Approx(2000.0));
  CHECK(n.probe_ratio == Approx(0.1));
}

TEST_CASE("each needle follows a step as exp(-t/T) whatever the sample time", "[view][needles]") {
  const Needles start = advance({}, level(), 0.02);
  Readings<double> r = level();
  r.indicated_airspeed_mps += 10.0 * kKnot;
  r.indicated_altitude_m += 100.0 * kFoot;
  r.vertical_speed_mps += 800.0 * kFootPerMinute;
  r.pitch_rad += 10.0 * kDegree;
  r.bank_rad += 30.0 * kDegree;
  r.heading_rad -= 40.0 * kDegree;
  r.yaw_rate_radps += 5.0 * kDegree;
  r.right_mps2 = -0.98 * kBall_g * 10.0;
  r.propeller_radps += 300.0 * 2.0 * std::numbers::pi / 60.0;
  r.probe_ratio += 0.5;
  for (const double dt_s : {0.005, 0.02, 0.1}) {
    Needles n = start;
    for (int k = 0; k < static_cast<int>(std::lround(0.2 / dt_s)); ++k) n = advance(n, r, dt_s);
    const auto gone = [](double lag_s) { return 1.0 - std::exp(-0.2 / lag_s); };
    CAPTURE(dt_s);
    CHECK(n.airspeed_kt == Approx(60.0 + 10.0 * gone(kNeedleLag.airspeed_s)));
    CHECK(n.altitude_ft == Approx(3000.0 + 100.0 * gone(kNeedleLag.altitude_s)));
    CHECK(n.vertical_speed_fpm == Approx(800.0 * gone(kNeedleLag.vertical_speed_s)));
    CHECK(n.pitch_deg == Approx(10.0 * gone(kNeedleLag.attitude_s)));
    CHECK(n.bank_deg == Approx(30.0 * gone(kNeedleLag.attitude_s)));
    CHECK(n.heading_deg == Approx(350.0 - 40.0 * gone(kNeedleLag.heading_s)));
    CHECK(n.turn_rate_degps == Approx(5.0 * gone(kNeedleLag.turn_s)));
    CHECK(n.slip_balls == Approx(gone(kNeedleLag.slip_s)));
    CHECK(n.rpm == Approx(2000.0 + 300.0 * gone(kNeedleLag.rpm_s)));
    CHECK(n.probe_ratio == Approx(0.1 + 0.5 * gone(kNeedleLag.probe_s)));
  }
}

TEST_CASE("heading and bank go the short way round", "[view][needles]") {
  Readings<double> r = level();
  r.bank_rad = 170.0 * kDegree;
  Needles n = advance({}, r, 0.02);
  r.heading_rad = 10.0 * kDegree;
  r.bank_rad = -170.0 * kDegree;
  double last = 350.0;
  for (int k = 0; k < 100; ++k) {
    n = advance(n, r, 0.02);
    const double turned = n.heading_deg < 180.0 ? n.heading_deg + 360.0 : n.heading_deg;
    CHECK(turned >= last);
    CHECK((n.heading_deg >= 0.0 && n.heading_deg < 360.0));
    CHECK(std::abs(n.bank_deg) >= 170.0 - 1e-9);
    last = turned;
  }
  CHECK(n.heading_deg == Approx(10.0).margin(1e-3));
  CHECK(n.bank_deg == Approx(-170.0));
}

TEST_CASE("the ball goes away from the side force and stays finite at zero g", "[view][needles]") {
  Readings<double> r = level();
  r.right_mps2 = -9.8 * kBall_g;  // pushed to the left, as with the right wing low: the ball lies right
  CHECK(advance({}, r, 0.02).slip_balls == Approx(1.0));
  r.down_mps2 *= 2.0;
  CHECK(advance({}, r, 0.02).slip_balls == Approx(0.5));
  r.down_mps2 = 0.0;
  CHECK(std::isfinite(advance({}, r, 0.02).slip_balls));
}

TEST_CASE("a reading that is no number leaves its needle where it was", "[view][needles]") {
  const Needles start = advance({}, level(), 0.02);
  Readings<double> r = level();
  r.probe_ratio = r.heading_rad = r.indicated_airspeed_mps = std::numeric_limits<double>::quiet_NaN();
  const Needles n = advance(start, r, 0.02);
  CHECK(n.probe_ratio == Approx(0.1));
  CHECK(n.heading_deg == Approx(350.0));
  CHECK(n.airspeed_kt == Approx(60.0));
}
