#include "render/panel/ruler.hpp"

#include <cmath>
#include <cstdio>

#include "render/panel/probe_scale.hpp"

namespace stallwright::panel {
namespace {

constexpr float kLeft_px = 150.0f;   ///< figures of the ratio, and the word at the fast end
constexpr float kRight_px = 240.0f;  ///< the word at the slow end, and the caution

using ui::kTheme;

/// With the sign that figures are printed with.
void ratio_text(char* words, std::size_t size, int decimals, double ratio) {
  const double least = 0.5 * std::pow(10.0, -decimals);
  std::snprintf(words, size, "%s%.*f", ratio <= -least ? "\u2212" : "", decimals, std::abs(ratio));
}

void graduation(const Ruler& r) {
  r.line({r.left, r.y}, {r.right, r.y}, kTheme.soft, 1.5f);
  // In twentieths, counted in whole numbers so that no tick is lost to rounding.
  const int first = static_cast<int>(std::lround(r.view.from * 20.0));
  const int last = static_cast<int>(std::lround(r.view.to * 20.0));
  for (int k = first; k <= last; ++k) {
    const float x = r.x(k / 20.0);
    r.line({x, r.y}, {x, r.y + r.px(k % 4 == 0 ? 7.0f : k % 2 == 0 ? 5.0f : 3.0f)}, kTheme.soft, 1.2f);
    if (k % 4 != 0) continue;
    char words[16];
    ratio_text(words, sizeof words, 1, k / 20.0);
    r.text(r.fonts.small, {x - r.width(r.fonts.small, words) / 2.0f, r.y + r.px(6.0f)}, words, kTheme.soft);
  }
}

void ends(const Ruler& r) {
  const float level = r.y - r.fonts.small->FontSize / 2.0f;
  r.text(r.fonts.small, {r.left - r.px(12.0f) - r.width(r.fonts.small, "fast"), level}, "fast", kTheme.soft);
  r.text(r.fonts.small, {r.right + r.px(12.0f), level}, "slow", kTheme.soft);
}

void figures(const Ruler& r) {
  char words[16];
  ratio_text(words, sizeof words, 2, r.view.ratio);
  const float x = r.from.x + r.px(14.0f), middle = (r.from.y + r.to.y) / 2.0f;
  r.text(r.fonts.small, {x, middle - r.px(21.0f)}, "probe ratio", kTheme.soft);
  r.text(r.fonts.large, {x, middle - r.px(5.0f)}, words, kTheme.ivory);
}

void caution(const Ruler& r) {
  const char *first = "rehearsal aid, not an", *second = "approved training device";
  const float x = r.to.x - r.px(14.0f) - r.width(r.fonts.small, second), middle = (r.from.y + r.to.y) / 2.0f;
  r.text(r.fonts.small, {x, middle - r.px(17.0f)}, first, kTheme.soft);
  r.text(r.fonts.small, {x, middle + r.px(1.0f)}, second, kTheme.soft);
}

}  // namespace

Ruler ruler(const view::ProbeScaleView& view, const ui::Fonts& fonts, ImVec2 from, ImVec2 to) {
  const float scale = fonts.scale;
  const int rows = to.y - from.y >= (kProbeScaleHeight_px - 1.0f) * scale ? 2 : 1;
  const float y = from.y + (4.0f + kNameRow_px * static_cast<float>(rows) + 15.0f) * scale;
  return {view, fonts, *ImGui::GetBackgroundDrawList(), from,
          to,   rows,  from.x + kLeft_px * scale,       to.x - kRight_px * scale,
          y};
}

void draw_ruler(const Ruler& r) {
  graduation(r);
  ends(r);
  figures(r);
  caution(r);
}

}  // namespace stallwright::panel
