#pragma once
#include <optional>

#include "sim/air/standard_atmosphere.hpp"
#include "sim/motion/trim.hpp"
#include "sim/sortie/card_speeds.hpp"

namespace stallwright::cli {

/// The air at the working height.
struct WorkingAir {
  double altitude_m = 0.0;  ///< above mean sea level
  AtmosphereState<double> air{};
};

/// Steady flight at a condition's speed, found from a quarter faster downwards: close to the stall a plain guess does
/// not find its way. Nothing where no such flight exists.
std::optional<Trim> steady_flight(const Aircraft& aircraft, TrimCondition condition);

/// One point of the card as it is to be flown at this mass. Speeds of `speeds` are calibrated, as the type file's are.
struct PlannedPoint {
  TestPoint point;
  double flap_deg = 0.0;
  PointSpeeds speeds;        ///< kt, CAS
  double ias_kt = kUnset;    ///< of the speed to set up: what the dial shows then
  double throttle = kUnset;  ///< share of full that holds it; above 1: it cannot be held
  /// What the dial shows beyond the calibrated speed; 0 where it is not known.
  double correction_kt() const { return ias_kt == ias_kt ? ias_kt - speeds.set_up_kt() : 0.0; }
};

/// Whether the type file states a position error at all.
bool has_position_error(const AircraftType& type);

/// IAS, kt, of a steady flight: the impact pressure that the type's static port leaves at that angle of attack, read by
/// a dial that is perfect otherwise (sim/sensing/pitot_static.hpp, nominal error, no lag).
double indicated_kt(const AircraftType& type, const Trim& trim, const WorkingAir& where);

/// The point at a mass. Slow points are set up level, as the card's director does.
PlannedPoint planned_point(const Aircraft& aircraft, const TestPoint& point, const WorkingAir& where);

/// What the dial shows at the book's stall speed, idle; NaN where the aeroplane does not fly so slowly.
double book_stall_ias_kt(const Aircraft& aircraft, std::size_t flap_setting, const WorkingAir& where);

}  // namespace stallwright::cli
