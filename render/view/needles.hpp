#pragma once
#include "sim/sensing/readings.hpp"

namespace stallwright {

/// Where the needles of the round dials stand. The readings have the lag of tubes and sensors; a dial adds that of its own
/// movement, first order each.
struct Needles {
  double airspeed_kt = 0.0, altitude_ft = 0.0, vertical_speed_fpm = 0.0;
  double pitch_deg = 0.0, bank_deg = 0.0, heading_deg = 0.0;
  double turn_rate_degps = 0.0;  ///< right positive
  double slip_balls = 0.0;       ///< right positive; 1: the ball is its own width off centre
  double rpm = 0.0;
  double probe_ratio = 0.0;
  bool started = false;
};

/// Needles one sample later. Pure; the first call puts them at the reading.
Needles advance(const Needles& before, const Readings<double>& seen, double dt_s);

}  // namespace stallwright
