#pragma once
#include "render/desk/pen.hpp"

namespace stallwright::desk {

/// Round numbers for an axis: count, first, step and decimals, without a list.
struct AxisTicks {
  double first = 0.0, step = 1.0;
  int count = 0, decimals = 0;
  double at(int k) const { return first + step * k; }
};

/// Multiples of 1, 2 or 5 times a power of ten inside [low, high], at most `most` of them.
AxisTicks axis_ticks(double low, double high, int most);

/// A number as an axis shows it, with a true minus sign.
void axis_text(char* text, std::size_t size, double value, int decimals, bool with_sign = false);

/// Grid lines of a ratio axis over a plot; with `numbers`, the numbers below it.
void draw_ratio_grid(double low, double high, Pen& pen, ImVec2 from, ImVec2 to, bool numbers);

}  // namespace stallwright::desk
