#include "sim/report/scale.hpp"

#include <algorithm>
#include <cmath>

namespace stallwright {

Ticks nice_ticks(double low, double high, int most) {
  Ticks ticks;
  const double width = high - low;
  if (!(width > 0.0) || !std::isfinite(width) || most < 1) return ticks;
  int exponent = static_cast<int>(std::floor(std::log10(width / most)));
  const auto inside = [&](double step) { return std::floor(high / step) - std::ceil(low / step) + 1.0; };
  double step = 0.0;
  for (; step == 0.0; ++exponent)
    for (const double digit : {1.0, 2.0, 5.0})
      if (const double trial = digit * std::pow(10.0, exponent); step == 0.0 && inside(trial) <= most) {
        step = trial;
        ticks.decimals = std::max(0, -exponent);
      }
  // Counted, not added up: 0.1 ten times is not 1.
  for (double i = std::ceil(low / step); i * step <= high; i += 1.0) ticks.values.push_back(i * step);
  return ticks;
}

void Extent::add(double value) {
  if (!std::isfinite(value)) return;
  low_ = std::min(low_, value);
  high_ = std::max(high_, value);
}

void Extent::add(std::span<const double> values) {
  for (const double value : values) add(value);
}

Extent Extent::widened(double share, double least_width) const {
  Extent wider;
  const double low = empty() ? 0.0 : low_;
  const double high = empty() ? 0.0 : high_;
  const double middle = 0.5 * (low + high);
  const double half = std::max(0.5 * least_width, (0.5 + share) * (high - low));
  wider.add(middle - half);
  wider.add(middle + half);
  return wider;
}

}  // namespace stallwright
