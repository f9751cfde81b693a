#include "render/input/axis_shape.hpp"

#include <algorithm>
#include <cmath>

namespace stallwright::input {

double calibrated(int raw, const AxisShape& shape) {
  const int from_centre = raw - shape.centre;
  const int travel = from_centre < 0 ? shape.centre - shape.low : shape.high - shape.centre;
  if (travel <= 0) return 0.0;
  const double value = std::clamp(static_cast<double>(from_centre) / travel, -1.0, 1.0);
  return shape.inverted ? -value : value;
}

double with_dead_zone(double value, double dead_zone) {
  const double beyond = std::abs(value) - dead_zone;
  return beyond <= 0.0 ? 0.0 : std::copysign(std::min(beyond / (1.0 - dead_zone), 1.0), value);
}

double curved(double value, double curve) { return (1.0 - curve) * value + curve * value * value * value; }

double shaped(int raw, const AxisShape& shape) {
  return curved(with_dead_zone(calibrated(raw, shape), shape.dead_zone), shape.curve);
}

double lever(int raw, const AxisShape& shape) {
  if (shape.high <= shape.low) return 0.0;
  double value = static_cast<double>(raw - shape.low) / (shape.high - shape.low);
  if (shape.inverted) value = 1.0 - value;
  const double end = 0.5 * shape.dead_zone;
  return std::clamp((value - end) / (1.0 - 2.0 * end), 0.0, 1.0);
}

double about_trim(double trim, double deflection) {
  return trim + deflection * (deflection > 0.0 ? 1.0 - trim : 1.0 + trim);
}

}  // namespace stallwright::input
