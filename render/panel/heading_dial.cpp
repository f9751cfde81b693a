#include <cmath>
#include <cstdio>

#include "render/panel/dials.hpp"

namespace stallwright::panel {
namespace {

/// Figures stay upright while the card turns: a pilot reads them faster than the trade's slanting ones.
void card(const Dial& dial, double heading_deg) {
  for (int deg = 0; deg < 360; deg += 5)
    tick(dial, deg - heading_deg, 0.96f, deg % 10 == 0 ? 0.84f : 0.90f, deg % 30 == 0 ? 2.2f : 1.2f);
  constexpr const char* kPoints[] = {"N", "E", "S", "W"};
  for (int deg = 0; deg < 360; deg += 30)
    if (deg % 90 == 0)
      text(dial, dial.fonts.bold, dial.at(deg - heading_deg, 0.68f), kPoints[deg / 90]);
    else
      figure(dial, deg - heading_deg, 0.68f, deg / 10);
}

}  // namespace

void heading_dial(const Dial& dial, const view::PanelView& view) {
  face(dial);
  card(dial, view.heading_deg);
  // The fixed line, and in the log the place of north, which is what turns.
  const ImVec2 top = dial.at(0.0, 0.86f);
  dial.list.AddTriangleFilled(top, {top.x - dial.px(6.0f), top.y - 0.14f * dial.radius},
                              {top.x + dial.px(6.0f), top.y - 0.14f * dial.radius},
                              ui::colour(ui::kTheme.ivory));
  if (dial.log != nullptr)
    dial.log->add({"heading", view.heading_deg, dial.centre, dial.at(-view.heading_deg, 0.68f), 0.0f});
  char words[12];
  const int whole = static_cast<int>(std::lround(view.heading_deg)) % 360;
  std::snprintf(words, sizeof words, "%03d\u00b0", whole == 0 ? 360 : whole);
  counter(dial, dial.fonts.bold, dial.centre, words, "000\u00b0");
}

}  // namespace stallwright::panel
