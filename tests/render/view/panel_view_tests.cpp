#include <catch2/catch.hpp>
#include <numbers>

#include "aircraft/math/units.hpp"
#include "aircraft/type_file.hpp"
#include "render/view/panel_view.hpp"

using namespace stallwright;

TEST_CASE("arcs of each type run between its own limits and book speeds", "[view][panel]") {
  struct Expected {
    const char* key;
    double v_s0, v_s1, v_fe, v_no, v_ne;
  };
  // As the type files print them, kt.
  for (const Expected& e : {Expected{"marram", 38, 42, 75, 98, 125}, Expected{"sarsen", 46, 51, 85, 118, 150},
                            Expected{"tarnfell", 50, 57, 95, 130, 165}}) {
    CAPTURE(e.key);
    const auto arcs = view::panel_view({}, load_aircraft_type(find_aircraft_file(e.key))).arcs;
    CHECK(arcs.white_from_kt == Approx(e.v_s0));
    CHECK(arcs.white_to_kt == Approx(e.v_fe));
    CHECK(arcs.green_from_kt == Approx(e.v_s1));
    CHECK(arcs.green_to_kt == Approx(e.v_no));
    CHECK(arcs.yellow_from_kt == Approx(e.v_no));
    CHECK(arcs.yellow_to_kt == Approx(e.v_ne));
    CHECK(arcs.red_kt == Approx(e.v_ne));
  }
}

TEST_CASE("the panel shows the needles, the levers and what the type file marks", "[view][panel]") {
  const AircraftType type = load_aircraft_type(find_aircraft_file("tarnfell"));
  Snapshot now;
  now.needles = {80.0, 4500.0, -300.0, 6.0, 12.0, 255.0, 1.5, -0.5, 2150.0, 0.2, true};
  now.altimeter_setting_hpa = 998.0;
  now.power_share = 0.55;
  now.controls.throttle = 0.6;
  now.controls.flap_rad = 25.0 * std::numbers::pi / 180.0;
  now.readings.flap_rad = 18.0 * std::numbers::pi / 180.0;
  now.pitch_trim = -0.25;
  now.time_s = 65.0;
  const view::PanelView v = view::panel_view(now, type);
  CHECK(v.airspeed_kt == 80.0);
  CHECK(v.altitude_ft == 4500.0);
  CHECK(v.altimeter_setting_hpa == 998.0);
  CHECK(v.vertical_speed_fpm == -300.0);
  CHECK(v.pitch_deg == 6.0);
  CHECK(v.bank_deg == 12.0);
  CHECK(v.heading_deg == 255.0);
  CHECK(v.turn_rate_degps == 1.5);
  CHECK(v.slip_balls == -0.5);
  CHECK(v.rpm == 2150.0);
  CHECK(v.rated_rpm == Approx(2700.0));
  CHECK(v.power_percent == Approx(55.0));
  CHECK(v.throttle_percent == Approx(60.0));
  CHECK(v.flap_deg == Approx(18.0));
  CHECK(v.flap_lever_deg == Approx(25.0));
  REQUIRE(v.flap_mark_count == 4);
  CHECK(v.flap_marks_deg[0] == Approx(0.0).margin(1e-12));
  CHECK(v.flap_marks_deg[3] == Approx(38.0));
  CHECK(v.pitch_trim == -0.25);
  CHECK(v.time_s == 65.0);
}
