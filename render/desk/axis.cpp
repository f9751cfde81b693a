#include "render/desk/axis.hpp"

#include <cmath>
#include <cstdio>

namespace stallwright::desk {

AxisTicks axis_ticks(double low, double high, int most) {
  AxisTicks ticks;
  const double width = high - low;
  if (!(width > 0.0) || !std::isfinite(width) || most < 1) return ticks;
  int exponent = static_cast<int>(std::floor(std::log10(width / most)));
  for (;; ++exponent)
    for (const double digit : {1.0, 2.0, 5.0}) {
      const double step = digit * std::pow(10.0, exponent);
      const double first = std::ceil(low / step - 1e-9);
      const int count = static_cast<int>(std::floor(high / step + 1e-9) - first) + 1;
      if (count > most) continue;
      return {first * step, step, count < 0 ? 0 : count, exponent < 0 ? -exponent : 0};
    }
}

void axis_text(char* text, std::size_t size, double value, int decimals, bool with_sign) {
  const double least = 0.5 * std::pow(10.0, -decimals);
  if (std::abs(value) < least) value = 0.0;
  const char* sign = value < 0.0 ? "\u2212" : with_sign && value > 0.0 ? "+" : "";
  std::snprintf(text, size, "%s%.*f", sign, decimals, std::abs(value));
}

void draw_ratio_grid(double low, double high, Pen& pen, ImVec2 from, ImVec2 to, bool numbers) {
  const AxisTicks ticks = axis_ticks(low, high, 9);
  for (int k = 0; k < ticks.count; ++k) {
    const float x = from.x + static_cast<float>((ticks.at(k) - low) / (high - low)) * (to.x - from.x);
    pen.line({x, from.y}, {x, to.y}, ui::kTheme.edge);
    if (!numbers) continue;
    char text[32];
    axis_text(text, sizeof text, ticks.at(k), ticks.decimals);
    pen.line({x, to.y}, {x, to.y + pen.px(4)}, ui::kTheme.soft);
    pen.text(pen.fonts().small, {x, to.y + pen.px(6)}, ui::kTheme.soft, text, Align::middle);
  }
}

}  // namespace stallwright::desk
