// Second page of the debrief: every set point against its truth, on one axis of ratio with knots above.
#include <algorithm>
#include <cmath>
#include <cstdio>

#include "render/desk/axis.hpp"
#include "render/desk/debrief_pages.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;
using view::PointView;
using view::SetView;

/// The place of one set's plot: rows from top to bottom, ratio from left to right.
struct Plot {
  float left, right, top, row;
  double low, high;
  float x(double ratio) const {
    return left + static_cast<float>((ratio - low) / (high - low)) * (right - left);
  }
};

void draw_knots(const SetView& set, Pen& pen, const Plot& plot) {
  float free_from = plot.left;
  for (const view::KnotsMark& mark : set.knots) {
    const float x = plot.x(mark.ratio);
    if (x < plot.left || x > plot.right) continue;
    pen.line({x, plot.top - pen.px(4)}, {x, plot.top}, kTheme.soft);
    const float half = 0.5f * Pen::width(pen.fonts().small, mark.text.c_str());
    if (x - half < free_from) continue;
    pen.text(pen.fonts().small, {x, plot.top - pen.px(21)}, kTheme.soft, mark.text.c_str(), Align::middle);
    free_from = x + half + pen.px(8);
  }
  pen.text(pen.fonts().small, {plot.right + pen.px(22), plot.top - pen.px(21)}, kTheme.soft,
           "\u2190 speed at 1 g, kt");
}

void draw_point(const PointView& p, Pen& pen, const Plot& plot, float y, float right) {
  const float middle = y + 0.5f * plot.row;
  pen.text(p.name == "warning" ? pen.fonts().bold : pen.fonts().body,
           {plot.left - pen.px(14), middle - pen.px(11)}, kTheme.ivory, p.name.c_str(), Align::right);
  const float step = std::min(0.22f * plot.row, pen.px(9));
  if (std::isfinite(p.true_ratio)) {
    const float x = plot.x(p.true_ratio);
    pen.dashed({x, y + pen.px(2)}, {x, y + plot.row - pen.px(2)}, kTheme.truth, 6, 4);
    pen.diamond({x, middle + step}, 4.5f, kTheme.truth);
  }
  char text[64];
  std::snprintf(text, sizeof text, "not found");
  if (p.found) {
    pen.whisker(plot.x(p.low), plot.x(p.high), middle - step, 5, kTheme.ivory);
    pen.round_mark({plot.x(p.ratio), middle - step}, 5, kTheme.measured);
    std::snprintf(text, sizeof text, "%s", p.off.c_str());
  }
  const float x = plot.right + pen.px(22);
  pen.text(pen.fonts().body, {x, middle - pen.px(11)}, kTheme.ivory, text);
  const char* held = !p.found ? "" : p.covered ? "holds the truth" : "MISSES the truth";
  pen.text(pen.fonts().small, {x + pen.px(128), middle - pen.px(9)},
           p.covered || !p.found ? kTheme.soft : kTheme.outside, held);
  pen.text(pen.fonts().small, {right, middle - pen.px(9)},
           p.order == "in order" ? kTheme.soft : kTheme.outside, p.order.c_str(), Align::right);
}

void draw_set(const view::DebriefView& view, const SetView& set, Pen& pen, const Plot& plot, float left,
              float right, bool last) {
  const float bottom = plot.top + plot.row * static_cast<float>(set.points.size());
  pen.box({plot.left, plot.top}, {plot.right, bottom}, kTheme.dial);
  draw_ratio_grid(view.ratio_low, view.ratio_high, pen, {plot.left, plot.top}, {plot.right, bottom}, last);
  draw_knots(set, pen, plot);
  pen.text(pen.fonts().bold, {left, plot.top - pen.px(23)}, kTheme.ivory, set.title.c_str());
  for (std::size_t i = 0; i < set.points.size(); ++i) {
    const float y = plot.top + plot.row * static_cast<float>(i);
    if (i > 0) pen.line({left, y}, {right, y}, kTheme.edge);
    draw_point(set.points[i], pen, plot, y, right);
  }
  pen.frame({plot.left, plot.top}, {plot.right, bottom}, kTheme.edge);
}

void draw_legend(const view::DebriefView& view, Pen& pen, ImVec2 at, float right) {
  ImFont* font = pen.fonts().small;
  const float y = at.y + pen.px(9);
  float x = at.x;
  pen.whisker(x, x + pen.px(36), y, 5, kTheme.ivory);
  pen.round_mark({x + pen.px(18), y}, 5, kTheme.measured);
  x += pen.px(46);
  x += pen.text(font, {x, at.y}, kTheme.soft, "set point from the log, with its 95 % interval") + pen.px(26);
  pen.diamond({x, y}, 4.5f, kTheme.truth);
  x += pen.px(14);
  pen.text(font, {x, at.y}, kTheme.soft, "truth");
  pen.text(font, {right, at.y}, kTheme.soft, view.made_by.c_str(), Align::right);
}

}  // namespace

void draw_set_points_page(const view::DebriefView& view, Pen& pen, ImVec2 from, ImVec2 to) {
  std::size_t rows = 0;
  for (const SetView& set : view.sets) rows += set.points.size();
  if (rows == 0) {
    pen.text(pen.fonts().large, from, kTheme.ivory, "No set point came of this flight.");
    return;
  }
  const float above = pen.px(30), between = pen.px(10);
  const auto sets = static_cast<float>(view.sets.size());
  const float room = to.y - from.y - pen.px(78) - sets * above - (sets - 1) * between;
  Plot plot{from.x + pen.px(170), to.x - pen.px(380),
            from.y + above,       std::clamp(room / static_cast<float>(rows), pen.px(22), pen.px(104)),
            view.ratio_low,       view.ratio_high};
  for (std::size_t k = 0; k < view.sets.size(); ++k) {
    const SetView& set = view.sets[k];
    draw_set(view, set, pen, plot, from.x, to.x, k + 1 == view.sets.size());
    plot.top += plot.row * static_cast<float>(set.points.size()) + above + between;
  }
  const float axis = plot.top - above - between + pen.px(26);
  pen.text(pen.fonts().small, {plot.left, axis}, kTheme.soft, "\u2190 faster");
  pen.text(pen.fonts().small, {0.5f * (plot.left + plot.right), axis}, kTheme.soft, "probe ratio (no unit)",
           Align::middle);
  pen.text(pen.fonts().small, {plot.right, axis}, kTheme.soft, "slower, towards the stall \u2192",
           Align::right);
  draw_legend(view, pen, {from.x, to.y - pen.px(20)}, to.x);
}

}  // namespace stallwright::desk
