#pragma once
#include <catch2/catch.hpp>

#include "aircraft/type_file.hpp"
#include "render/panel/panel.hpp"
#include "render/panel/panel_layout.hpp"
#include "tests/render/panel/drawn_shapes.hpp"
#include "tests/render/ui_reader.hpp"

/// Draws panels for tests, and reads their needles.
namespace stallwright::panel_test {

inline view::PanelView slow_flight(const char* type = "marram") {
  Snapshot now;
  now.needles = {49.0, 3860.0, -40.0, 9.0, -2.0, 273.0, -0.4, 0.7, 2078.0, 0.06, true};
  now.power_share = 0.47;
  now.controls.throttle = 0.52;
  now.pitch_trim = 0.22;
  now.time_s = 3754.3;
  return view::panel_view(now, load_aircraft_type(find_aircraft_file(type)));
}

struct Drawn {
  panel::NeedleLog log;
  panel::PanelLayout layout;
};

/// Draws into the lowest `height_px` at scale 1 of the screen.
inline Drawn draw(ui_test::UiFixture& ui, const view::PanelView& view, float height_px = 250.0f) {
  const ImVec2 to = ui.screen().to, from = {0.0f, to.y - height_px * ui.fonts().scale};
  Drawn drawn;
  ui.frame([&] { panel::draw_panel(view, ui.fonts(), from, to, &drawn.log); });
  drawn.layout = panel::panel_layout(from, to, ui.fonts().scale);
  return drawn;
}

inline double angle_of(const panel::NeedleLog& log, const char* name) {
  const panel::NeedleMark* mark = log.find(name);
  REQUIRE(mark != nullptr);
  return ui_test::direction_deg(mark->pivot, mark->tip);
}

inline double share_of(const panel::NeedleLog& log, const char* name) {
  const panel::NeedleMark* mark = log.find(name);
  REQUIRE(mark != nullptr);
  return static_cast<double>((mark->tip.x - mark->pivot.x) / mark->span_px);
}

inline double apart(double a_deg, double b_deg) { return std::abs(std::remainder(a_deg - b_deg, 360.0)); }

}  // namespace stallwright::panel_test
