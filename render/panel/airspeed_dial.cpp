#include <cmath>
#include <cstdio>

#include "render/panel/dials.hpp"

namespace stallwright::panel {
namespace {

void arcs(const Dial& dial, const DialScale& scale, const view::SpeedArcs& a) {
  const auto stroke = [&](double from_kt, double to_kt, float share, const ui::Colour& colour) {
    arc(dial, angle_deg(scale, from_kt), angle_deg(scale, to_kt), share, 0.06f, colour);
  };
  stroke(a.green_from_kt, a.green_to_kt, 0.95f, ui::kTheme.arc_green);
  stroke(a.yellow_from_kt, a.yellow_to_kt, 0.95f, ui::kTheme.arc_yellow);
  // The white arc lies inside the green one, where both can be seen over their common part.
  stroke(a.white_from_kt, a.white_to_kt, 0.885f, ui::kTheme.arc_white);
}

void ticks(const Dial& dial, const DialScale& scale) {
  for (int kt = 20; kt <= static_cast<int>(scale.high()); kt += 5)
    tick(dial, angle_deg(scale, kt), 0.85f, kt % 10 == 0 ? 0.75f : 0.80f, kt % 10 == 0 ? 2.0f : 1.2f);
  for (int kt = 20; kt <= static_cast<int>(scale.high()); kt += 20)
    figure(dial, angle_deg(scale, kt), 0.585f, kt);
}

}  // namespace

void airspeed_dial(const Dial& dial, const view::PanelView& view) {
  const DialScale scale = airspeed_scale(view.arcs);
  face(dial);
  arcs(dial, scale, view.arcs);
  ticks(dial, scale);
  tick(dial, angle_deg(scale, view.arcs.red_kt), 0.74f, 0.98f, 3.5f, ui::kTheme.line_red);
  text(dial, dial.fonts.small, dial.offset(0.0f, -0.27f), "kt", ui::kTheme.soft);
  needle(dial, "airspeed", view.airspeed_kt, angle_deg(scale, view.airspeed_kt), 0.83f);
  char words[12];
  std::snprintf(words, sizeof words, "%.0f", std::max(view.airspeed_kt, 0.0));
  counter(dial, dial.fonts.bold, dial.offset(0.0f, 0.28f), words, "000");
}

}  // namespace stallwright::panel
