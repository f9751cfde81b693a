// The panel's needles, pointers and arcs read back and held against the values.
#include <catch2/catch.hpp>

#include "render/panel/dial_scale.hpp"
#include "render/ui/theme.hpp"
#include "tests/render/panel/drawn_panel.hpp"

using namespace stallwright;
using namespace stallwright::panel_test;
using panel::NeedleLog;
using ui_test::UiFixture;

TEST_CASE("needles point at their values over their whole range", "[panel]") {
  UiFixture ui;
  view::PanelView view = slow_flight();
  for (int k = 0; k <= 40; ++k) {
    const double share = k / 40.0;
    view.airspeed_kt = 150.0 * share;
    view.altitude_ft = -500.0 + 12000.0 * share;
    view.vertical_speed_fpm = -2400.0 + 4800.0 * share;
    view.turn_rate_degps = -8.0 + 16.0 * share;
    view.heading_deg = 359.0 * share;
    view.bank_deg = -180.0 + 360.0 * share;
    const NeedleLog log = draw(ui, view).log;
    CAPTURE(share);
    const auto scale = panel::airspeed_scale(view.arcs);
    CHECK(apart(angle_of(log, "airspeed"), panel::angle_deg(scale, view.airspeed_kt)) < 0.1);
    CHECK(apart(angle_of(log, "altitude"), 0.36 * view.altitude_ft) < 0.1);
    const double fpm = std::clamp(view.vertical_speed_fpm, -2000.0, 2000.0);
    CHECK(apart(angle_of(log, "vertical speed"), 270.0 + fpm / 2000.0 * 165.0) < 0.1);
    CHECK(apart(angle_of(log, "turn"), std::clamp(view.turn_rate_degps, -6.0, 6.0) / 3.0 * 20.0) < 0.1);
    CHECK(apart(angle_of(log, "heading"), -view.heading_deg) < 0.1);
    CHECK(apart(angle_of(log, "bank"), -view.bank_deg) < 0.1);
  }
}

TEST_CASE("a needle at a figure's value points at the figure", "[panel]") {
  UiFixture ui;
  view::PanelView view = slow_flight();
  // Direction of the text with these words whose middle is nearest to the needle's tip; counters stand too near the middle.
  const auto misses_by = [&](const NeedleLog& log, const char* needle, const std::string& words) {
    const panel::NeedleMark* mark = log.find(needle);
    REQUIRE(mark != nullptr);
    double least = 360.0;
    const double reach = ui_test::distance(mark->pivot, mark->tip);
    for (const ui_test::ShownText& text : ui.texts()) {
      const double away = ui_test::distance(mark->pivot, text.line.centre());
      if (text.text == words && away > 0.5 * reach && away < reach)
        least = std::min(
            least, apart(angle_of(log, needle), ui_test::direction_deg(mark->pivot, text.line.centre())));
    }
    return least;
  };
  for (const int kt : {20, 60, 100, 140}) {
    view.airspeed_kt = kt;
    CHECK(misses_by(draw(ui, view).log, "airspeed", std::to_string(kt)) < 1.5);
  }
  for (const int ft : {0, 300, 700, 900}) {
    view.altitude_ft = 5000.0 + ft;
    CHECK(misses_by(draw(ui, view).log, "altitude", std::to_string(ft / 100)) < 1.5);
  }
  for (const int fpm : {-2000, -1500, 0, 500, 1000}) {
    view.vertical_speed_fpm = fpm;
    CHECK(misses_by(draw(ui, view).log, "vertical speed", std::to_string(std::abs(fpm) / 100)) < 1.5);
  }
}

TEST_CASE("the card of the heading dial stands at the heading", "[panel]") {
  UiFixture ui;
  view::PanelView view = slow_flight();
  for (const double heading : {0.0, 90.0, 247.0}) {
    view.heading_deg = heading;
    const panel::PanelLayout layout = draw(ui, view).layout;
    for (const auto& [words, deg] :
         {std::pair{"N", 0.0}, {"E", 90.0}, {"S", 180.0}, {"W", 270.0}, {"33", 330.0}}) {
      const ui_test::ShownText* figure = ui.equal_to(words);
      REQUIRE(figure != nullptr);
      CHECK(apart(ui_test::direction_deg(layout.dials[4], figure->line.centre()), deg - heading) < 1.5);
    }
  }
}

TEST_CASE("the horizon falls with pitch and tilts against bank, and the ball rolls to its side", "[panel]") {
  UiFixture ui;
  view::PanelView view = slow_flight();
  view.bank_deg = 0.0;
  double per_degree = 0.0;
  for (const double pitch : {10.0, -10.0, 20.0}) {
    view.pitch_deg = pitch;
    const panel::NeedleMark mark = *draw(ui, view).log.find("pitch");
    per_degree = static_cast<double>(mark.span_px);
    CHECK(static_cast<double>(mark.tip.y - mark.pivot.y) == Approx(pitch * per_degree).epsilon(1e-4));
  }
  CHECK(per_degree > 2.0);
  view.bank_deg = 30.0;  // right wing down: the horizon's middle moves to the left of straight down
  view.pitch_deg = 10.0;
  const panel::NeedleMark mark = *draw(ui, view).log.find("pitch");
  CHECK(ui_test::direction_deg(mark.pivot, mark.tip) == Approx(180.0 - 30.0).margin(0.1));
  // The ground itself lies on the low side, as drawn.
  view.pitch_deg = 0.0;
  const panel::PanelLayout layout = draw(ui, view).layout;
  ImVec2 sum = {0.0f, 0.0f};
  for (const ImVec2 at : ui_test::points_of_colour(*ImGui::GetDrawData(), ui::colour(ui::kTheme.ground)))
    sum = {sum.x + at.x - layout.dials[1].x, sum.y + at.y - layout.dials[1].y};
  CHECK(ui_test::direction_deg({0.0f, 0.0f}, sum) == Approx(180.0 - 30.0).margin(0.5));
  for (const double balls : {-5.0, -1.0, 0.0, 0.5, 2.0}) {
    view.slip_balls = balls;
    const panel::NeedleMark ball = *draw(ui, view).log.find("slip");
    const double moved = static_cast<double>((ball.tip.x - ball.pivot.x) / ball.span_px);
    CHECK(moved == Approx(std::max(balls, -panel::kTubeEnd_balls)).margin(0.06));
  }
}

TEST_CASE("pointers of the straight gauges stand at their values", "[panel]") {
  UiFixture ui;
  view::PanelView view = slow_flight("tarnfell");
  view.rpm = 1485.0;
  view.power_percent = 25.0;
  view.throttle_percent = 75.0;
  view.flap_deg = 19.0;
  view.flap_lever_deg = 38.0;
  view.pitch_trim = -0.5;
  view.time_s = 45.0;
  const NeedleLog log = draw(ui, view).log;
  CHECK(share_of(log, "rpm") == Approx(0.5).margin(1e-3));
  CHECK(share_of(log, "power") == Approx(0.25).margin(1e-3));
  CHECK(share_of(log, "throttle") == Approx(0.75).margin(1e-3));
  CHECK(share_of(log, "flaps") == Approx(0.5).margin(1e-3));
  CHECK(share_of(log, "flap lever") == Approx(1.0).margin(1e-3));
  CHECK(share_of(log, "trim") == Approx(0.25).margin(1e-3));
  CHECK(share_of(log, "time") == Approx(0.75).margin(1e-3));
}

TEST_CASE("arcs are drawn from and to the type's speeds", "[panel]") {
  UiFixture ui;
  for (const char* type : {"marram", "sarsen", "tarnfell"}) {
    CAPTURE(type);
    const view::PanelView view = slow_flight(type);
    const panel::PanelLayout layout = draw(ui, view).layout;
    const auto scale = panel::airspeed_scale(view.arcs);
    // A stroke's corners reach from one end of its arc to the other; its soft edges go a fraction of a degree further.
    const auto reaches = [&](const ui::Colour& colour, double from_kt, double to_kt) {
      double least = 360.0, most = 0.0;
      for (const ImVec2 at : ui_test::points_of_colour(*ImGui::GetDrawData(), ui::colour(colour))) {
        if (ui_test::distance(at, layout.dials[0]) > static_cast<double>(layout.radius)) continue;
        least = std::min(least, ui_test::direction_deg(layout.dials[0], at));
        most = std::max(most, ui_test::direction_deg(layout.dials[0], at));
      }
      CHECK(least == Approx(panel::angle_deg(scale, from_kt)).margin(0.8));
      CHECK(most == Approx(panel::angle_deg(scale, to_kt)).margin(0.8));
    };
    reaches(ui::kTheme.arc_white, view.arcs.white_from_kt, view.arcs.white_to_kt);
    reaches(ui::kTheme.arc_green, view.arcs.green_from_kt, view.arcs.green_to_kt);
    reaches(ui::kTheme.arc_yellow, view.arcs.yellow_from_kt, view.arcs.yellow_to_kt);
    // A radial line is as wide on the dial's inside as outside: its middle counts.
    ImVec2 sum = {0.0f, 0.0f};
    for (const ImVec2 at : ui_test::points_of_colour(*ImGui::GetDrawData(), ui::colour(ui::kTheme.line_red)))
      if (ui_test::distance(at, layout.dials[0]) < static_cast<double>(layout.radius))
        sum = {sum.x + at.x - layout.dials[0].x, sum.y + at.y - layout.dials[0].y};
    CHECK(ui_test::direction_deg({0.0f, 0.0f}, sum) ==
          Approx(panel::angle_deg(scale, view.arcs.red_kt)).margin(0.2));
  }
}
