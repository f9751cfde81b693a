#include "render/panel/dial_scale.hpp"

#include <cmath>

namespace stallwright::panel {

double angle_deg(const DialScale& scale, double value) {
  if (!(value > scale.low())) return scale.marks.front().angle_deg;  // a value that is no number too
  for (std::size_t k = 1; k < scale.marks.size(); ++k) {
    const DialScale::Mark &a = scale.marks[k - 1], &b = scale.marks[k];
    if (value <= b.value)
      return a.angle_deg + (value - a.value) / (b.value - a.value) * (b.angle_deg - a.angle_deg);
  }
  return scale.marks.back().angle_deg;
}

DialScale airspeed_scale(const view::SpeedArcs& arcs) {
  const double top = 10.0 * std::ceil(arcs.red_kt * 1.05 / 10.0);
  return {{{{0.0, 0.0}, {20.0, 20.0}, {top, 345.0}}}};
}

DialScale vertical_speed_scale() { return {{{{-2000.0, 105.0}, {0.0, 270.0}, {2000.0, 435.0}}}}; }

DialScale turn_scale() {
  return {{{{-2.0 * kStandardTurn_degps, -40.0}, {0.0, 0.0}, {2.0 * kStandardTurn_degps, 40.0}}}};
}

double altimeter_angle_deg(double altitude_ft) {
  return 0.36 * (altitude_ft - 1000.0 * std::floor(altitude_ft / 1000.0));
}

}  // namespace stallwright::panel
