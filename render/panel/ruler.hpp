#pragma once
#include <imgui.h>

#include <algorithm>

#include "render/ui/fonts.hpp"
#include "render/ui/theme.hpp"
#include "render/view/probe_scale_view.hpp"

namespace stallwright::panel {

/// One line of names above the ruler, px at scale 1.
inline constexpr float kNameRow_px = 17.0f;

/// Where the probe scale's ruler lies in its strip, and the strokes on it; widths in px at scale 1.
struct Ruler {
  const view::ProbeScaleView& view;
  const ui::Fonts& fonts;
  ImDrawList& list;
  ImVec2 from, to;
  int name_rows;
  float left, right, y;  ///< the line

  float px(float at_scale_1) const { return at_scale_1 * fonts.scale; }
  /// Held at the ends; what is no number stands at the fast end.
  float x(double ratio) const {
    const double held = ratio > view.from ? std::min(ratio, view.to) : view.from;
    const double share = (held - view.from) / (view.to - view.from);
    return left + (right - left) * static_cast<float>(share);
  }
  void line(ImVec2 a, ImVec2 b, const ui::Colour& colour, float width) const {
    list.AddLine(a, b, ui::colour(colour), px(width));
  }
  void text(ImFont* font, ImVec2 at, const char* words, const ui::Colour& colour) const {
    list.AddText(font, font->FontSize, at, ui::colour(colour), words);
  }
  float width(ImFont* font, const char* words) const {
    return font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0f, words).x;
  }
};

/// Lays the ruler into a strip of the screen, on the background list: `name_rows` is 2 in one of kProbeScaleHeight_px, else 1.
Ruler ruler(const view::ProbeScaleView& view, const ui::Fonts& fonts, ImVec2 from, ImVec2 to);

/// Line, ticks and figures, the words at its ends, the ratio in figures, and the usual caution.
void draw_ruler(const Ruler& r);

}  // namespace stallwright::panel
