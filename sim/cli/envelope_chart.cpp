#include "sim/cli/envelope_chart.hpp"

#include <vector>

#include "sim/report/number_text.hpp"
#include "sim/report/scale.hpp"

namespace stallwright::cli {
namespace {

constexpr double kWidth = 430.0, kHeight = 250.0;
constexpr Box kArea{58.0, 20.0, 356.0, 186.0};

/// Up the forward limit, across, down the aft limit, and back.
std::vector<Spot> outline(const MassType& mass, const Scale& x, const Scale& y) {
  std::vector<Spot> spots;
  const std::size_t n = mass.envelope_mass_kg.size();
  for (std::size_t i = 0; i < n; ++i)
    spots.push_back({x(mass.envelope_forward_m[i]), y(mass.envelope_mass_kg[i])});
  for (std::size_t i = n; i-- > 0;) spots.push_back({x(mass.envelope_aft_m[i]), y(mass.envelope_mass_kg[i])});
  spots.push_back(spots.front());
  return spots;
}

void draw_axes(Svg& svg, const Scale& x, const Scale& y) {
  const Ticks across = nice_ticks(x.low, x.high, 7), up = nice_ticks(y.low, y.high, 6);
  for (const double value : across.values) {
    svg.line({x(value), kArea.y}, {x(value), kArea.y + kArea.height}, {theme::kGrid, 1.0});
    svg.text({x(value), kArea.y + kArea.height + 15.0}, fixed(value, across.decimals),
             {11.5, Anchor::middle});
  }
  for (const double value : up.values) {
    svg.line({kArea.x, y(value)}, {kArea.x + kArea.width, y(value)}, {theme::kGrid, 1.0});
    svg.text({kArea.x - 6.0, y(value) + 4.0}, fixed(value, up.decimals), {11.5, Anchor::end});
  }
  svg.frame(kArea, {theme::kInk, 1.0});
  svg.text({kArea.x + 0.5 * kArea.width, kHeight - 8.0}, "centre of gravity, m aft of the datum",
           {11.5, Anchor::middle});
  svg.text({4.0, 13.0}, "mass, kg", {11.5});
}

}  // namespace

Svg envelope_chart(const FlightPlan& plan) {
  const MassType& mass = plan.flight.type.mass;
  Extent across, up;
  across.add(mass.envelope_forward_m);
  across.add(mass.envelope_aft_m);
  across.add(plan.mass.cg.x_aft_m);
  up.add(mass.envelope_mass_kg);
  up.add(plan.mass.mass_kg);
  up.add(mass.empty_kg);
  across = across.widened(0.18, 0.02);
  up = up.widened(0.08, 20.0);
  const Scale x{across.low(), across.high(), kArea.x, kArea.x + kArea.width};
  const Scale y{up.low(), up.high(), kArea.y + kArea.height, kArea.y};

  Svg svg(kWidth, kHeight, "Envelope of mass and centre of gravity, with today's load in it");
  draw_axes(svg, x, y);
  svg.polyline(outline(mass, x, y), {theme::kInk, 2.2});
  const Spot load{x(plan.mass.cg.x_aft_m), y(plan.mass.mass_kg)};
  svg.line({load.x, load.y}, {load.x, kArea.y + kArea.height}, {theme::kInk, 1.0, theme::kOutsideDash});
  svg.line({kArea.x, load.y}, load, {theme::kInk, 1.0, theme::kOutsideDash});
  svg.mark(Mark::diamond, load, 6.0, theme::kMeasured);
  const bool low = load.y > kArea.y + 0.5 * kArea.height;
  svg.text({load.x, load.y + (low ? -13.0 : 22.0)},
           fixed(plan.mass.mass_kg, 0) + " kg at " + fixed(plan.mass.cg.x_aft_m, 3) + " m",
           {12.5, Anchor::middle, true, true});
  return svg;
}

}  // namespace stallwright::cli
