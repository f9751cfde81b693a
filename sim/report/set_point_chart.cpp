// The chart of the set points: every point of a flap setting on one scale, in ratio below and in knots above.
#include <algorithm>
#include <cmath>

#include "sim/report/debrief_parts.hpp"
#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/scale.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright::debrief {
namespace {

constexpr double kWidth = 800, kLeft = 152, kRight = 622, kTop = 62, kRow = 54;

struct MapPoint {
  double ratio, speed_kt;
};

/// The map of a set, ratio rising: as handed in, else through the judged points.
std::vector<MapPoint> map_of(const DebriefInput& input, const JudgedSet& set) {
  std::vector<MapPoint> map;
  const auto add = [&](double ratio, double speed_kt) {
    if (std::isfinite(ratio) && std::isfinite(speed_kt)) map.push_back({ratio, speed_kt});
  };
  for (const KnotsScale& scale : input.scales)
    if (scale.flap_deg == set.flap_deg)
      for (std::size_t i = 0; i < std::min(scale.ratio.size(), scale.speed_kt.size()); ++i)
        add(scale.ratio[i], scale.speed_kt[i]);
  if (map.size() < 2) {
    map.clear();
    for (const JudgedPoint& point : set.points) {
      add(point.true_ratio, point.true_speed_kt);
      add(point.measured.ratio, point.measured_speed_kt);
    }
  }
  std::sort(map.begin(), map.end(), [](const MapPoint& a, const MapPoint& b) { return a.ratio < b.ratio; });
  return map;
}

/// Where on the ratio axis a speed stands; NaN off the map.
double ratio_at(const std::vector<MapPoint>& map, double speed_kt) {
  for (std::size_t i = 1; i < map.size(); ++i) {
    const MapPoint &a = map[i - 1], &b = map[i];
    if (a.speed_kt >= speed_kt && speed_kt >= b.speed_kt && a.speed_kt > b.speed_kt)
      return a.ratio + (a.speed_kt - speed_kt) / (a.speed_kt - b.speed_kt) * (b.ratio - a.ratio);
  }
  return kNone;
}

/// One scale for all sets, so that flap settings compare.
Extent ratios_of(const Judgement& judgement) {
  Extent extent;
  for (const JudgedSet& set : judgement.sets)
    for (const JudgedPoint& point : set.points)
      for (const double ratio : {point.true_ratio, point.measured.ratio, point.measured.interval_low,
                                 point.measured.interval_high})
        extent.add(ratio);
  return extent.widened(0.06, 0.1);
}

void draw_axes(Svg& svg, const Scale& x, const std::vector<MapPoint>& map, double bottom) {
  const Ticks ratios = nice_ticks(x.low, x.high, 9);
  for (const double ratio : ratios.values) {
    svg.line({x(ratio), kTop}, {x(ratio), bottom + 5}, {theme::kGrid});
    svg.text({x(ratio), bottom + 18}, page_fixed(ratio, ratios.decimals), {12, Anchor::middle});
  }
  svg.line({x.pixel_begin, bottom}, {x.pixel_end, bottom}, {});
  svg.line({x.pixel_begin, kTop}, {x.pixel_end, kTop}, {});
  svg.text({x.pixel_begin - 12, bottom + 18}, "probe ratio (no unit)", {12, Anchor::end});
  svg.text({x.pixel_begin - 12, kTop - 8}, "speed at 1 g, kt", {12, Anchor::end});
  if (map.size() < 2) return;
  // Knots crowd towards the fast end: labels that would touch are left out, their ticks stay.
  const Ticks knots = nice_ticks(map.back().speed_kt, map.front().speed_kt, 14);
  double free_from = x.pixel_begin;
  for (auto it = knots.values.rbegin(); it != knots.values.rend(); ++it) {
    const double at = ratio_at(map, *it);
    if (!std::isfinite(at) || !x.holds(at)) continue;
    svg.line({x(at), kTop - 5}, {x(at), kTop}, {});
    const std::string label = page_fixed(*it, knots.decimals);
    const double half = 0.5 * text_width(label, 12);
    if (x(at) - half < free_from) continue;
    svg.text({x(at), kTop - 8}, label, {12, Anchor::middle});
    free_from = x(at) + half + 6;
  }
}

void draw_point(Svg& svg, const Scale& x, const JudgedPoint& point, double top) {
  const SetPoint& measured = point.measured;
  const double y = top + 20, y_truth = top + 37;
  svg.text({kLeft - 12, y + 2}, measured.name, {14, Anchor::end, true});
  if (std::isfinite(point.true_speed_kt))
    svg.text({kLeft - 12, y + 18}, "truth at " + page_fixed(point.true_speed_kt, 1) + " kt",
             {12, Anchor::end, false, false, theme::kSoftInk});
  svg.line({x(point.true_ratio), top + 6}, {x(point.true_ratio), y_truth},
           {theme::kTruth, 1.5, theme::kTruthDash});
  svg.mark(Mark::diamond, {x(point.true_ratio), y_truth}, 5, theme::kTruth);
  svg.whisker(x(measured.interval_low), x(measured.interval_high), y, 7, {theme::kInk, 1.6});
  svg.mark(Mark::circle, {x(measured.ratio), y}, 5, theme::kMeasured);
  if (!measured.found()) {
    svg.text({kRight + 18, y + 2}, "not found", {13, Anchor::start, true});
    return;
  }
  svg.text({kRight + 18, y + 2},
           page_signed(point.error_kt, 2) + " kt (\u00b1 " + page_fixed(point.expanded_kt, 2) + ")", {13});
  if (!std::isfinite(point.error_kt)) return;
  svg.text({kRight + 18, y + 18}, point.covered ? "holds the truth" : "MISSES the truth",
           {12, Anchor::start, false, false, theme::kSoftInk});
}

void draw_legend(Svg& svg, double y) {
  const TextLook look{12};
  svg.whisker(kLeft, kLeft + 34, y, 6, {theme::kInk, 1.6});
  svg.mark(Mark::circle, {kLeft + 17, y}, 5, theme::kMeasured);
  svg.text({kLeft + 44, y + 4}, "set point from the log, with its 95 % interval", look);
  svg.mark(Mark::diamond, {kLeft + 356, y}, 5, theme::kTruth);
  svg.text({kLeft + 370, y + 4}, "truth", look);
}

std::string chart(const DebriefInput& input, const JudgedSet& set, const Extent& ratios) {
  const double bottom = kTop + kRow * static_cast<double>(set.points.size());
  const Scale x{ratios.low(), ratios.high(), kLeft, kRight};
  Svg svg(kWidth, bottom + 58, "Set points and truth, " + flap_words(set.flap_deg));
  svg.text({0, 18}, flap_words(set.flap_deg) + ", " + page_fixed(set.mass_kg, 0) + " kg",
           {15, Anchor::start, true});
  svg.text({kLeft, 18}, "\u2190 faster", {12, Anchor::start, false, false, theme::kSoftInk});
  svg.text({kRight, 18}, "slower, towards the stall \u2192",
           {12, Anchor::end, false, false, theme::kSoftInk});
  svg.text({kRight + 18, kTop - 8}, "error, and 95 % \u00b1", {12});
  draw_axes(svg, x, map_of(input, set), bottom);
  for (std::size_t i = 0; i < set.points.size(); ++i) {
    const double top = kTop + kRow * static_cast<double>(i);
    if (i > 0) svg.line({0, top}, {kWidth, top}, {theme::kGrid});
    draw_point(svg, x, set.points[i], top);
  }
  draw_legend(svg, bottom + 42);
  return html::figure(svg,
                      "Knots through the one map of this flap setting, calibrated, at 1 g and this mass. " +
                          made_by(input.summary) + ".");
}

}  // namespace

std::string set_point_charts(const DebriefInput& input) {
  const Extent ratios = ratios_of(input.judgement);
  std::string charts;
  for (const JudgedSet& set : input.judgement.sets) charts += chart(input, set, ratios);
  return charts;
}

}  // namespace stallwright::debrief
