#include "tests/render/ui_reader.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cstdio>

namespace stallwright::ui_test {
namespace {

Box common(const Box& a, const Box& b) {
  return {{std::max(a.from.x, b.from.x), std::max(a.from.y, b.from.y)},
          {std::min(a.to.x, b.to.x), std::min(a.to.y, b.to.y)}};
}

std::string named(const ShownText& text) {
  char at[48];
  std::snprintf(at, sizeof at, "' at %.0f, %.0f", static_cast<double>(text.ink.from.x),
                static_cast<double>(text.ink.from.y));
  return "'" + text.text + at;
}

}  // namespace

std::vector<std::string> overlaps(const std::vector<ShownText>& texts, float slack_px) {
  std::vector<std::string> found;
  for (std::size_t a = 0; a < texts.size(); ++a)
    for (std::size_t b = a + 1; b < texts.size(); ++b) {
      const Box both = common(common(texts[a].ink, texts[a].clip), common(texts[b].ink, texts[b].clip));
      if (both.width() > slack_px && both.height() > slack_px)
        found.push_back(named(texts[a]) + " over " + named(texts[b]));
    }
  return found;
}

std::vector<std::string> smaller_than(const std::vector<ShownText>& texts, float least_px) {
  std::vector<std::string> found;
  for (const ShownText& text : texts)
    if (text.size_px < least_px - 0.01f) found.push_back(std::to_string(text.size_px) + " px: " + text.text);
  return found;
}

std::vector<std::string> out_of(const std::vector<ShownText>& texts, const Box& box, float slack_px) {
  std::vector<std::string> found;
  for (const ShownText& text : texts) {
    const bool inside = text.ink.from.x >= box.from.x - slack_px &&
                        text.ink.from.y >= box.from.y - slack_px && text.ink.to.x <= box.to.x + slack_px &&
                        text.ink.to.y <= box.to.y + slack_px;
    if (!inside || text.seen_share() < 0.98f) found.push_back(named(text));
  }
  return found;
}

UiFixture::UiFixture(float width_px, float height_px) : context_(ImGui::CreateContext()) {
  ImGui::SetCurrentContext(context_);
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.DisplaySize = {width_px, height_px};
  io.DeltaTime = 1.0f / 60.0f;
  const float scale = height_px / 720.0f;
  fonts_ = ui::load_fonts(*io.Fonts, scale);
  ui::apply_style(scale);
}

UiFixture::~UiFixture() { ImGui::DestroyContext(context_); }

Box UiFixture::screen() const { return {{0.0f, 0.0f}, context_->IO.DisplaySize}; }

void UiFixture::begin() {
  ImGui::SetCurrentContext(context_);
  ImGui::NewFrame();
}

const std::vector<ShownText>& UiFixture::end() {
  ImGui::Render();
  texts_ = read_texts(*ImGui::GetDrawData());
  return texts_;
}

const ShownText* UiFixture::equal_to(const std::string& words) const {
  const auto at = std::find_if(texts_.begin(), texts_.end(), [&](const auto& t) { return t.text == words; });
  return at == texts_.end() ? nullptr : &*at;
}

const ShownText* UiFixture::containing(const std::string& words) const {
  const auto at = std::find_if(texts_.begin(), texts_.end(),
                               [&](const auto& t) { return t.text.find(words) != std::string::npos; });
  return at == texts_.end() ? nullptr : &*at;
}

}  // namespace stallwright::ui_test
