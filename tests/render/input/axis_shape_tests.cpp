#include <catch2/catch.hpp>

#include "render/input/axis_shape.hpp"

using namespace stallwright::input;

TEST_CASE("calibration takes each end and the resting place to -1, 1 and 0, whatever their raw values",
          "[hands]") {
  const AxisShape lopsided{-20000, 3000, 30000, false, 0.0, 0.0};
  CHECK(calibrated(-20000, lopsided) == -1.0);
  CHECK(calibrated(3000, lopsided) == 0.0);
  CHECK(calibrated(30000, lopsided) == 1.0);
  CHECK(calibrated(16500, lopsided) == Approx(0.5));
  CHECK(calibrated(-8500, lopsided) == Approx(-0.5));
  CHECK(calibrated(-32768, lopsided) == -1.0);  // beyond what was calibrated: the stop
  CHECK(calibrated(32767, lopsided) == 1.0);
}

TEST_CASE("inversion turns the axis about its centre", "[hands]") {
  AxisShape s{-20000, 3000, 30000, true, 0.0, 0.0};
  CHECK(calibrated(30000, s) == -1.0);
  CHECK(calibrated(-20000, s) == 1.0);
  CHECK(calibrated(3000, s) == 0.0);
}

TEST_CASE("a calibration without width gives no deflection rather than nonsense", "[hands]") {
  CHECK(calibrated(500, {0, 0, 0}) == 0.0);
  CHECK(calibrated(-500, {0, 0, 0}) == 0.0);
  CHECK(lever(500, {0, 0, 0}) == 0.0);
}

TEST_CASE("the dead zone is still, then leaves zero without a step and reaches the end", "[hands]") {
  CHECK(with_dead_zone(0.1, 0.1) == 0.0);
  CHECK(with_dead_zone(-0.09, 0.1) == 0.0);
  CHECK(with_dead_zone(0.1 + 1e-6, 0.1) < 2e-6);
  CHECK(with_dead_zone(0.55, 0.1) == Approx(0.5));
  CHECK(with_dead_zone(-1.0, 0.1) == -1.0);
  CHECK(with_dead_zone(1.0, 0.0) == 1.0);
}

TEST_CASE("the curve softens the middle and keeps ends and signs", "[hands]") {
  CHECK(curved(1.0, 0.7) == Approx(1.0));
  CHECK(curved(-1.0, 0.7) == Approx(-1.0));
  CHECK(curved(0.5, 0.0) == 0.5);
  CHECK(curved(0.5, 1.0) == Approx(0.125));
  CHECK(curved(-0.5, 1.0) == Approx(-0.125));
}

TEST_CASE("shaped is calibration, then dead zone, then curve", "[hands]") {
  const AxisShape s{-10000, 0, 10000, true, 0.1, 0.5};
  CHECK(shaped(-5500, s) == Approx(0.5 * 0.5 + 0.5 * 0.125));
  CHECK(shaped(900, s) == 0.0);
}

TEST_CASE("a lever goes from idle to full between its ends and surely reaches both", "[hands]") {
  const AxisShape s{-32768, 0, 32767, true, 0.04, 0.0};
  CHECK(lever(32767, s) == 0.0);
  CHECK(lever(32000, s) == 0.0);
  CHECK(lever(-32768, s) == 1.0);
  CHECK(lever(-32300, s) == 1.0);
  CHECK(lever(0, s) == Approx(0.5).margin(0.001));
}

TEST_CASE("deflection about the trim reaches both stops", "[hands]") {
  CHECK(about_trim(0.3, 0.0) == 0.3);
  CHECK(about_trim(0.3, 1.0) == Approx(1.0));
  CHECK(about_trim(0.3, -1.0) == Approx(-1.0));
  CHECK(about_trim(-0.2, 0.5) == Approx(0.4));
}
