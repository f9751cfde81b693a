// The panel read back: its words, its needles and its arcs, on every screen that the cockpit supports.
#include <catch2/catch.hpp>
#include <cstdlib>
#include <type_traits>

#include "aircraft/type_file.hpp"
#include "render/panel/dial_scale.hpp"
#include "render/panel/panel.hpp"
#include "render/panel/panel_layout.hpp"
#include "render/panel/probe_scale.hpp"
#include "render/ui/theme.hpp"
#include "tests/render/panel/drawn_shapes.hpp"
#include "tests/render/ui_reader.hpp"

using namespace stallwright;
using panel::NeedleLog;
using ui_test::UiFixture;

namespace {

// Views that own no memory cannot allocate any in a frame.
static_assert(std::is_trivially_copyable_v<view::PanelView>);

view::PanelView slow_flight(const char* type = "marram") {
  Snapshot now;
  now.needles = {49.0, 3860.0, -40.0, 9.0, -2.0, 273.0, -0.4, 0.7, 2078.0, 0.06, true};
  now.power_share = 0.47;
  now.controls.throttle = 0.52;
  now.pitch_trim = 0.22;
  now.time_s = 3754.3;
  return view::panel_view(now, load_aircraft_type(find_aircraft_file(type)));
}

struct Drawn {
  NeedleLog log;
  panel::PanelLayout layout;
};

/// Draws into the lowest `height_px` at scale 1 of the screen.
Drawn draw(UiFixture& ui, const view::PanelView& view, float height_px = 250.0f) {
  const ImVec2 to = ui.screen().to, from = {0.0f, to.y - height_px * ui.fonts().scale};
  Drawn drawn;
  ui.frame([&] { panel::draw_panel(view, ui.fonts(), from, to, &drawn.log); });
  drawn.layout = panel::panel_layout(from, to, ui.fonts().scale);
  return drawn;
}

double angle_of(const NeedleLog& log, const char* name) {
  const panel::NeedleMark* mark = log.find(name);
  REQUIRE(mark != nullptr);
  return ui_test::direction_deg(mark->pivot, mark->tip);
}

double share_of(const NeedleLog& log, const char* name) {
  const panel::NeedleMark* mark = log.find(name);
  REQUIRE(mark != nullptr);
  return static_cast<double>((mark->tip.x - mark->pivot.x) / mark->span_px);
}

double apart(double a_deg, double b_deg) { return std::abs(std::remainder(a_deg - b_deg, 360.0)); }

}  // namespace

TEST_CASE("the words on the panel are the view's values", "[panel]") {
  UiFixture ui;
  view::PanelView view = slow_flight();
  draw(ui, view);
  for (const char* words :
       {"49", "3860", "QNH 1013", "273°", "2080", "47 %", "52 %", "0°", "22 % up", "1:02:34"}) {
    CAPTURE(words);
    CHECK(ui.equal_to(words) != nullptr);
  }
  view.airspeed_kt = 101.6;
  view.altitude_ft = 12344.0;
  view.altimeter_setting_hpa = 987.4;
  view.heading_deg = 359.7;
  view.flap_deg = 22.0;
  view.flap_lever_deg = 35.0;
  view.pitch_trim = -0.5;
  draw(ui, view);
  for (const char* words : {"102", "12340", "QNH 987", "360°", "22° to 35°", "50 % down"}) {
    CAPTURE(words);
    CHECK(ui.equal_to(words) != nullptr);
  }
}

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

TEST_CASE("on every screen the panel's texts keep apart, in their place and large enough", "[panel]") {
  for (const auto& [width, height] :
       {std::pair{1280.0f, 720.0f}, {1920.0f, 1080.0f}, {2560.0f, 1440.0f}, {3840.0f, 2160.0f}}) {
    UiFixture ui(width, height);
    for (const float panel_px : {200.0f, 226.0f, 250.0f, 288.0f, 420.0f})
      for (int k = 0; k < 24; ++k) {
        view::PanelView view = slow_flight(k % 2 == 0 ? "marram" : "tarnfell");
        view.airspeed_kt = 38.0 + 5.0 * k;
        view.altitude_ft = 11000.0 + 111.0 * k;
        view.bank_deg = -180.0 + 17.0 * k;
        view.pitch_deg = -40.0 + 3.3 * k;
        view.heading_deg = 15.7 * k;
        view.rpm = view.rated_rpm;
        view.throttle_percent = view.power_percent = 100.0;
        view.flap_deg = 22.0;
        view.flap_lever_deg = 35.0;
        view.pitch_trim = -1.0;
        draw(ui, view, panel_px);
        CAPTURE(width, panel_px, k);
        const ui_test::Box room = {{0.0f, height - panel_px * ui.fonts().scale}, {width, height}};
        CHECK_THAT(ui_test::overlaps(ui.texts()), Catch::Equals(std::vector<std::string>{}));
        CHECK_THAT(ui_test::smaller_than(ui.texts(), 14.0f * ui.fonts().scale),
                   Catch::Equals(std::vector<std::string>{}));
        CHECK_THAT(ui_test::out_of(ui.texts(), room), Catch::Equals(std::vector<std::string>{}));
      }
  }
}

TEST_CASE("a mouse that rests on a dial is told what it shows, the origin of the arcs included", "[panel]") {
  UiFixture ui;
  const panel::PanelLayout layout = draw(ui, slow_flight()).layout;
  CHECK(ui.containing("maximum mass") == nullptr);
  ImGui::GetIO().MousePos = layout.dials[0];
  draw(ui, slow_flight());
  draw(ui, slow_flight());
  CHECK(ui.containing("maximum mass") != nullptr);
}

TEST_CASE("a frame like the last one allocates nothing in ImGui", "[panel]") {
  UiFixture ui;
  Snapshot now;
  now.set_points =
      std::make_shared<const std::vector<SetPointSoFar>>(8, SetPointSoFar{"stall", 0.0, 0.7, 0.6, 0.8});
  const view::PanelView view = slow_flight();
  const view::ProbeScaleView scale = view::probe_scale_view(now);
  const auto frame = [&] {
    ImGui::NewFrame();
    panel::draw_panel(view, ui.fonts(), {0.0f, 470.0f}, {1280.0f, 720.0f});
    panel::draw_probe_scale(scale, ui.fonts(), {0.0f, 394.0f}, {1280.0f, 470.0f});
    ImGui::Render();
  };
  for (int k = 0; k < 3; ++k) frame();
  ImGuiMemAllocFunc take = nullptr;
  ImGuiMemFreeFunc give = nullptr;
  void* data = nullptr;
  ImGui::GetAllocatorFunctions(&take, &give, &data);
  long taken = 0;
  ImGui::SetAllocatorFunctions(
      [](std::size_t size, void* count) {
        ++*static_cast<long*>(count);
        return std::malloc(size);
      },
      [](void* memory, void*) { std::free(memory); }, &taken);
  for (int k = 0; k < 20; ++k) frame();
  ImGui::SetAllocatorFunctions(take, give, data);
  CHECK(taken == 0);
}
