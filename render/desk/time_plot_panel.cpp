#include "render/desk/time_plot_panel.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "render/desk/axis.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;
using view::FlightView;
using view::Panel;

/// The place of a picture and what runs over it.
struct Frame {
  ImVec2 from, to;
  double begin_s, end_s, low, high;
  float x(double t_s) const {
    return from.x + static_cast<float>((t_s - begin_s) / (end_s - begin_s)) * (to.x - from.x);
  }
  float y(double value) const {
    return to.y - static_cast<float>((value - low) / (high - low)) * (to.y - from.y);
  }
};

/// Cuts the curves to the pixels, when the part of the flight that is shown has changed, and finds the axis.
const TimePlotsState::Cut& cut_to(const FlightView& flight, std::size_t index, TimePlotsState& state,
                                  std::size_t columns) {
  TimePlotsState::Cut& cut = state.cuts[index];
  const Panel& panel = flight.panels[index];
  if (cut.begin_s == state.begin_s && cut.end_s == state.end_s && cut.columns == columns) return cut;
  cut.begin_s = state.begin_s;
  cut.end_s = state.end_s;
  cut.columns = columns;
  cut.traces.resize(panel.traces.size());
  double low = 1e300, high = -1e300;
  for (std::size_t k = 0; k < panel.traces.size(); ++k) {
    pixel_columns(flight.t_s, panel.traces[k].values, state.begin_s, state.end_s, columns, cut.traces[k]);
    for (const view::CurvePoint& p : cut.traces[k]) {
      if (!std::isfinite(p.y) || p.x < state.begin_s || p.x > state.end_s) continue;
      low = std::min(low, p.y);
      high = std::max(high, p.y);
    }
  }
  if (low > high) low = high = 0.0;
  const double middle = 0.5 * (low + high), half = std::max(0.54 * (high - low), 0.5 * panel.least_span);
  cut.low = middle - half;
  cut.high = middle + half;
  return cut;
}

void draw_grid(const Panel& panel, Pen& pen, const Frame& frame) {
  const int most = std::max(2, static_cast<int>((frame.to.y - frame.from.y) / pen.px(20)));
  AxisTicks ticks = axis_ticks(frame.low, frame.high, most);
  // One number is no scale: rather one too many.
  for (int more = 1; ticks.count < 2 && more < 4; ++more)
    ticks = axis_ticks(frame.low, frame.high, most + more);
  for (int k = 0; k < ticks.count; ++k) {
    const float y = frame.y(ticks.at(k));
    pen.line({frame.from.x, y}, {frame.to.x, y}, kTheme.edge);
    char text[32];
    axis_text(text, sizeof text, ticks.at(k), ticks.decimals);
    pen.text(pen.fonts().small, {frame.from.x - pen.px(8), y - pen.px(9)}, kTheme.soft, text, Align::right);
  }
  if (panel.floor_value > frame.low && panel.floor_value < frame.high) {
    const float y = frame.y(panel.floor_value);
    pen.line({frame.from.x, y}, {frame.to.x, y}, kTheme.danger, 2.0f);
    pen.text(pen.fonts().small, {frame.from.x + pen.px(6), y - pen.px(18)}, kTheme.danger, "floor");
  }
}

void draw_windows(const FlightView& flight, Pen& pen, const Frame& frame) {
  for (const TimeHistory::Window& w : flight.windows) {
    if (w.end_s < frame.begin_s || w.begin_s > frame.end_s) continue;
    const float a = std::max(frame.x(w.begin_s), frame.from.x), b = std::min(frame.x(w.end_s), frame.to.x);
    pen.box({a, frame.from.y}, {std::max(b, a + pen.px(1)), frame.to.y}, kTheme.ivory, 0.13f);
  }
}

void draw_bands(const FlightView& flight, const Panel& panel, Pen& pen, const Frame& frame) {
  for (const TimeHistory::Band& b : flight.bands) {
    if (b.end_s < frame.begin_s || b.begin_s > frame.end_s) continue;
    const float x0 = std::max(frame.x(b.begin_s), frame.from.x), x1 = std::min(frame.x(b.end_s), frame.to.x);
    const double low = panel.bands_speed ? b.low_kt : b.low_ft;
    const double high = panel.bands_speed ? b.high_kt : b.high_ft;
    for (const double value : {low, high})
      if (value > frame.low && value < frame.high)
        pen.dashed({x0, frame.y(value)}, {x1, frame.y(value)}, kTheme.within, 7, 4);
  }
}

/// Measured: a whole line; truth: dashes, drawn as every other stretch of about six pixels.
void draw_curve(const std::vector<view::CurvePoint>& points, bool truth, Pen& pen, const Frame& frame) {
  const ui::Colour& ink = truth ? kTheme.truth : kTheme.measured;
  const float thick = pen.px(1.5f), period = pen.px(truth ? 10.0f : 1e9f), on = pen.px(truth ? 6.5f : 1e9f);
  ImDrawList& list = pen.list();
  list.PathClear();
  const auto stroke = [&] {
    if (list._Path.Size > 1)
      list.PathStroke(ui::colour(ink), 0, thick);
    else
      list.PathClear();
  };
  for (const view::CurvePoint& p : points) {
    const float x = frame.x(p.x);
    if (!std::isfinite(p.y) || (truth && std::fmod(x - frame.from.x + 1e4f * period, period) > on)) {
      stroke();
      continue;
    }
    list.PathLineTo({x, frame.y(p.y)});
  }
  stroke();
}

void draw_events(const FlightView& flight, Pen& pen, const Frame& frame) {
  for (const SortieEvent& e : flight.events) {
    if (e.t_s < frame.begin_s || e.t_s > frame.end_s) continue;
    const float x = frame.x(e.t_s);
    pen.dashed({x, frame.from.y}, {x, frame.to.y}, e.danger ? kTheme.danger : kTheme.soft, 3, 3);
    const ImVec2 at{x, frame.from.y + pen.px(9)};
    if (e.danger)
      pen.cross(at, 5, kTheme.danger);
    else
      pen.diamond(at, 4, kTheme.ivory);
  }
}

double value_at(const std::vector<double>& t_s, const std::vector<double>& values, double at_s) {
  const auto next = std::lower_bound(t_s.begin(), t_s.end(), at_s);
  if (next == t_s.end()) return kNone;
  return values[static_cast<std::size_t>(next - t_s.begin())];
}

/// Name and unit, and what stands at the cursor.
void draw_head(const FlightView& flight, const Panel& panel, const TimePlotsState& state, Pen& pen,
               const Frame& frame, bool top) {
  char text[128];
  std::snprintf(text, sizeof text, "%s, %s", panel.name.c_str(), panel.unit.c_str());
  float x = frame.from.x;
  const float y = frame.from.y - pen.px(21);
  x += pen.text(pen.fonts().small, {x, y}, kTheme.ivory, text) + pen.px(18);
  const bool cursor = state.cursor_s >= frame.begin_s && state.cursor_s <= frame.end_s;
  for (const view::Trace& trace : panel.traces) {
    char number[32] = "";
    if (cursor)
      axis_text(number, sizeof number, value_at(flight.t_s, trace.values, state.cursor_s), panel.decimals);
    std::snprintf(text, sizeof text, "%s%s%s", trace.name.c_str(), cursor ? " " : "", number);
    x += pen.text(pen.fonts().small, {x, y}, trace.truth ? kTheme.truth : kTheme.measured, text) + pen.px(18);
  }
  if (!cursor) return;
  const float at = frame.x(state.cursor_s);
  pen.line({at, frame.from.y}, {at, frame.to.y}, kTheme.ivory);
  if (!top) return;
  std::snprintf(text, sizeof text, "at %.1f s", state.cursor_s);
  pen.text(pen.fonts().small, {frame.to.x, y}, kTheme.ivory, text, Align::right);
}

/// The event nearest to the cursor, in words, if one is within a few pixels.
void draw_event_words(const FlightView& flight, const TimePlotsState& state, Pen& pen, const Frame& frame) {
  for (const SortieEvent& e : flight.events) {
    if (!(std::abs(frame.x(e.t_s) - frame.x(state.cursor_s)) < pen.px(8)) || e.t_s < frame.begin_s) continue;
    char text[256];
    std::snprintf(text, sizeof text, "%s%s%s: %s", e.kind.c_str(), e.point.empty() ? "" : ", ",
                  e.point.c_str(), e.text.c_str());
    const float width = Pen::width(pen.fonts().small, text);
    const float x = std::min(frame.x(e.t_s) + pen.px(10), frame.to.x - width - pen.px(6));
    const float y = frame.from.y + pen.px(18);
    pen.box({x - pen.px(4), y - pen.px(2)}, {x + width + pen.px(4), y + pen.px(19)}, kTheme.panel, 0.92f);
    pen.text(pen.fonts().small, {x, y}, kTheme.ivory, text);
    return;
  }
}

}  // namespace

void draw_time_panel(const FlightView& flight, std::size_t index, TimePlotsState& state, Pen& pen,
                     ImVec2 from, ImVec2 to, bool top) {
  const Panel& panel = flight.panels[index];
  const auto columns = static_cast<std::size_t>(std::max(2.0f, to.x - from.x));
  const TimePlotsState::Cut& cut = cut_to(flight, index, state, columns);
  const Frame frame{from, to, state.begin_s, state.end_s, cut.low, cut.high};
  pen.box(from, to, kTheme.dial);
  draw_windows(flight, pen, frame);
  draw_grid(panel, pen, frame);
  if (panel.bands_speed || panel.bands_height) draw_bands(flight, panel, pen, frame);
  pen.list().PushClipRect(from, to, true);
  for (std::size_t k = panel.traces.size(); k-- > 0;)
    draw_curve(cut.traces[k], panel.traces[k].truth, pen, frame);
  draw_events(flight, pen, frame);
  if (top) draw_event_words(flight, state, pen, frame);
  pen.list().PopClipRect();
  pen.frame(from, to, kTheme.edge);
  draw_head(flight, panel, state, pen, frame, top);
}

}  // namespace stallwright::desk
