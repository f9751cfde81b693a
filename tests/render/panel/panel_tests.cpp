// The panel read back: its words on every screen that the cockpit supports.
#include <catch2/catch.hpp>
#include <cstdlib>
#include <type_traits>

#include "render/panel/panel.hpp"
#include "render/panel/probe_scale.hpp"
#include "tests/render/panel/drawn_panel.hpp"

using namespace stallwright;
using namespace stallwright::panel_test;
using ui_test::UiFixture;

// Views that own no memory cannot allocate any in a frame.
static_assert(std::is_trivially_copyable_v<view::PanelView>);

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
  // ImGui's own are malloc and free, and what they gave must go back to the same. NOLINTBEGIN(cppcoreguidelines-no-malloc)
  ImGui::SetAllocatorFunctions(
      [](std::size_t size, void* count) {
        ++*static_cast<long*>(count);
        return std::malloc(size);
      },
      [](void* memory, void*) { std::free(memory); }, &taken);
  // NOLINTEND(cppcoreguidelines-no-malloc)
  for (int k = 0; k < 20; ++k) frame();
  ImGui::SetAllocatorFunctions(take, give, data);
  CHECK(taken == 0);
}
