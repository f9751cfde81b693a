#pragma once

namespace stallwright::input {

/// Feet for those who have no pedals: they follow the ball gently, as an instructor's would, and no further than this.
inline constexpr double kFeetReach = 0.6;
inline constexpr double kFeetRate_ps = 0.8;  ///< fastest movement, share of the travel per second

struct Feet {
  double remembered = 0.0;  ///< what holds the ball in the middle
  double pedal_right = 0.0;
};

/// The feet dt_s later.
///   slip_g  how far out the ball hangs: sideways specific force over g, positive with the ball to the right (the
///           accelerometer's right_mps2 negative); beyond 0.3 either way no more
Feet advance(Feet feet, double slip_g, double dt_s);

/// Once the assistance ends: back to the middle at the same rate.
Feet released(Feet feet, double dt_s);

}  // namespace stallwright::input
