// What the error of every point is made of: a bar to each part, for the adopted reading and for a plain one.
#include <algorithm>
#include <array>
#include <cmath>

#include "sim/report/debrief_parts.hpp"
#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/scale.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright::debrief {
namespace {

constexpr double kWidth = 800, kLeft = 196, kRight = 620, kTop = 56, kRow = 22, kGap = 34, kBar = 7;
constexpr double kAdoptedColumn = 706, kPlainColumn = 790;
constexpr double kShareToExplain = 0.2;  ///< of the error or its largest part

struct Part {
  const char* words;
  double ErrorSplit::*kt;
};

/// Parts that a point can have, in the order of the chain.
std::vector<Part> parts_of(const SetPoint& point) {
  if (point.is_stall)
    return {{"sensors", &ErrorSplit::sensor_kt},
            {"air", &ErrorSplit::air_kt},
            {"entry rate", &ErrorSplit::entry_kt},
            {"remainder", &ErrorSplit::remainder_kt}};
  return {{"sensors", &ErrorSplit::sensor_kt},
          {"air", &ErrorSplit::air_kt},
          {"hold", &ErrorSplit::hold_kt},
          {"remainder", &ErrorSplit::remainder_kt}};
}

/// The reading that somebody without the estimator would write down.
const ReadingError* plain_reading(const JudgedPoint& point) {
  for (const ReadingError& r : point.readings)
    if (r.name == (point.measured.is_stall ? "break" : "window_mean") && r.split.known()) return &r;
  return nullptr;
}

bool anything_known(const JudgedSet& set) {
  return std::any_of(set.points.begin(), set.points.end(),
                     [](const JudgedPoint& p) { return p.split.known(); });
}

Extent extent_of(const DebriefInput& input) {
  Extent extent;
  extent.add(0.0);
  const auto add = [&](const ErrorSplit& s) {
    for (const double kt : {s.sensor_kt, s.air_kt, s.hold_kt, s.entry_kt, s.remainder_kt, s.sum_kt()})
      extent.add(kt);
  };
  for (const JudgedSet& set : input.judgement.sets)
    for (const JudgedPoint& point : set.points) {
      if (point.split.known()) add(point.split);
      if (const ReadingError* plain = plain_reading(point)) add(plain->split);
    }
  return extent.widened(0.05, 1.0);
}

void draw_bar(Svg& svg, const Scale& x, double kt, double y, bool adopted) {
  if (!std::isfinite(kt)) return;
  const double from = std::min(x(0.0), x(kt)), width = std::abs(x(kt) - x(0.0));
  if (adopted) svg.box({from, y, width, kBar}, theme::kMeasured);
  svg.frame({from, y, width, kBar}, {theme::kInk, adopted ? 1.2 : 0.9});
}

void draw_row(Svg& svg, const Scale& x, const std::string& words, double adopted, double plain, double y,
              bool total) {
  svg.text({kLeft - 12, y + 12}, words, {12, Anchor::end, total});
  draw_bar(svg, x, adopted, y, true);
  draw_bar(svg, x, plain, y + kBar + 1.5, false);
  svg.text({kAdoptedColumn, y + 12}, page_signed(adopted, 2), {12, Anchor::end, total});
  svg.text({kPlainColumn, y + 12}, page_signed(plain, 2), {12, Anchor::end, false});
}

void draw_frame(Svg& svg, const Scale& x, double bottom) {
  const Ticks ticks = nice_ticks(x.low, x.high, 9);
  for (const double kt : ticks.values) {
    svg.line({x(kt), kTop}, {x(kt), bottom + 5}, {theme::kGrid});
    svg.text({x(kt), bottom + 18}, page_signed(kt, ticks.decimals), {12, Anchor::middle});
  }
  svg.line({kLeft, bottom}, {kRight, bottom}, {});
  svg.line({x(0), kTop}, {x(0), bottom}, {theme::kInk, 1.4});
  svg.text({kLeft - 12, bottom + 18}, "part of the error, kt", {12, Anchor::end});
  svg.text({kLeft, 18}, "\u2190 set point too fast: warns early",
           {12, Anchor::start, false, false, theme::kSoftInk});
  svg.text({kRight, 18}, "too slow: warns late \u2192", {12, Anchor::end, false, false, theme::kSoftInk});
  svg.box({kAdoptedColumn - 64, kTop - 32, 14, kBar}, theme::kMeasured);
  svg.frame({kAdoptedColumn - 64, kTop - 32, 14, kBar}, {theme::kInk, 1.2});
  svg.text({kAdoptedColumn, kTop - 12}, "adopted, kt", {12, Anchor::end, true});
  svg.frame({kPlainColumn - 52, kTop - 32, 14, kBar}, {theme::kInk, 0.9});
  svg.text({kPlainColumn, kTop - 12}, "plain, kt", {12, Anchor::end});
}

double height_of(const JudgedSet& set) {
  double height = 0.0;
  for (const JudgedPoint& point : set.points)
    height += kGap +
              kRow * (point.split.known() ? static_cast<double>(parts_of(point.measured).size()) + 1.0 : 1.0);
  return height;
}

std::string chart(const DebriefInput& input, const JudgedSet& set, const Extent& extent) {
  const double bottom = kTop + height_of(set);
  const Scale x{extent.low(), extent.high(), kRight, kLeft};  // faster to the left, as on every chart here
  Svg svg(kWidth, bottom + 30, "What the errors are made of, " + flap_words(set.flap_deg));
  svg.text({0, 18}, flap_words(set.flap_deg), {15, Anchor::start, true});
  draw_frame(svg, x, bottom);
  double y = kTop;
  for (const JudgedPoint& point : set.points) {
    if (y > kTop) svg.line({0, y}, {kWidth, y}, {theme::kGrid});
    svg.text({0, y + 18}, point.measured.name, {14, Anchor::start, true});
    y += kGap - 12;
    if (!point.split.known()) {
      svg.text({kLeft, y + 12}, "not known", {12});
      y += kRow + 12;
      continue;
    }
    const ReadingError* plain = plain_reading(point);
    for (const Part& part : parts_of(point.measured)) {
      draw_row(svg, x, part.words, point.split.*part.kt, plain ? plain->split.*part.kt : kNone, y, false);
      y += kRow;
    }
    draw_row(svg, x, "error, their sum", point.split.sum_kt(), plain ? plain->split.sum_kt() : kNone, y,
             true);
    y += kRow + 12;
  }
  return html::figure(svg,
                      "Filled bars: the adopted reading. Open bars: what a plain reading of the same record "
                      "would have given (mean of the window; ratio at the break). " +
                          made_by(input.summary) + ".");
}

bool remainder_needs_words(const JudgedPoint& point) {
  const ErrorSplit& s = point.split;
  const double most = std::max({std::abs(s.sensor_kt), std::abs(s.air_kt), std::abs(s.hold_kt),
                                std::abs(s.entry_kt), std::abs(s.sum_kt())});
  return s.known() && std::abs(s.remainder_kt) > kShareToExplain * most;
}

std::string legend() {
  return "Sensors: against ideal instruments on the same flight, the mass entered among them. Air: what "
         "bumps did to "
         "the reading, against the same handling in air without gusts. Hold: the speed and power that were "
         "held, "
         "against the point's own; the pilot's answer to the air (a chased speed, power for a downdraught) "
         "counts "
         "here. Entry rate: lift lagging behind the angle, beyond what the estimator takes out.";
}

}  // namespace

std::string split_charts(const DebriefInput& input) {
  std::string charts, unexplained;
  const Extent extent = extent_of(input);
  for (const JudgedSet& set : input.judgement.sets) {
    if (!anything_known(set)) continue;
    charts += chart(input, set, extent);
    for (const JudgedPoint& point : set.points)
      if (remainder_needs_words(point))
        unexplained += (unexplained.empty() ? "" : ", ") + point.measured.name +
                       (set.flap_deg == 0.0 ? "" : " (" + flap_words(set.flap_deg) + ")");
  }
  if (charts.empty()) return "";
  std::string text = legend();
  if (!unexplained.empty())
    text +=
        " The remainder is more than a fifth of the largest part at: " + unexplained +
        ". At steady points it is flow that no steady flight has, from pitching and throttle in motion; at "
        "stalls it is the estimator's own fault on the record it had, most of all where the nose went down "
        "before lift had passed its largest.";
  return charts + html::text_element("p", text, "class=\"note\"");
}

}  // namespace stallwright::debrief
