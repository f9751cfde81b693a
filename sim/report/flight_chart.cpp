// The whole flight: speed, altitude, probe ratio and angle of attack over time, with what was wanted and
// recorded.
#include <algorithm>
#include <cmath>

#include "sim/report/debrief_parts.hpp"
#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/plot_panel.hpp"

namespace stallwright::debrief {
namespace {

constexpr double kWidth = 800, kLeft = 52, kPlotWidth = 738, kLane = 15, kGap = 34;
constexpr int kLanes = 4;

struct PlacedName {
  std::string text;
  double centre = 0.0;
  std::size_t lane = 0;
  bool bold = false;
};

/// Names of the record windows above the plots, each at its window, in as many lanes as it takes; one that
/// fits nowhere keeps its number alone. The list below the plots has them all.
std::vector<PlacedName> placed_names(const TimeHistory& history, const Scale& x) {
  std::vector<PlacedName> placed;
  std::vector<double> free_from(kLanes, 0.0);
  for (std::size_t i = 0; i < history.windows.size(); ++i) {
    const auto& window = history.windows[i];
    const std::string number = std::to_string(i + 1);
    for (const std::string& label : {number + " " + window.name, number}) {
      const double half = std::min(0.5 * text_width(label, 11), 0.5 * kPlotWidth);
      const double centre =
          std::clamp(x(0.5 * (window.begin_s + window.end_s)), kLeft + half, kLeft + kPlotWidth - half);
      const auto lane = std::find_if(free_from.begin(), free_from.end(),
                                     [&](double free) { return free <= centre - half; });
      if (lane == free_from.end()) continue;
      placed.push_back({label, centre, static_cast<std::size_t>(lane - free_from.begin()), window.is_stall});
      *lane = centre + half + 8;
      break;
    }
  }
  return placed;
}

void draw_names(Svg& svg, const std::vector<PlacedName>& names) {
  for (const PlacedName& name : names)
    svg.text({name.centre, 12 + kLane * static_cast<double>(name.lane)}, name.text,
             {11, Anchor::middle, name.bold});
}

std::size_t lanes_of(const std::vector<PlacedName>& names) {
  std::size_t lanes = 0;
  for (const PlacedName& name : names) lanes = std::max(lanes, name.lane + 1);
  return lanes;
}

void shade_windows(PlotPanel& panel, const TimeHistory& history) {
  for (const auto& window : history.windows) panel.shade(window.begin_s, window.end_s);
}

void mark_breaks(Svg& svg, PlotPanel& panel, const TimeHistory& history, const std::vector<double>& values) {
  for (const auto& event : history.breaks) {
    const Box& area = panel.area();
    svg.line({panel.x(event.t_s), area.y}, {panel.x(event.t_s), area.y + area.height},
             {theme::kInk, 0.8, "2 2"});
    panel.mark(Mark::inverted_triangle, event.t_s, value_at(history.t_s, values, event.t_s), 5,
               theme::kPaper);
  }
}

void mark_dangers(PlotPanel& panel, const TimeHistory& history, const std::vector<double>& values,
                  const SortieSummary& summary) {
  for (const SortieEvent& event : summary.events)
    if (event.danger)
      panel.mark(Mark::cross, event.t_s, value_at(history.t_s, values, event.t_s), 5, theme::kDanger);
}

struct Flight {
  const DebriefInput& input;
  const TimeHistory& history = input.history;
  double begin_s = history.t_s.front();
  double end_s = history.t_s.back();
};

void draw_speed(Svg& svg, const Flight& f, const Box& area) {
  Extent extent;
  extent.add(f.history.ias_kt);
  for (const auto& band : f.history.bands) {
    extent.add(band.low_kt);
    extent.add(band.high_kt);
  }
  PlotPanel panel(svg, area, f.begin_s, f.end_s, extent.widened(0.05, 5));
  shade_windows(panel, f.history);
  panel.axes("Indicated airspeed, kt", false);
  for (const auto& band : f.history.bands) panel.band(band.low_kt, band.high_kt, band.begin_s, band.end_s);
  panel.curve(f.history.t_s, f.history.ias_kt, {theme::kMeasured, 1.5});
  mark_breaks(svg, panel, f.history, f.history.ias_kt);
  mark_dangers(panel, f.history, f.history.ias_kt, f.input.summary);
  panel.frame();
}

void draw_altitude(Svg& svg, const Flight& f, const Box& area) {
  const SortieSummary& summary = f.input.summary;
  Extent extent;
  extent.add(f.history.altitude_ft);
  extent.add(summary.floor_altitude_ft);
  extent.add(summary.working_altitude_ft);
  PlotPanel panel(svg, area, f.begin_s, f.end_s, extent.widened(0.1, 200));
  shade_windows(panel, f.history);
  panel.axes("Indicated altitude, ft (long dashes: working altitude; heavy line: floor)", false);
  for (const auto& band : f.history.bands) panel.band(band.low_ft, band.high_ft, band.begin_s, band.end_s);
  panel.level(summary.working_altitude_ft, f.begin_s, f.end_s, {theme::kSoftInk, 1.0, "10 4"});
  panel.level(summary.floor_altitude_ft, f.begin_s, f.end_s, {theme::kDanger, 2.6});
  panel.curve(f.history.t_s, f.history.altitude_ft, {theme::kMeasured, 1.5});
  svg.text({area.x + area.width - 5, panel.y(summary.floor_altitude_ft) - 5}, "FLOOR",
           {11, Anchor::end, true, true});
  mark_breaks(svg, panel, f.history, f.history.altitude_ft);
  mark_dangers(panel, f.history, f.history.altitude_ft, summary);
  panel.frame();
}

void draw_plain(Svg& svg, const Flight& f, const Box& area, const std::vector<double>& values,
                const char* name, const Stroke& stroke, bool time_axis) {
  Extent extent;
  extent.add(values);
  PlotPanel panel(svg, area, f.begin_s, f.end_s, extent.widened(0.05, 0.05));
  shade_windows(panel, f.history);
  panel.axes(name, time_axis);
  panel.curve(f.history.t_s, values, stroke);
  mark_breaks(svg, panel, f.history, values);
  panel.frame();
}

void draw_legend(Svg& svg, double y) {
  const TextLook look{11};
  double x = kLeft;
  const auto next = [&](const char* label, double mark_width) {
    svg.text({x + mark_width + 6, y + 4}, label, look);
    x += mark_width + 6 + text_width(label, 11) + 20;
  };
  svg.line({x, y}, {x + 24, y}, {theme::kMeasured, 1.8});
  next("recorded", 24);
  svg.line({x, y}, {x + 24, y}, {theme::kTruth, 1.5, theme::kTruthDash});
  next("truth", 24);
  svg.line({x, y}, {x + 24, y}, {theme::kWithin, 1.5, theme::kWithinDash});
  next("band of the card", 24);
  svg.box({x, y - 6, 20, 12}, theme::kShade);
  svg.frame({x, y - 6, 20, 12}, {theme::kSoftInk, 0.7});
  next("record", 20);
  svg.mark(Mark::inverted_triangle, {x + 6, y}, 5, theme::kPaper);
  next("break", 12);
  svg.mark(Mark::cross, {x + 6, y}, 5, theme::kDanger);
  next("danger, see events", 12);
}

std::string window_list(const TimeHistory& history) {
  std::string text = "Records: ";
  for (std::size_t i = 0; i < history.windows.size(); ++i) {
    const auto& window = history.windows[i];
    text += (i > 0 ? "; " : "") + std::to_string(i + 1) + " " + window.name + ", " +
            page_fixed(window.begin_s, 0) + " to " + page_fixed(window.end_s, 0) + " s";
    if (window.forced)
      text += " (off condition)";
    else if (window.left_band)
      text += " (left a band)";
  }
  return history.windows.empty() ? "No records were made." : text + ".";
}

}  // namespace

std::string whole_flight(const DebriefInput& input) {
  const TimeHistory& history = input.history;
  if (history.t_s.size() < 2) return "";
  const Flight flight{input};
  const bool with_truth = !history.alpha_deg.empty();
  const auto names = placed_names(history, {flight.begin_s, flight.end_s, kLeft, kLeft + kPlotWidth});
  const double top = kLane * static_cast<double>(lanes_of(names)) + 24;
  const double bottom = top + 150 + kGap + 120 + kGap + 120 + (with_truth ? kGap + 120 : 0.0);
  Svg svg(kWidth, bottom + 46, "Speed, altitude, probe ratio and angle of attack over the whole flight");
  double y = top;
  const auto area = [&](double height) {
    const Box box{kLeft, y, kPlotWidth, height};
    y += height + kGap;
    return box;
  };
  draw_names(svg, names);
  draw_speed(svg, flight, area(150));
  draw_altitude(svg, flight, area(120));
  draw_plain(svg, flight, area(120), history.ratio, "Probe ratio (no unit)", {theme::kMeasured, 1.2},
             !with_truth);
  if (with_truth)
    draw_plain(svg, flight, area(120), history.alpha_deg, "Angle of attack, \u00b0 (truth)",
               {theme::kTruth, 1.3, theme::kTruthDash}, true);
  draw_legend(svg, bottom + 34);
  return html::figure(svg, window_list(history) + " " + made_by(input.summary) + ".");
}

}  // namespace stallwright::debrief
