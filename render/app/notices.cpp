#include "render/app/notices.hpp"

#include <algorithm>

#include "render/ui/theme.hpp"

namespace stallwright::app {
namespace {

constexpr double kShown_s = 8.0;
constexpr std::size_t kMost = 4;

}  // namespace

void Notices::say(const std::string& sentence) {
  if (sentence.empty()) return;
  for (Said& said : said_)
    if (said.text == sentence) {
      said.left_s = kShown_s;
      return;
    }
  said_.push_back({sentence, kShown_s});
  if (said_.size() > kMost) said_.pop_front();
}

void Notices::frame(double dt_s) {
  for (Said& said : said_) said.left_s -= dt_s;
  while (!said_.empty() && said_.front().left_s <= 0.0) said_.pop_front();
}

void Notices::draw(const ui::Fonts& fonts, ImVec2 at) const {
  ImDrawList& list = *ImGui::GetForegroundDrawList();
  const float s = fonts.scale, wrap = 520.0f * s;
  for (const Said& said : said_) {
    const ImVec2 size = fonts.small->CalcTextSizeA(fonts.small->FontSize, 1e6f, wrap, said.text.c_str());
    const ImVec2 from{at.x - size.x - 16.0f * s, at.y}, to{at.x, at.y + size.y + 8.0f * s};
    list.AddRectFilled(from, to, ui::colour(ui::kTheme.panel, 0.92f));
    list.AddRect(from, to, ui::colour(ui::kTheme.soft), 0.0f, 0, s);
    list.AddText(fonts.small, fonts.small->FontSize, {from.x + 8.0f * s, from.y + 4.0f * s},
                 ui::colour(ui::kTheme.ivory), said.text.c_str(), nullptr, wrap);
    at.y = to.y + 4.0f * s;
  }
}

}  // namespace stallwright::app
