// The reader of screens is itself read: words, places, sizes and overlaps of texts whose places are known.
#include <catch2/catch.hpp>

#include "render/ui/theme.hpp"
#include "tests/render/ui_reader.hpp"

using namespace stallwright;
using ui_test::UiFixture;

namespace {
void put(ImFont* font, ImVec2 at, const char* words) {
  ImGui::GetBackgroundDrawList()->AddText(font, font->FontSize, at, ui::colour(ui::kTheme.ivory), words);
}
}  // namespace

TEST_CASE("texts are read back with their place and size", "[ui_reader]") {
  UiFixture ui;
  REQUIRE(ui.fonts().notice.empty());
  ui.frame([&] {
    put(ui.fonts().large, {100.0f, 50.0f}, "IAS 87 kt, α = 12.5°");
    ImGui::GetBackgroundDrawList()->AddCircle({400.0f, 300.0f}, 50.0f, IM_COL32_WHITE);
    put(ui.fonts().small, {100.0f, 200.0f}, "one\ntwo  lines");
  });
  REQUIRE(ui.texts().size() == 3);
  CHECK(ui.texts()[0].text == "IAS 87 kt, α = 12.5°");
  CHECK(ui.texts()[0].line.from.x == Approx(100.0f));
  CHECK(ui.texts()[0].line.from.y == Approx(50.0f));
  CHECK(ui.texts()[0].size_px == Approx(24.0f));
  const float width = ui.fonts().large->CalcTextSizeA(24.0f, 1e9f, 0.0f, "IAS 87 kt, α = 12.5°").x;
  CHECK(ui.texts()[0].line.width() == Approx(width).margin(0.01));
  CHECK(ui.texts()[1].text == "one");
  CHECK(ui.texts()[2].text == "two  lines");
  CHECK(ui.equal_to("one") == &ui.texts()[1]);
  CHECK(ui.containing("lin") == &ui.texts()[2]);
  CHECK(ui.containing("three") == nullptr);
}

TEST_CASE("texts side by side stay apart and text in ImGui's own widgets is read", "[ui_reader]") {
  UiFixture ui(1920.0f, 1080.0f);
  for (int k = 0; k < 2; ++k)
    ui.frame([&] {
      put(ui.fonts().body, {500.0f, 500.0f}, "left");
      put(ui.fonts().body, {540.3f, 500.0f}, "right");
      ImGui::SetNextWindowSize({300.0f, 200.0f});
      ImGui::Begin("a window");
      ImGui::Button("press");
      ImGui::End();
    });
  for (const char* words : {"left", "right", "a window", "press"}) {
    CAPTURE(words);
    CHECK(ui.equal_to(words) != nullptr);
  }
  CHECK(ui.equal_to("left")->size_px == Approx(std::round(17.0f * 1.5f)));
}

TEST_CASE("overlapping, small, cut and stray texts are named", "[ui_reader]") {
  UiFixture ui;
  ui.frame([&] {
    put(ui.fonts().body, {100.0f, 100.0f}, "under");
    put(ui.fonts().body, {120.0f, 105.0f}, "over");
    put(ui.fonts().body, {100.0f, 140.0f}, "apart");
    put(ui.fonts().body, {-4.0f, 300.0f}, "stray");
    ImGui::GetBackgroundDrawList()->PushClipRect({0.0f, 400.0f}, {1280.0f, 410.0f});
    put(ui.fonts().body, {100.0f, 400.0f}, "cut");
    put(ui.fonts().body, {100.0f, 500.0f}, "hidden");
    put(ui.fonts().body, {100.0f, 500.0f}, "hidden too");
    ImGui::GetBackgroundDrawList()->PopClipRect();
    ImGui::GetBackgroundDrawList()->AddText(ui.fonts().body, 13.0f, {300.0f, 100.0f}, IM_COL32_WHITE, "tiny");
  });
  REQUIRE(ui_test::overlaps(ui.texts()).size() == 1);
  CHECK_THAT(ui_test::overlaps(ui.texts())[0],
             Catch::Contains("'under' at") && Catch::Contains("over 'over' at"));
  REQUIRE(ui_test::smaller_than(ui.texts(), 14.0f).size() == 1);
  CHECK_THAT(ui_test::smaller_than(ui.texts(), 14.0f)[0], Catch::Contains("tiny"));
  const auto out = ui_test::out_of(ui.texts(), ui.screen());
  REQUIRE(out.size() == 2);  // ImGui leaves out lines that would be hidden whole
  CHECK_THAT(out[0], Catch::Contains("stray"));
  CHECK_THAT(out[1], Catch::Contains("cut"));
}
