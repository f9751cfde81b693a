#pragma once
#include <vector>

#include "sim/motion/trim.hpp"
#include "sim/sensing/installed_system.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// The air in which the truth is stated: still, at one altitude.
struct StillAir {
  double altitude_m = 0.0, density_kgpm3 = 1.225, pressure_pa = 101325.0;
};

/// What the installed probe and pitot-static system would read in one steady flight: no noise, lag, drift or rate terms.
struct StaticPoint {
  bool found = false;
  double indicated_mps = 0.0, true_airspeed_mps = 0.0;
  double ratio = 0.0;
  double alpha_rad = 0.0;
  double climb_mps = 0.0, thrust_n = 0.0;
  double lift_area_m2 = 0.0;    ///< x = n m g/q_c, impact pressure as indicated
  double thrust_area_m2 = 0.0;  ///< thrust/q_c
  bool elevator_left = true;    ///< the stick is not yet at its aft stop
};

/// Steady flight at an indicated airspeed under a power rule. `found` is false below the slowest speed flown so.
///   near  a neighbouring trim to start from, updated to this one; may be empty
StaticPoint steady_at(const Aircraft& aircraft, double flap_rad, PowerRule power, double descent_mps,
                      const StillAir& air, double indicated_mps);

/// Steady flights of rising angle of attack under a power rule, throttle closed or level, from `from_rad` in steps,
/// through maximum lift to `beyond_rad` past it. Where no steady flight with free controls exists any more, wings are
/// held level by decree (TrimCondition::longitudinal_only); steps that do not converge are left out. From where level
/// flight asks more than full power on, full power is flown and height given away.
///   bank_rad  of a steady turn, right positive; in a turn the sweep ends where no steady flight exists any more
std::vector<StaticPoint> angle_sweep(const Aircraft& aircraft, double flap_rad, PowerRule power,
                                     double descent_mps, const StillAir& air, double from_rad,
                                     double step_rad, double beyond_rad, double bank_rad = 0.0);

/// The flight of quasi-static maximum lift in a sweep: vertex of the parabola through the largest lift area and its
/// neighbours, or the last one with elevator left if the stick's stop comes first. Throws std::runtime_error for an
/// empty sweep.
StaticPoint maximum_lift(const std::vector<StaticPoint>& sweep);

}  // namespace stallwright
