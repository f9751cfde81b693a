#include "tests/published/stall_curves.hpp"

#include "sim/report/number_text.hpp"
#include "sim/report/plot_panel.hpp"
#include "tests/published/stall_manners.hpp"

namespace stallwright::published {
namespace {

constexpr double kWidth = 860, kTop = 138, kPlotWidth = 350, kPlotHeight = 140, kPitch_x = 425,
                 kPitch_y = 198;
constexpr std::array<Mark, kCurveForms.size()> kMarks = {Mark::circle, Mark::square, Mark::triangle};
/// Marks come each three degrees, those of one curve a degree after those of the one before.
constexpr std::size_t kMarkEvery = 6, kMarkAfter = 2;
constexpr double kMarkRadius = 3.6;

Stroke stroke_of(std::size_t form) { return {kCurveForms[form].colour, 2.0, kCurveForms[form].dash}; }

Box place(std::size_t plot) {
  return {60 + kPitch_x * static_cast<double>(plot % 2), kTop + kPitch_y * static_cast<double>(plot / 2),
          kPlotWidth, kPlotHeight};
}

void heading(Svg& svg) {
  svg.text({20, 26}, "Stall manners, from 8\u00b0 below the stall to 10\u00b0 beyond it",
           {17, Anchor::start, true});
  const std::array lines = {
      "Held in a steady stream at 30 m/s, no thrust, elevator half up; the flow has settled at each angle.",
      "Stall: most lift, elevator centred. Grip: moment by deflection, above 0 if it works the right way.",
      "Slopes by steps of 2\u00b0 slip, 0.5\u00b0 angle, 5\u00b0 control. Jumps: the outer wing lets go."};
  for (std::size_t i = 0; i < lines.size(); ++i) svg.text({20, 46 + 17 * static_cast<double>(i)}, lines[i]);
}

void legend(Svg& svg, const std::array<StallCurves, kCurveForms.size()>& aeroplanes) {
  for (std::size_t i = 0; i < aeroplanes.size(); ++i) {
    const double x = 20 + 275 * static_cast<double>(i), y = 103;
    svg.line({x, y}, {x + 48, y}, stroke_of(i));
    svg.mark(kMarks[i], {x + 24, y}, kMarkRadius, kCurveForms[i].colour);
    svg.text({x + 56, y + 4},
             aeroplanes[i].type + ", stall at " + fixed(aeroplanes[i].stall_deg, 2) + "\u00b0",
             {12, Anchor::start, true});
  }
}

/// What lies between the two lines is past the stall, as far as the list goes.
void angle_axis(Svg& svg, const PlotPanel& panel) {
  const double bottom = panel.area().y + panel.area().height;
  for (double past = kBelowStall_deg; past <= kPastStall_deg; past += 2.0) {
    const bool marked = past == 0.0 || past == kPastStall_deg;
    svg.line({panel.x(past), bottom}, {panel.x(past), bottom + 4}, {});
    svg.text({panel.x(past), bottom + 16}, past == 0.0 ? "stall" : page_signed(past, 0),
             {11, Anchor::middle, marked});
  }
  svg.text({panel.area().x + panel.area().width, bottom + 30}, "angle of attack past the stall, deg",
           {11, Anchor::end});
}

void plot(Svg& svg, std::size_t which, const std::array<StallCurves, kCurveForms.size()>& aeroplanes) {
  Extent extent;
  if (kStallPlots[which].from_zero) extent.add(0.0);
  for (const StallCurves& one : aeroplanes) extent.add(one.columns[which]);
  PlotPanel panel(svg, place(which), kBelowStall_deg - 0.5, kPastStall_deg + 0.5, extent.widened(0.07, 1e-3));
  panel.shade(0.0, kPastStall_deg);
  panel.axes(kStallPlots[which].name, false);
  angle_axis(svg, panel);
  panel.level(0.0, kBelowStall_deg - 0.5, kPastStall_deg + 0.5, {theme::kInk, 0.8});
  for (std::size_t i = 0; i < aeroplanes.size(); ++i)
    panel.curve(aeroplanes[i].past_deg, aeroplanes[i].columns[which], stroke_of(i));
  for (std::size_t i = 0; i < aeroplanes.size(); ++i)
    for (std::size_t k = i * kMarkAfter; k < aeroplanes[i].past_deg.size(); k += kMarkEvery)
      panel.mark(kMarks[i], aeroplanes[i].past_deg[k], aeroplanes[i].columns[which][k], kMarkRadius,
                 kCurveForms[i].colour);
  panel.frame();
}

}  // namespace

StallCurves stall_curves(const std::string& type) {
  const Aircraft a = in_tunnel(type);
  const double stall_rad = stall_angle(a);
  StallCurves curves{type, stall_rad / math::kDegree, {}, {}};
  for (double past = kBelowStall_deg; past <= kPastStall_deg; past += kCurveStep_deg) {
    const Held h = held(a, stall_rad + past * math::kDegree);
    const TunnelReading now = reading(a, h.state, h.alpha_rad);
    const Derivatives d = derivatives(h);
    curves.past_deg.push_back(past);
    const std::array<double, kStallPlots.size()> row = {
        now.lift,           now.drag,  d.pitch_by_alpha,  d.elevator,
        d.roll_by_sideslip, d.aileron, d.yaw_by_sideslip, d.rudder};
    for (std::size_t i = 0; i < row.size(); ++i) curves.columns[i].push_back(row[i]);
  }
  return curves;
}

std::string stall_picture(const std::array<StallCurves, kCurveForms.size()>& aeroplanes) {
  const double height = place(kStallPlots.size() - 1).y + kPlotHeight + 44;
  Svg svg(kWidth, height, "Stall manners of three aeroplanes against the angle of attack past the stall");
  svg.box({0, 0, kWidth, height}, theme::kPaper);
  heading(svg);
  legend(svg, aeroplanes);
  for (std::size_t i = 0; i < kStallPlots.size(); ++i) plot(svg, i, aeroplanes);
  return svg.str();
}

}  // namespace stallwright::published
