#include "render/panel/panel_layout.hpp"

#include <algorithm>

namespace stallwright::panel {
namespace {

constexpr float kGap_px = 6.0f;
constexpr float kColumn_px = kGaugeWidth_px + 12.0f;  ///< of gauges on the right, its gap included

struct Room {
  ImVec2 from, to;
  float scale;
  float width() const { return to.x - from.x; }
  float height() const { return to.y - from.y; }
  float px(float at_scale_1) const { return at_scale_1 * scale; }
};

/// Diameter that dials of so many columns and rows may have in a room.
float diameter(const Room& room, int columns, int rows) {
  const float gap = room.px(kGap_px);
  return std::max(
      std::min((room.width() - gap * static_cast<float>(columns + 1)) / static_cast<float>(columns),
               (room.height() - gap * static_cast<float>(rows + 1)) / static_cast<float>(rows)),
      2.0f);
}

void place_dials(PanelLayout& layout, const Room& room, int columns) {
  const int rows = static_cast<int>(kDials) / columns;
  layout.radius = diameter(room, columns, rows) / 2.0f;
  const float cell_x = room.width() / static_cast<float>(columns);
  const float cell_y = room.height() / static_cast<float>(rows);
  for (int k = 0; k < static_cast<int>(kDials); ++k)
    layout.dials[static_cast<std::size_t>(k)] = {
        room.from.x + cell_x * (static_cast<float>(k % columns) + 0.5f),
        room.from.y + cell_y * (static_cast<float>(k / columns) + 0.5f)};
}

void place_gauges(PanelLayout& layout, const Room& room, int columns) {
  const float width = room.px(kGaugeWidth_px), height = room.px(kGaugeHeight_px);
  const int rows = static_cast<int>(kGauges) / columns;
  const float cell_x = room.width() / static_cast<float>(columns);
  const float cell_y = room.height() / static_cast<float>(rows);
  for (int k = 0; k < static_cast<int>(kGauges); ++k) {
    const float x = room.from.x + cell_x * (static_cast<float>(k % columns) + 0.5f);
    const float y = room.from.y + cell_y * (static_cast<float>(k / columns) + 0.5f);
    layout.gauges[static_cast<std::size_t>(k)] = {{x - width / 2.0f, y - height / 2.0f},
                                                  {x + width / 2.0f, y + height / 2.0f}};
  }
}

}  // namespace

PanelLayout panel_layout(ImVec2 from, ImVec2 to, float scale) {
  const Room whole{from, to, scale};
  const float strip = whole.px(kGaugeHeight_px + kGap_px), column = whole.px(kColumn_px);
  const Room above{from, {to.x, to.y - strip}, scale}, below{{from.x, to.y - strip}, to, scale};
  const Room left{from, {to.x - column, to.y}, scale}, right{{to.x - column, from.y}, to, scale};
  const float under = diameter(above, 6, 1), beside = diameter(left, 6, 1), block = diameter(left, 3, 2);
  PanelLayout layout;
  const bool strip_below = under >= std::max(beside, block);
  place_dials(layout, strip_below ? above : left, strip_below || beside >= block ? 6 : 3);
  place_gauges(layout, strip_below ? below : right, strip_below ? 6 : 1);
  return layout;
}

}  // namespace stallwright::panel
