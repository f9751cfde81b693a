#include <cstdlib>

#include "render/panel/dials.hpp"

namespace stallwright::panel {

void vertical_speed_dial(const Dial& dial, const view::PanelView& view) {
  const DialScale scale = vertical_speed_scale();
  face(dial);
  for (int fpm = -2000; fpm <= 2000; fpm += 100)
    tick(dial, angle_deg(scale, fpm), 0.96f, fpm % 500 == 0 ? 0.83f : 0.90f, fpm % 500 == 0 ? 2.0f : 1.2f);
  for (int fpm = -2000; fpm <= 2000; fpm += 500)
    figure(dial, angle_deg(scale, fpm), 0.68f, std::abs(fpm) / 100);
  text(dial, dial.fonts.small, dial.offset(-0.04f, -0.34f), "up", ui::kTheme.soft);
  text(dial, dial.fonts.small, dial.offset(-0.04f, 0.24f), "down", ui::kTheme.soft);
  text(dial, dial.fonts.small, dial.offset(-0.04f, 0.42f), "100 ft/min", ui::kTheme.soft);
  needle(dial, "vertical speed", view.vertical_speed_fpm, angle_deg(scale, view.vertical_speed_fpm), 0.86f);
}

}  // namespace stallwright::panel
