#include <cmath>
#include <cstdio>

#include "render/panel/dials.hpp"

namespace stallwright::panel {

void altimeter(const Dial& dial, const view::PanelView& view) {
  face(dial);
  for (int k = 0; k < 50; ++k)  // every 20 ft
    tick(dial, 7.2 * k, 0.96f, k % 5 == 0 ? 0.83f : 0.90f, k % 5 == 0 ? 2.0f : 1.2f);
  for (int k = 0; k < 10; ++k) figure(dial, 36.0 * k, 0.69f, k);
  char words[24];
  std::snprintf(words, sizeof words, "QNH %.0f", view.altimeter_setting_hpa);
  text(dial, dial.fonts.small, dial.offset(0.0f, 0.42f), words, ui::kTheme.soft);
  text(dial, dial.fonts.small, dial.offset(0.0f, -0.49f), "ft", ui::kTheme.soft);
  needle(dial, "altitude", view.altitude_ft, altimeter_angle_deg(view.altitude_ft), 0.88f);
  // To ten feet: a counter that spins is no counter.
  std::snprintf(words, sizeof words, "%.0f", 10.0 * std::round(view.altitude_ft / 10.0));
  counter(dial, dial.fonts.bold, dial.offset(0.0f, -0.26f), words, "00000");
}

}  // namespace stallwright::panel
