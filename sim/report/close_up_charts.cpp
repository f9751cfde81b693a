// Each record on its own: speed against its band, probe ratio against the set point, angle of attack.
#include <algorithm>
#include <cmath>

#include "sim/report/debrief_parts.hpp"
#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/plot_panel.hpp"

namespace stallwright::debrief {
namespace {

constexpr double kWidth = 400, kLeft = 46, kPlotWidth = 348, kGap = 30;
constexpr double kBefore_s = 12.0, kAfter_s = 8.0;

struct CloseUp {
  const DebriefInput& input;
  const TimeHistory::Window& window;
  const TimeHistory& history = input.history;
  double begin_s = std::max(history.t_s.front(), window.begin_s - kBefore_s);
  double end_s = std::min(history.t_s.back(), window.end_s + kAfter_s);
};

/// The band that was to be held during the window, if any.
const TimeHistory::Band* band_of(const CloseUp& c) {
  const double middle = 0.5 * (c.window.begin_s + c.window.end_s);
  for (const auto& band : c.history.bands)
    if (band.begin_s <= middle && middle <= band.end_s) return &band;
  return nullptr;
}

/// The judged point that used this window, known by its time.
const JudgedPoint* judged_of(const CloseUp& c) {
  constexpr double kSame_s = 0.05;
  for (const JudgedSet& set : c.input.judgement.sets)
    for (const JudgedPoint& point : set.points)
      for (const RecordWindow& window : point.measured.windows)
        if (std::abs(window.begin_s - c.window.begin_s) < kSame_s) return &point;
  return nullptr;
}

/// The speed inside the window, parted into what met the band and what did not; gaps elsewhere.
void draw_in_and_out(PlotPanel& panel, const CloseUp& c, const TimeHistory::Band& band) {
  std::vector<double> within(c.history.t_s.size(), kNone), outside = within;
  for (std::size_t i = 0; i < std::min(within.size(), c.history.ias_kt.size()); ++i) {
    if (c.history.t_s[i] < c.window.begin_s || c.history.t_s[i] > c.window.end_s) continue;
    const double speed = c.history.ias_kt[i];
    const bool met = !(speed < band.low_kt) && !(speed > band.high_kt);
    (met ? within : outside)[i] = speed;
  }
  panel.curve(c.history.t_s, within, {theme::kWithin, 2.6});
  panel.curve(c.history.t_s, outside, {theme::kOutside, 3.2, theme::kOutsideDash});
}

void mark_breaks(Svg& svg, PlotPanel& panel, const CloseUp& c, const std::vector<double>& values) {
  for (const auto& event : c.history.breaks) {
    if (event.t_s < c.begin_s || event.t_s > c.end_s) continue;
    const double x = panel.x(event.t_s);
    svg.line({x, panel.area().y}, {x, panel.area().y + panel.area().height}, {theme::kInk, 0.8, "2 2"});
    panel.mark(Mark::inverted_triangle, event.t_s, value_at(c.history.t_s, values, event.t_s), 4.5,
               theme::kPaper);
  }
}

void draw_speed(Svg& svg, const CloseUp& c, const Box& area) {
  Extent extent = extent_between(c.history.t_s, c.history.ias_kt, c.begin_s, c.end_s);
  const TimeHistory::Band* band = band_of(c);
  if (band) {
    extent.add(band->low_kt);
    extent.add(band->high_kt);
  }
  PlotPanel panel(svg, area, c.begin_s, c.end_s, extent.widened(0.08, 4));
  panel.shade(c.window.begin_s, c.window.end_s);
  panel.axes("Indicated airspeed, kt", false);
  if (band) panel.band(band->low_kt, band->high_kt, c.begin_s, c.end_s);
  panel.curve(c.history.t_s, c.history.true_speed_kt, {theme::kTruth, 1.2, theme::kTruthDash});
  panel.curve(c.history.t_s, c.history.ias_kt, {theme::kMeasured, 1.6});
  if (band && !c.window.is_stall) draw_in_and_out(panel, c, *band);
  mark_breaks(svg, panel, c, c.history.ias_kt);
  panel.frame();
}

void draw_ratio(Svg& svg, const CloseUp& c, const Box& area, bool time_axis) {
  Extent extent = extent_between(c.history.t_s, c.history.ratio, c.begin_s, c.end_s);
  const JudgedPoint* judged = judged_of(c);
  if (judged) {
    extent.add(judged->measured.ratio);
    extent.add(judged->true_ratio);
  }
  PlotPanel panel(svg, area, c.begin_s, c.end_s, extent.widened(0.08, 0.02));
  panel.shade(c.window.begin_s, c.window.end_s);
  panel.axes("Probe ratio (no unit)", time_axis);
  panel.curve(c.history.t_s, c.history.ratio, {theme::kMeasured, 1.4});
  if (judged) {
    panel.level(judged->true_ratio, c.begin_s, c.end_s, {theme::kTruth, 1.8, theme::kTruthDash});
    panel.level(judged->measured.ratio, c.window.begin_s, c.window.end_s, {theme::kInk, 1.8});
  }
  mark_breaks(svg, panel, c, c.history.ratio);
  panel.frame();
}

void draw_alpha(Svg& svg, const CloseUp& c, const Box& area) {
  const Extent extent = extent_between(c.history.t_s, c.history.alpha_deg, c.begin_s, c.end_s);
  PlotPanel panel(svg, area, c.begin_s, c.end_s, extent.widened(0.08, 1));
  panel.shade(c.window.begin_s, c.window.end_s);
  panel.axes("Angle of attack, \u00b0 (truth)", true);
  panel.curve(c.history.t_s, c.history.alpha_deg, {theme::kTruth, 1.4, theme::kTruthDash});
  mark_breaks(svg, panel, c, c.history.alpha_deg);
  panel.frame();
}

std::string close_up(const CloseUp& c, std::size_t number) {
  const bool with_truth = !c.history.alpha_deg.empty();
  const double bottom = 48 + 110 + kGap + 90 + (with_truth ? kGap + 90 : 0.0);
  const std::string name = std::to_string(number) + " " + c.window.name;
  Svg svg(kWidth, bottom + 24, "Record " + name);
  svg.text({0, 15}, name, {14, Anchor::start, true});
  const std::string state = c.window.forced      ? "recorded off condition"
                            : c.window.left_band ? "left a band"
                            : c.window.is_stall  ? ""
                                                 : "within its bands";
  svg.text({kLeft + kPlotWidth, 15}, state, {12, Anchor::end});
  double y = 48;
  const auto area = [&](double height) {
    const Box box{kLeft, y, kPlotWidth, height};
    y += height + kGap;
    return box;
  };
  draw_speed(svg, c, area(110));
  draw_ratio(svg, c, area(90), !with_truth);
  if (with_truth) draw_alpha(svg, c, area(90));
  return html::element("div", html::figure(svg, made_by(c.input.summary) + "."));
}

}  // namespace

std::string record_close_ups(const DebriefInput& input) {
  if (input.history.t_s.size() < 2 || input.history.windows.empty()) return "";
  std::string pictures;
  for (std::size_t i = 0; i < input.history.windows.size(); ++i)
    pictures += close_up(CloseUp{input, input.history.windows[i]}, i + 1);
  return html::text_element("p",
                            "Shaded: the record. Speed: a heavy whole line within the band, heavy dots "
                            "outside it; long dashes are the "
                            "true calibrated airspeed. Ratio: the heavy line is the adopted set point, long "
                            "dashes its truth. A triangle "
                            "stands at the break.",
                            "class=\"note\"") +
         html::element("div", pictures, "class=\"pair\"");
}

}  // namespace stallwright::debrief
