#pragma once
#include <limits>
#include <string>
#include <vector>

#include "aircraft/type_file.hpp"
#include "sim/motion/modes.hpp"

namespace stallwright {

/// Unless a function is told of other air, figures hold at sea level on a standard day, where calibrated and true
/// airspeed are the same.
/// An aeroplane for book figures: maximum mass, most forward centre of gravity there, even airframe.
Aircraft book_aircraft(const AircraftType& type);

/// The slowest steady flight at idle, propeller windmilling, for a flap setting.
///   C_L max = n m g/(qbar S),  n load factor (1), S wing area
struct StallFigure {
  enum class Limit { lift, elevator, none };  ///< what ends it; none: no steady flight was found
  double flap_rad = kUnset;
  double speed_mps = kUnset, cl_max = kUnset, alpha_rad = kUnset, stick_aft = kUnset, sink_mps = kUnset;
  Limit limit = Limit::none;
};

/// Marches up in angle of attack, each trim begun from the one before: 0.5 deg while speed falls quickly,
/// 0.05 deg near the top. Maximum lift is the vertex of the parabola through the slowest point and its
/// neighbours; if the stick reaches its aft stop first, the speed there by linear interpolation.
StallFigure stall_figure(const Aircraft& aircraft, double flap_rad);

/// Best of a curve over speed, and where.
struct BestFigure {
  double value = kUnset, speed_mps = kUnset;
};

/// Best ratio of lift to drag in a glide, flaps up (horizontal speed over sink). With `windmilling` false the
/// propeller is taken off (no thrust, drag, slipstream or torque), which is the airframe's own L/D; with true
/// it is what the pilot gets at idle.
BestFigure best_glide(const Aircraft& aircraft, double stall_mps, bool windmilling);

/// Where and how a climb is flown.
struct ClimbCondition {
  double flap_rad = 0.0;
  double altitude_m = 0.0, density_kgpm3 = 1.225;
  double fastest_mps = std::numeric_limits<double>::infinity();  ///< true airspeed, of a flap limit
};

/// Best rate of climb at full throttle, m/s, and the true airspeed of it: between 1.1 and 2.4 times the stall speed
/// (true airspeed too), not above the condition's fastest.
BestFigure best_climb(const Aircraft& aircraft, double stall_mps, const ClimbCondition& condition = {});

/// Level flight at a share of rated power at the shaft, flaps up: the faster of the two speeds.
struct CruiseFigure {
  double speed_mps = kUnset, throttle = kUnset, propeller_radps = kUnset;
};
CruiseFigure cruise(const Aircraft& aircraft, double stall_mps, double power_share = 0.75);

/// Roll rate per aileron, 1/s, at idle and flaps up: aileron moved at once by 1 deg from a wings-level glide,
/// pedals and stick as trimmed, nonlinear flight for 1 s; half the difference of right and left, so that the
/// propeller's own roll drops out. After 1 s the roll mode (0.1 s) has settled and the spiral (above 10 s)
/// has not begun.
double roll_response_ps(const Aircraft& aircraft, double speed_mps);

/// All figures of a type.
struct Performance {
  std::vector<StallFigure> stalls;  ///< one a flap setting
  BestFigure glide_airframe, glide_idle, climb;
  CruiseFigure cruise;
  double mode_speed_mps = kUnset;  ///< level, 1.5 times the book's clean stall speed
  std::vector<Mode> modes;
  double roll_response_slow_ps = kUnset,
         roll_response_fast_ps = kUnset;  ///< at 1.05 and 1.5 times the stall speed
};

Performance performance(const Aircraft& aircraft);

/// A figure by the name that a type file's bands use, in the unit that goes with it.
struct NamedFigure {
  std::string quantity;
  double value = kUnset;
  std::string unit;
};
std::vector<NamedFigure> named_figures(const Performance& performance);

}  // namespace stallwright
