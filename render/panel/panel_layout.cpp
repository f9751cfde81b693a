#include "render/panel/panel_layout.hpp"

#include <algorithm>

namespace stallwright::panel {
namespace {

constexpr float kGap_px = 6.0f;
constexpr float kStrip_px = kGaugeHeight_px + 10.0f;  ///< of gauges under the dials
constexpr float kColumn_px = kGaugeWidth_px + 16.0f;  ///< of gauges on the right, its gap included
constexpr float kWidest_px = 184.0f;                  ///< of a gauge: longer scales read no better

/// Equal cells, counted by rows.
struct Grid {
  int columns;
  float cell_x, cell_y;
  /// Of cell `k`, when the first cell's corner lies at `from`; px.
  ImVec2 middle(ImVec2 from, int k) const {
    const int row = k / columns, column = k % columns;
    return {from.x + cell_x * (static_cast<float>(column) + 0.5f),
            from.y + cell_y * (static_cast<float>(row) + 0.5f)};
  }
};

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

/// So many cells in so many columns, as large as the room allows.
Grid grid(const Room& room, int columns, std::size_t cells) {
  const int rows = static_cast<int>(cells) / columns;
  return {columns, room.width() / static_cast<float>(columns), room.height() / static_cast<float>(rows)};
}

void place_dials(PanelLayout& layout, const Room& room, int columns) {
  const Grid cells = grid(room, columns, kDials);
  layout.radius = diameter(room, columns, static_cast<int>(kDials) / columns) / 2.0f;
  for (std::size_t k = 0; k < kDials; ++k) layout.dials[k] = cells.middle(room.from, static_cast<int>(k));
}

void place_gauges(PanelLayout& layout, const Room& room, int columns) {
  const Grid cells = grid(room, columns, kGauges);
  const float down = room.px(kGaugeHeight_px) / 2.0f;
  const float right =
      std::clamp(cells.cell_x - room.px(4.0f * kGap_px), room.px(kGaugeWidth_px), room.px(kWidest_px)) / 2.0f;
  for (std::size_t k = 0; k < kGauges; ++k) {
    const ImVec2 at = cells.middle(room.from, static_cast<int>(k));
    layout.gauges[k] = {{at.x - right, at.y - down}, {at.x + right, at.y + down}};
  }
}

/// The row with its gauges, moved to the middle of a rectangle that is higher than they need.
PanelLayout row_over_gauges(const Room& whole) {
  const float strip = whole.px(kStrip_px), gap = whole.px(kGap_px);
  const Room above{whole.from, {whole.to.x, whole.to.y - strip}, whole.scale};
  const float needed = diameter(above, 6, 1) + 2.0f * gap + strip;
  const float top = whole.from.y + (whole.height() - needed) / 2.0f, middle = top + needed - strip;
  PanelLayout layout;
  place_dials(layout, {{whole.from.x, top}, {whole.to.x, middle}, whole.scale}, 6);
  place_gauges(layout, {{whole.from.x, middle}, {whole.to.x, middle + strip}, whole.scale}, 6);
  return layout;
}

/// Dials in one row or two with the gauges right of them; two rows stand close together, since the eye goes round them.
PanelLayout gauges_beside(const Room& whole, const Room& left, int dial_columns, int gauge_columns) {
  const float gap = whole.px(kGap_px), column = whole.to.x - left.to.x;
  const float close =
      static_cast<float>(dial_columns) * (diameter(left, dial_columns, 6 / dial_columns) + 4.0f * gap);
  const float width = dial_columns == 3 ? std::min(left.width(), close) : left.width();
  const float x = whole.from.x + (whole.width() - width - column) / 2.0f;
  PanelLayout layout;
  place_dials(layout, {{x, whole.from.y}, {x + width, whole.to.y}, whole.scale}, dial_columns);
  place_gauges(layout, {{x + width, whole.from.y}, {x + width + column, whole.to.y}, whole.scale},
               gauge_columns);
  return layout;
}

}  // namespace

PanelLayout panel_layout(ImVec2 from, ImVec2 to, float scale) {
  const Room whole{from, to, scale};
  const int columns = whole.height() >= whole.px(kGaugeHeight_px) * static_cast<float>(kGauges) ? 1 : 2;
  const Room left{from, {to.x - whole.px(kColumn_px) * static_cast<float>(columns), to.y}, scale};
  const Room above{from, {to.x, to.y - whole.px(kStrip_px)}, scale};
  const float under = diameter(above, 6, 1), beside = diameter(left, 6, 1), block = diameter(left, 3, 2);
  const bool in_block = block >= 0.95f * std::max(under, beside);
  if (!in_block && under >= beside) return row_over_gauges(whole);
  return gauges_beside(whole, left, in_block ? 3 : 6, columns);
}

}  // namespace stallwright::panel
