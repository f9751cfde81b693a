#include "render/input/mouse_stick.hpp"

#include <algorithm>

#include "render/input/axis_shape.hpp"

namespace stallwright::input {

MouseStick mouse_stick(double x, double y, double width, double height) {
  constexpr double kDeadZone = 0.03, kCurve = 0.4, kReach = 0.8;
  if (!(width > 0.0) || !(height > 0.0)) return {};
  const double reach_px = 0.5 * kReach * std::min(width, height);
  const auto deflection = [&](double px) {
    return curved(with_dead_zone(std::clamp(px / reach_px, -1.0, 1.0), kDeadZone), kCurve);
  };
  return {deflection(y - 0.5 * height), deflection(x - 0.5 * width)};
}

}  // namespace stallwright::input
