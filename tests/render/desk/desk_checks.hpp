#pragma once
#include <SDL_scancode.h>

#include <catch2/catch.hpp>

#include "render/ui/widgets.hpp"
#include "tests/render/ui_reader.hpp"

/// What every page of the desk must hold, and hands to press its keys.
namespace stallwright::desk_test {

struct Size {
  float width, height;
};
inline constexpr Size kSizes[] = {{1280, 720}, {1920, 1080}, {2560, 1440}};

/// Texts that no other text touches, none smaller than 14 px at scale 1, none outside the screen or cut.
inline void check_legible(const ui_test::UiFixture& ui) {
  const float scale = ui.fonts().scale;
  CHECK(ui_test::overlaps(ui.texts(), 1.0f) == std::vector<std::string>{});
  CHECK(ui_test::smaller_than(ui.texts(), std::round(14.0f * scale) - 0.01f) == std::vector<std::string>{});
  CHECK(ui_test::out_of(ui.texts(), ui.screen(), 1.0f) == std::vector<std::string>{});
}

/// A screen and what is pressed on it.
struct Desk {
  explicit Desk(Size size = kSizes[0]) : ui(size.width, size.height) {
    // As the SDL backend maps them; without it the typed characters of a field have no keys.
    ImGui::GetIO().MousePos = {-1.0f, -1.0f};
  }
  /// Draws frames until what a press does is seen; returns what the last one answered.
  template <class Draw>
  auto frame(Draw&& draw) {
    registry.begin_frame();
    decltype(draw(registry, ui.fonts(), ImVec2())) answer{};
    ui.frame([&] { answer = draw(registry, ui.fonts(), ui.screen().to); });
    return answer;
  }
  template <class Draw>
  auto press(const std::string& label, Draw&& draw) {
    registry.press(label);
    const auto answer = frame(draw);
    CAPTURE(label);
    CHECK_FALSE(registry.press_pending());
    return answer;
  }
  template <class Draw>
  auto key(int scancode, Draw&& draw) {
    ImGui::GetIO().KeysDown[scancode] = true;
    const auto answer = frame(draw);
    ImGui::GetIO().KeysDown[scancode] = false;
    frame(draw);
    return answer;
  }

  ui_test::UiFixture ui;
  ui::Registry registry;
};

}  // namespace stallwright::desk_test
