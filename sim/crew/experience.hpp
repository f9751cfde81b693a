#pragma once
#include <vector>

#include "sim/motion/trim.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// Attitude, throttle and stick that hold each speed, as someone who knows the aeroplane remembers them: one curve
/// for a flap setting and a power rule, from steady flight at the working height. Speeds are equivalent airspeeds,
/// which is what an airspeed indicator without position error shows.
struct SteadyCurve {
  std::vector<double> speed_mps;  ///< rising
  std::vector<double> pitch_rad, throttle, stick_aft, alpha_rad;
  double slowest_mps() const { return speed_mps.front(); }
};

/// How strongly the aeroplane answers its controls, at one speed; both gains grow in proportion to speed.
struct ControlFeel {
  double reference_mps = 0.0;
  double pitch_rate_per_stick = 0.0;  ///< greatest pitch rate after a step, rad/s per full stick
  double roll_rate_per_stick = 0.0;   ///< likewise roll rate
  double climb_per_throttle = 0.0;    ///< m/s of climb at held speed per full throttle
};

/// Steady curve from `fastest_mps` down to the slowest speed that can be flown so.
/// Throws std::runtime_error if not even the fastest speed has a steady flight.
SteadyCurve steady_curve(const Aircraft& aircraft, PowerRule power, double descent_mps, double flap_rad,
                         double altitude_m, double density_kgpm3, double fastest_mps);

/// Answers to small steps of the controls from a steady flight, flown for one second.
ControlFeel control_feel(const Aircraft& aircraft, const Trim& about, double density_kgpm3);

}  // namespace stallwright
