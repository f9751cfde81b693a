#include "render/desk/pen.hpp"
#include "tests/render/desk/desk_checks.hpp"

using namespace stallwright;

TEST_CASE("lines break at blanks and never inside a number or beyond the width", "[desk][pen]") {
  ui_test::UiFixture ui;
  const char* words = "centre of gravity 0.022 m behind the aft limit of 0.450 m";
  for (float width = 120.0f; width < 420.0f; width += 7.0f) {
    float height = 0.0f;
    ui.frame([&] {
      desk::Pen pen(*ImGui::GetBackgroundDrawList(), ui.fonts());
      height = pen.wrapped(ui.fonts().small, {10.0f, 10.0f}, ui::kTheme.ivory, words, width);
    });
    CAPTURE(width);
    std::string all;
    for (const auto& line : ui.texts()) {
      CHECK(line.line.width() <= width);
      all += (all.empty() ? "" : " ") + line.text;
      CHECK(line.text.back() != '.');
    }
    CHECK(all == words);
    CHECK(height == Approx(14.0f * static_cast<float>(ui.texts().size())));
    CHECK(height == Approx(desk::Pen::wrapped_height(ui.fonts().small, words, width)));
  }
}

TEST_CASE("a word wider than the place stands alone and the rest goes on", "[desk][pen]") {
  ui_test::UiFixture ui;
  ui.frame([&] {
    desk::Pen pen(*ImGui::GetBackgroundDrawList(), ui.fonts());
    pen.wrapped(ui.fonts().small, {10.0f, 10.0f}, ui::kTheme.ivory, "unbreakableword and more", 20.0f);
  });
  REQUIRE(ui.texts().size() == 3);
  CHECK(ui.texts()[0].text == "unbreakableword");
}

TEST_CASE("what is too long for its place ends in an ellipsis within it", "[desk][pen]") {
  ui_test::UiFixture ui;
  ui.frame([&] {
    desk::Pen pen(*ImGui::GetBackgroundDrawList(), ui.fonts());
    pen.fitted(ui.fonts().body, {10.0f, 10.0f}, ui::kTheme.ivory, "fly again: fast reference, approach",
               120.0f);
  });
  REQUIRE_FALSE(ui.texts().empty());
  CHECK(ui.texts().back().text.find("\u2026") != std::string::npos);
  CHECK(ui.texts().back().ink.to.x <= 130.5f);
}
