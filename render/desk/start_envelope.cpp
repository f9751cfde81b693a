// Mass against centre of gravity, with the load in it.
#include <algorithm>

#include "render/desk/axis.hpp"
#include "render/desk/start_parts.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;

/// The plot area and its axes.
struct Place {
  ImVec2 from, to;
  double left_m, right_m, low_kg, high_kg;
  ImVec2 at(double cg_m, double kg) const {
    return {from.x + static_cast<float>((cg_m - left_m) / (right_m - left_m)) * (to.x - from.x),
            to.y - static_cast<float>((kg - low_kg) / (high_kg - low_kg)) * (to.y - from.y)};
  }
};

Place place_of(const MassType& mass, const view::StartCheck& check, ImVec2 from, ImVec2 to) {
  const auto [forward, x0] =
      std::minmax_element(mass.envelope_forward_m.begin(), mass.envelope_forward_m.end());
  const auto [x1, aft] = std::minmax_element(mass.envelope_aft_m.begin(), mass.envelope_aft_m.end());
  const double left = std::min(*forward, check.cg_aft_m), right = std::max(*aft, check.cg_aft_m);
  const double low = std::min(mass.envelope_mass_kg.front(), check.mass_kg);
  const double high = std::max(mass.envelope_mass_kg.back(), check.mass_kg);
  const double about = 0.12 * (right - left), above = 0.14 * (high - low);
  return {from, to, left - about, right + about, low - above, high + above};
}

void draw_axes(const Place& place, Pen& pen) {
  const AxisTicks across = axis_ticks(place.left_m, place.right_m, 5);
  char text[32];
  for (int k = 0; k < across.count; ++k) {
    const ImVec2 at = place.at(across.at(k), place.low_kg);
    pen.line({at.x, place.from.y}, at, kTheme.edge);
    axis_text(text, sizeof text, across.at(k), across.decimals);
    pen.text(pen.fonts().small, {at.x, at.y + pen.px(2)}, kTheme.soft, text, Align::middle);
  }
  const AxisTicks up = axis_ticks(place.low_kg, place.high_kg, 3);
  for (int k = 0; k < up.count; ++k) {
    const ImVec2 at = place.at(place.left_m, up.at(k));
    pen.line(at, {place.to.x, at.y}, kTheme.edge);
    axis_text(text, sizeof text, up.at(k), 0);
    pen.text(pen.fonts().small, {at.x - pen.px(8), at.y - pen.px(9)}, kTheme.soft, text, Align::right);
  }
}

}  // namespace

void draw_envelope(const AircraftType& type, const view::StartCheck& check, Pen& pen, ImVec2 from,
                   ImVec2 to) {
  const MassType& mass = type.mass;
  const Place place =
      place_of(mass, check, {from.x + pen.px(64), from.y + pen.px(4)}, {to.x, to.y - pen.px(38)});
  pen.box(place.from, place.to, kTheme.dial);
  draw_axes(place, pen);
  ImDrawList& list = pen.list();
  list.PathClear();
  for (std::size_t k = 0; k < mass.envelope_mass_kg.size(); ++k)
    list.PathLineTo(place.at(mass.envelope_forward_m[k], mass.envelope_mass_kg[k]));
  for (std::size_t k = mass.envelope_mass_kg.size(); k-- > 0;)
    list.PathLineTo(place.at(mass.envelope_aft_m[k], mass.envelope_mass_kg[k]));
  list.PathStroke(ui::colour(kTheme.ivory), ImDrawFlags_Closed, pen.px(1.6f));
  const ImVec2 load = place.at(check.cg_aft_m, check.mass_kg);
  if (check.inside)
    pen.round_mark(load, 5, kTheme.measured);
  else
    pen.cross(load, 6, kTheme.danger);
  pen.text(pen.fonts().small, {from.x, to.y - pen.px(18)}, kTheme.soft, "mass, kg");
  pen.text(pen.fonts().small, {0.5f * (place.from.x + place.to.x), to.y - pen.px(18)}, kTheme.soft,
           "centre of gravity, m aft of the datum", Align::middle);
}

}  // namespace stallwright::desk
