#pragma once
#include <limits>

#include "sim/motion/flight.hpp"

namespace stallwright {

/// What is held fixed to find a steady flight. Exactly one of speed and angle of attack is given (the other is NaN).
struct TrimCondition {
  enum class Power {
    path,  ///< throttle is found so that climb_mps is flown (0: level; negative: a stated descent)
    throttle,  ///< throttle is given, the flight path follows (0: idle glide, propeller windmilling; 1: full power)
  };
  double true_airspeed_mps = std::numeric_limits<double>::quiet_NaN();
  double alpha_rad =
      std::numeric_limits<double>::quiet_NaN();  ///< of the body x axis at the centre of gravity
  Power power = Power::path;
  double climb_mps = 0.0;
  double throttle = 0.0;
  double bank_rad = 0.0;       ///< steady turn at this bank, right positive
  double pull_up_radps = 0.0;  ///< pitch rate on top: the lowest point of a loop, all other rates still zero
  double flap_rad = 0.0;
  double altitude_m = 0.0;  ///< sets gravity; density is given apart
  double density_kgpm3 = 1.225;
  /// Wings held level by decree: rolling and yawing moments and side force are left unbalanced, controls and
  /// sideslip at zero. For angles beyond the stall, where no lateral trim exists.
  bool longitudinal_only = false;
};

/// A steady flight: every rate zero but position and heading (in a turn) or pitch (in a pull-up).
struct Trim {
  FlightState<double> state;
  Controls<double> controls;
  bool converged = false;
  double residual = 0.0;  ///< largest scaled residual left
  double true_airspeed_mps = 0.0, alpha_rad = 0.0, beta_rad = 0.0, climb_mps = 0.0;
  double load_factor = 0.0;  ///< |specific force|/g0
  bool within_stops = true;  ///< controls found lie inside the stops and throttle in 0..1
};

/// Finds a steady flight by Newton's method on all rates at once: motion, induced flow, separation, propeller.
///   start  a neighbouring trim to begin from (continuation); none: begins attached, from a plain guess
/// `converged` is false, with the last iterate, if no steady flight was found: the caller decides what that means.
Trim find_trim(const Aircraft& aircraft, const TrimCondition& condition, const Trim* start = nullptr);

/// Air of a trim condition: still, its density.
AirSample<double> trim_air(const TrimCondition& condition);

}  // namespace stallwright
