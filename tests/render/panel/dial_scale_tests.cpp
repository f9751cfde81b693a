#include <catch2/catch.hpp>

#include "render/panel/dial_scale.hpp"

using namespace stallwright;
using namespace stallwright::panel;

TEST_CASE("a dial scale is straight between its marks and stops at its ends", "[panel][dial_scale]") {
  const DialScale scale{{{{0.0, 10.0}, {10.0, 30.0}, {20.0, 130.0}}}};
  CHECK(angle_deg(scale, 0.0) == 10.0);
  CHECK(angle_deg(scale, 5.0) == Approx(20.0));
  CHECK(angle_deg(scale, 10.0) == Approx(30.0));
  CHECK(angle_deg(scale, 12.0) == Approx(50.0));
  CHECK(angle_deg(scale, 20.0) == Approx(130.0));
  CHECK(angle_deg(scale, 900.0) == 130.0);
  CHECK(angle_deg(scale, -900.0) == 10.0);
  CHECK(angle_deg(scale, NAN) == 10.0);
}

TEST_CASE("the scales of the dials stand where the trade has them", "[panel][dial_scale]") {
  view::SpeedArcs arcs;
  arcs.red_kt = 150.0;
  CHECK(airspeed_scale(arcs).high() == 160.0);  // 157.5, up to the next ten
  CHECK(angle_deg(airspeed_scale(arcs), 20.0) == Approx(20.0));
  CHECK(angle_deg(airspeed_scale(arcs), 90.0) == Approx(182.5));
  CHECK(angle_deg(vertical_speed_scale(), 0.0) == Approx(270.0));
  CHECK(angle_deg(vertical_speed_scale(), 1000.0) == Approx(352.5));
  CHECK(angle_deg(vertical_speed_scale(), -1000.0) == Approx(187.5));
  CHECK(angle_deg(turn_scale(), 3.0) == Approx(20.0));
  CHECK(angle_deg(turn_scale(), -9.0) == Approx(-40.0));
  CHECK(altimeter_angle_deg(3250.0) == Approx(90.0));
  CHECK(altimeter_angle_deg(-250.0) == Approx(270.0));
}
