#pragma once
#include <array>
#include <cstddef>

#include "render/view/panel_view.hpp"

namespace stallwright::panel {

/// How a round dial turns a value into an angle: straight lines between marks, held at the outermost ones as by a stop.
/// Angles in degrees clockwise from the top of the dial.
struct DialScale {
  struct Mark {
    double value, angle_deg;
  };
  std::array<Mark, 3> marks;  ///< rising value
  double low() const { return marks.front().value; }
  double high() const { return marks.back().value; }
};

double angle_deg(const DialScale& scale, double value);

/// 0 at the top, 20 kt at 20 degrees (no airspeed system is good for less), then even up to the first ten above V_NE + 5 %,
/// at 345 degrees: the slow half, where the work is done, gets most of the dial.
DialScale airspeed_scale(const view::SpeedArcs& arcs);
/// 0 at nine o'clock, 2,000 ft/min up and down at 165 degrees from there.
DialScale vertical_speed_scale();
/// 3 degrees a second, a full turn in two minutes, at 20 degrees; stops at twice that.
DialScale turn_scale();

inline constexpr double kStandardTurn_degps = 3.0;
/// The ball's tube ends here, ball widths.
inline constexpr double kTubeEnd_balls = 2.2;

/// The altimeter's one needle goes round once in 1,000 ft.
double altimeter_angle_deg(double altitude_ft);

}  // namespace stallwright::panel
