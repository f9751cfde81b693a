// The three readings of every point side by side, in knots from the truth.
#include <algorithm>
#include <cmath>

#include "sim/report/debrief_parts.hpp"
#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/scale.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright::debrief {
namespace {

constexpr double kWidth = 800, kLeft = 196, kRight = 662, kTop = 56, kRow = 21, kGap = 36;
constexpr double kCoverage =
    2.0;  ///< whiskers of readings that carry no interval of their own: two standard uncertainties

/// Half the whisker, kt: the adopted reading's own 95 % interval, else 2 u.
double half_width_kt(const JudgedPoint& point, const ReadingError& reading) {
  if (is_adopted(reading.name) && std::isfinite(point.expanded_kt)) return point.expanded_kt;
  return kCoverage * reading.u * knots_per_ratio(point);
}

Extent errors_of(const DebriefInput& input) {
  Extent extent;
  extent.add(0.0);
  for (const JudgedSet& set : input.judgement.sets)
    for (const JudgedPoint& point : set.points)
      for (const ReadingError& reading : point.readings) {
        const double half = half_width_kt(point, reading);
        extent.add(reading.error_kt);
        extent.add(reading.error_kt - half);
        extent.add(reading.error_kt + half);
      }
  extent.add(input.summary.wanted_uncertainty_kt);
  extent.add(-input.summary.wanted_uncertainty_kt);
  return extent.widened(0.05, 1.0);
}

Mark mark_of(std::size_t i) { return i == 0 ? Mark::square : i == 1 ? Mark::triangle : Mark::circle; }

void draw_frame(Svg& svg, const Scale& x, double bottom, double wanted_kt) {
  if (std::isfinite(wanted_kt)) {
    svg.box({x(wanted_kt), kTop, x(-wanted_kt) - x(wanted_kt), bottom - kTop}, theme::kWithin, 0.10);
    for (const double edge : {wanted_kt, -wanted_kt})
      svg.line({x(edge), kTop}, {x(edge), bottom}, {theme::kWithin, 1.6, theme::kWithinDash});
  }
  const Ticks ticks = nice_ticks(x.low, x.high, 11);
  for (const double error : ticks.values) {
    svg.line({x(error), kTop}, {x(error), bottom + 5}, {theme::kGrid});
    svg.text({x(error), bottom + 18}, page_signed(error, ticks.decimals), {12, Anchor::middle});
  }
  svg.line({kLeft, bottom}, {kRight, bottom}, {});
  svg.text({kLeft - 12, bottom + 18}, "error, kt (measured \u2212 true)", {12, Anchor::end});
  svg.line({x(0), kTop - 6}, {x(0), bottom}, {theme::kTruth, 2.0, theme::kTruthDash});
  svg.mark(Mark::diamond, {x(0), kTop - 10}, 5, theme::kTruth);
  svg.text({x(0) + 11, kTop - 6}, "truth", {12});
  svg.text({kLeft, 18}, "\u2190 set point too fast: warns early",
           {12, Anchor::start, false, false, theme::kSoftInk});
  svg.text({kRight, 18}, "too slow: warns late \u2192", {12, Anchor::end, false, false, theme::kSoftInk});
  svg.text({kRight + 14, kTop - 8}, "error \u00b1 whisker, kt", {12});
}

void draw_reading(Svg& svg, const Scale& x, const JudgedPoint& point, std::size_t i, double y) {
  const ReadingError& reading = point.readings[i];
  const bool adopted = is_adopted(reading.name);
  const double half = half_width_kt(point, reading);
  svg.text({kLeft - 12, y + 4}, reading_words(reading.name) + (adopted ? " (adopted)" : ""),
           {12, Anchor::end, adopted});
  svg.whisker(x(reading.error_kt + half), x(reading.error_kt - half), y, 5,
              {theme::kInk, adopted ? 1.8 : 1.1});
  svg.mark(adopted ? Mark::circle : mark_of(i), {x(reading.error_kt), y}, adopted ? 5.5 : 4.5,
           adopted ? theme::kMeasured : theme::kPaper);
  const bool known = std::isfinite(reading.error_kt);
  svg.text({kRight + 14, y + 4},
           known ? page_signed(reading.error_kt, 2) + " \u00b1 " + page_fixed(half, 2) : "no reading",
           {12, Anchor::start, adopted});
}

double height_of(const JudgedSet& set) {
  double height = 0.0;
  for (const JudgedPoint& point : set.points)
    height += kGap + kRow * static_cast<double>(std::max<std::size_t>(1, point.readings.size()));
  return height;
}

std::string chart(const DebriefInput& input, const JudgedSet& set, const Extent& errors) {
  const double bottom = kTop + height_of(set);
  // As on the chart of set points, faster is to the left.
  const Scale x{errors.low(), errors.high(), kRight, kLeft};
  Svg svg(kWidth, bottom + 30, "Readings against the truth, " + flap_words(set.flap_deg));
  svg.text({0, 18}, flap_words(set.flap_deg), {15, Anchor::start, true});
  draw_frame(svg, x, bottom, input.summary.wanted_uncertainty_kt);
  double y = kTop;
  for (const JudgedPoint& point : set.points) {
    if (y > kTop) svg.line({0, y}, {kWidth, y}, {theme::kGrid});
    svg.text({0, y + 18}, point.measured.name, {14, Anchor::start, true});
    y += kGap;
    if (point.readings.empty()) svg.text({kRight + 14, y + 4}, "no reading", {12});
    for (std::size_t i = 0; i < point.readings.size(); ++i)
      draw_reading(svg, x, point, i, y + kRow * static_cast<double>(i));
    y += kRow * static_cast<double>(std::max<std::size_t>(1, point.readings.size()));
  }
  std::string caption =
      "Whiskers: the 95 % interval of the adopted reading, two standard uncertainties of the others. ";
  if (std::isfinite(input.summary.wanted_uncertainty_kt))
    caption += "Between the dash-dot lines: within the \u00b1 " +
               page_fixed(input.summary.wanted_uncertainty_kt, 1) + " kt that the card wants. ";
  return html::figure(svg, caption + made_by(input.summary) + ".");
}

}  // namespace

std::string readings_charts(const DebriefInput& input) {
  const Extent errors = errors_of(input);
  std::string charts;
  for (const JudgedSet& set : input.judgement.sets) charts += chart(input, set, errors);
  return charts;
}

}  // namespace stallwright::debrief
