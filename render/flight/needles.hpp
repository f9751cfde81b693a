#pragma once
#include "sim/sensing/readings.hpp"

namespace stallwright {

/// Where the needles of the round dials stand. The readings have the lag of tubes and sensors; a dial adds that of its own
/// movement, first order each.
struct Needles {
  double airspeed_kt = 0.0, altitude_ft = 0.0, vertical_speed_fpm = 0.0;
  double pitch_deg = 0.0, bank_deg = 0.0, heading_deg = 0.0;
  double turn_rate_degps = 0.0;  ///< right positive
  double slip_balls = 0.0;       ///< right positive; 1: the ball is its own width off centre (kBall_g)
  double rpm = 0.0;
  double probe_ratio = 0.0;
  bool started = false;
};

/// Side force that moves the ball by its own width, as a share of the normal force: 4 degrees of tube (common practice).
inline constexpr double kBall_g = 0.07;

/// Time constants of the dials' movements, s (common practice for light aeroplanes' instruments). The readings have the
/// lag of tubes, and of the vertical speed indicator's own capsule, already.
struct NeedleLag {
  double airspeed_s = 0.2, altitude_s = 0.2, vertical_speed_s = 0.2;  ///< capsule and gear train
  double attitude_s = 0.05, heading_s = 0.15;  ///< gyros hold still; their linkages have some play
  double turn_s = 0.4;                         ///< rate gyro with its dashpot
  double slip_s = 0.3;                         ///< ball in oil
  double rpm_s = 0.3;
  double probe_s = 0.15;  ///< enough to calm the noise, too little to hide the way to the stall
};
inline constexpr NeedleLag kNeedleLag{};

/// Needles one sample later. Each follows its reading x with its time constant T:
///   y(t + dt) = y + (x - y)(1 - exp(-dt/T))      exact for an x that is held over the sample
/// Angles go the short way round: bank -180 .. 180, heading 0 .. 360 degrees. The turn needle is a rate gyro about the
/// body's yaw axis. A reading that is no number leaves its needle where it is. Pure; the first call puts the needles at the
/// readings.
Needles advance(const Needles& before, const Readings<double>& seen, double dt_s);

}  // namespace stallwright
