// Third page of the debrief: the error of every set point taken apart, a column to each part.
#include <algorithm>
#include <cmath>

#include "render/desk/axis.hpp"
#include "render/desk/debrief_pages.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;
using view::kParts;
using view::PointView;

/// The columns: five parts and their sum, each with its own zero in the middle.
struct Grid {
  float left, column, number, row;  ///< a column's number stands left of its bars, `number` wide
  double span_kt;
  float edge(std::size_t k) const { return left + static_cast<float>(k) * column + number; }
  float half() const { return 0.44f * (column - number); }
  float middle(std::size_t k) const { return edge(k) + half(); }
  /// Fast, which warns early, to the left, as the charts have it.
  float x(std::size_t k, double kt) const {
    return middle(k) - static_cast<float>(std::clamp(kt / span_kt, -1.0, 1.0)) * half();
  }
};

/// An arrow head where a bar goes on past its frame.
void off_scale(Pen& pen, ImVec2 at, float way, const ui::Colour& ink) {
  const float r = pen.px(5);
  pen.list().AddTriangleFilled({at.x + 1.4f * r * way, at.y}, {at.x, at.y - r}, {at.x, at.y + r},
                               ui::colour(ink));
}

/// `y` is the middle of the row. Filled: the adopted reading; open, below it: a plain one.
void draw_cell(Pen& pen, const Grid& grid, std::size_t k, double adopted, double plain, float y, bool sum) {
  if (!std::isfinite(adopted)) return;
  const float thick = pen.px(sum ? 7.0f : 5.0f), zero = grid.middle(k);
  const auto bar = [&](double kt, float top, float height, bool filled) {
    const float x = grid.x(k, kt), a = std::min(x, zero), b = std::max({x, zero, a + pen.px(1)});
    if (filled)
      pen.box({a, top}, {b, top + height}, sum ? kTheme.ivory : kTheme.measured);
    else
      pen.frame({a, top}, {b, top + height}, kTheme.soft);
    if (std::abs(kt) > grid.span_kt)
      off_scale(pen, {x, top + 0.5f * height}, kt > 0.0 ? -1.0f : 1.0f, filled ? kTheme.ivory : kTheme.soft);
  };
  bar(adopted, y - thick, thick, true);
  if (std::isfinite(plain)) bar(plain, y + pen.px(1.5f), pen.px(4), false);
  char text[32];
  axis_text(text, sizeof text, adopted, 1, true);
  ImFont* font = sum ? pen.fonts().bold : pen.fonts().body;
  pen.text(font, {grid.edge(k) - pen.px(8), y - pen.px(11)}, kTheme.ivory, text, Align::right);
}

void draw_row(const PointView& p, Pen& pen, const Grid& grid, float left, float y) {
  const float middle = y + 0.5f * grid.row;
  pen.text(p.name == "warning" ? pen.fonts().bold : pen.fonts().body, {left, middle - pen.px(11)},
           kTheme.ivory, p.name.c_str());
  if (!p.split_known) {
    pen.text(pen.fonts().small, {grid.left + pen.px(10), middle - pen.px(9)}, kTheme.soft,
             p.found ? "not known" : "not found");
    return;
  }
  for (std::size_t k = 0; k < kParts; ++k)
    draw_cell(pen, grid, k, p.part_kt[k], p.plain_part_kt[k], middle, false);
  draw_cell(pen, grid, kParts, p.error_kt, p.plain_error_kt, middle, true);
}

void draw_heads(Pen& pen, const Grid& grid, float top, float bottom) {
  for (std::size_t k = 0; k <= kParts; ++k) {
    const char* name = k < kParts ? view::kPartNames[k] : "= error";
    pen.text(pen.fonts().bold, {grid.middle(k), top}, kTheme.ivory, name, Align::middle);
    const float a = grid.middle(k) - grid.half(), b = grid.middle(k) + grid.half(), y = top + pen.px(26);
    pen.box({a, y}, {b, bottom}, kTheme.dial);
    const AxisTicks ticks = axis_ticks(-grid.span_kt, grid.span_kt, 5);
    for (int i = 0; i < ticks.count; ++i) {
      const float x = grid.x(k, ticks.at(i));
      const bool zero = std::abs(ticks.at(i)) < 1e-9;
      pen.line({x, y}, {x, bottom}, zero ? kTheme.soft : kTheme.edge, zero ? 1.4f : 1.0f);
      if (!zero && i != 0 && i + 1 != ticks.count) continue;  // more would touch
      char text[32];
      axis_text(text, sizeof text, ticks.at(i), ticks.decimals, true);
      pen.text(pen.fonts().small, {x, bottom + pen.px(4)}, kTheme.soft, text, Align::middle);
    }
  }
}

void draw_words(const view::DebriefView& view, Pen& pen, ImVec2 at, ImVec2 to) {
  pen.wrapped(
      pen.fonts().small, at, kTheme.soft,
      "Knots to the right of zero make a set point slow, so that it warns late; to the left fast, so that it "
      "warns early. Filled: the reading "
      "that was adopted. Open: what a plain reading of the same record would have given (mean of the window; "
      "ratio at the break). Instruments: against ideal ones on the same flight, the mass entered among them. "
      "Air: what bumps did to the reading. Hold: the speed and power held, the answer to the air among them. "
      "Entry rate: lift lagging behind the angle in the stall, beyond what is corrected. An arrow: the bar "
      "is longer than its frame.",
      to.x - at.x);
  pen.text(pen.fonts().small, {to.x, to.y - pen.px(18)}, kTheme.soft, view.made_by.c_str(), Align::right);
}

}  // namespace

void draw_split_page(const view::DebriefView& view, Pen& pen, ImVec2 from, ImVec2 to) {
  std::size_t lines = 0;
  for (const view::SetView& set : view.sets) lines += set.points.size() + (view.sets.size() > 1 ? 1 : 0);
  if (lines == 0) {
    pen.text(pen.fonts().large, from, kTheme.ivory, "No set point came of this flight.");
    return;
  }
  const float words = pen.px(96), top = from.y + pen.px(30);
  Grid grid{from.x + pen.px(140), 0, pen.px(58), 0, view.part_span_kt};
  grid.column = (to.x - grid.left) / static_cast<float>(kParts + 1);
  grid.row =
      std::clamp((to.y - words - pen.px(34) - top) / static_cast<float>(lines), pen.px(22), pen.px(92));
  const float bottom = top + grid.row * static_cast<float>(lines);
  draw_heads(pen, grid, from.y, bottom);
  pen.text(pen.fonts().small, {from.x, bottom + pen.px(4)}, kTheme.soft, "part of the error, kt");
  float y = top;
  for (const view::SetView& set : view.sets) {
    if (view.sets.size() > 1) {
      pen.text(pen.fonts().small, {from.x, y + grid.row - pen.px(20)}, kTheme.soft, set.title.c_str());
      y += grid.row;
    }
    for (const PointView& p : set.points) {
      draw_row(p, pen, grid, from.x, y);
      y += grid.row;
    }
  }
  draw_words(view, pen, {from.x, to.y - words + pen.px(14)}, to);
}

}  // namespace stallwright::desk
