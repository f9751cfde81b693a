#include "sim/report/plot_panel.hpp"

#include <algorithm>
#include <cmath>

#include "sim/report/decimate.hpp"
#include "sim/report/number_text.hpp"

namespace stallwright {

PlotPanel::PlotPanel(Svg& svg, const Box& area, double begin_s, double end_s, const Extent& values)
    : svg_(svg),
      area_(area),
      x_{begin_s, end_s, area.x, area.x + area.width},
      y_{values.low(), values.high(), area.y + area.height, area.y} {}

void PlotPanel::shade(double begin_s, double end_s) {
  const double from = std::clamp(x_(begin_s), area_.x, area_.x + area_.width);
  const double to = std::clamp(x_(end_s), area_.x, area_.x + area_.width);
  svg_.box({from, area_.y, to - from, area_.height}, theme::kShade);
  for (const double at : {from, to})
    svg_.line({at, area_.y}, {at, area_.y + area_.height}, {theme::kSoftInk, 0.7});
}

void PlotPanel::axes(std::string_view name, bool time_axis) {
  const double right = area_.x + area_.width, bottom = area_.y + area_.height;
  svg_.text({area_.x, area_.y - 6}, name, {12, Anchor::start, true});
  const Ticks values = nice_ticks(y_.low, y_.high, std::max(3, static_cast<int>(area_.height / 21)));
  for (const double value : values.values) {
    svg_.line({area_.x, y_(value)}, {right, y_(value)}, {theme::kGrid, 0.8});
    svg_.text({area_.x - 7, y_(value) + 4}, page_fixed(value, values.decimals), {11, Anchor::end});
  }
  const Ticks times = nice_ticks(x_.low, x_.high, std::max(3, static_cast<int>(area_.width / 80)));
  for (const double time : times.values) {
    svg_.line({x_(time), bottom}, {x_(time), bottom + 4}, {});
    if (time_axis) svg_.text({x_(time), bottom + 16}, page_fixed(time, times.decimals), {11, Anchor::middle});
  }
  if (time_axis) svg_.text({area_.x - 7, bottom + 16}, "t, s", {11, Anchor::end, true});
}

void PlotPanel::curve(std::span<const double> t_s, std::span<const double> values, const Stroke& stroke) {
  const auto pixels = static_cast<std::size_t>(std::max(1.0, area_.width));
  std::vector<Spot> spots;
  for (const std::size_t i : samples_to_draw(t_s, values, x_.low, x_.high, pixels))
    spots.push_back({x_(t_s[i]), y_(values[i])});
  svg_.clip(area_);
  svg_.polyline(spots, stroke);
  svg_.unclip();
}

void PlotPanel::level(double value, double begin_s, double end_s, const Stroke& stroke) {
  if (!y_.holds(value)) return;
  const double from = std::clamp(x_(begin_s), area_.x, area_.x + area_.width);
  const double to = std::clamp(x_(end_s), area_.x, area_.x + area_.width);
  if (to > from) svg_.line({from, y_(value)}, {to, y_(value)}, stroke);
}

void PlotPanel::band(double low, double high, double begin_s, double end_s) {
  const double from = std::clamp(x_(begin_s), area_.x, area_.x + area_.width);
  const double to = std::clamp(x_(end_s), area_.x, area_.x + area_.width);
  const double top = std::clamp(y_(high), area_.y, area_.y + area_.height);
  const double bottom = std::clamp(y_(low), area_.y, area_.y + area_.height);
  svg_.box({from, top, to - from, bottom - top}, theme::kWithin, 0.12);
  for (const double limit : {low, high})
    level(limit, begin_s, end_s, {theme::kWithin, 1.5, theme::kWithinDash});
}

void PlotPanel::mark(Mark mark, double t_s, double value, double radius, std::string_view fill) {
  if (x_.holds(t_s) && y_.holds(value)) svg_.mark(mark, {x_(t_s), y_(value)}, radius, fill);
}

void PlotPanel::frame() { svg_.frame(area_, {theme::kInk, 1.0}); }

Extent extent_between(std::span<const double> t_s, std::span<const double> values, double begin_s,
                      double end_s) {
  Extent extent;
  for (std::size_t i = 0; i < std::min(t_s.size(), values.size()); ++i)
    if (t_s[i] >= begin_s && t_s[i] <= end_s) extent.add(values[i]);
  return extent;
}

double value_at(std::span<const double> t_s, std::span<const double> values, double at_s) {
  const auto next = std::lower_bound(t_s.begin(), t_s.end(), at_s);
  auto i = static_cast<std::size_t>(next - t_s.begin());
  if (i > 0 && (i == t_s.size() || at_s - t_s[i - 1] < t_s[i] - at_s)) --i;
  return i < values.size() ? values[i] : std::nan("");
}

}  // namespace stallwright
