#pragma once
#include <cstddef>
#include <limits>
#include <string>

#include "aircraft/aircraft_type.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// Stall speed by the flight manual, at a flap setting and a mass:
///   V_s(delta, m) = (V_S1 + (V_S0 - V_S1) delta/delta_full) sqrt(m/m_max)
///   V_S1, V_S0  book stall speeds with flaps up and full, idle, at maximum mass;  delta  flap deflection;
///   m, m_max  mass, maximum mass, kg
/// Between the two printed speeds a straight line in deflection is our choice: a manual gives no more. The
/// real curve sags below it by about a knot, since the first notch does most (from memory): the figure errs
/// on the fast side. The root is exact at one angle of attack and load factor 1. Throws std::out_of_range for
/// a flap setting that the type lacks, std::invalid_argument for a mass that is not a positive number.
double book_stall_kt(const AircraftType& type, std::size_t flap_setting, double mass_kg);

/// The speed that a point must stay below, or infinity. Flaps out, the limit of their setting. Flaps up, V_FE
/// for a point that is given from V_FE (flaps may then be moved straight after it), and otherwise none.
double flap_limit_kt(const TestPoint& point, const AircraftType& type);

/// Upper band and flap limit keep at least this apart: the pilot's needle is about as wide, and the position
/// error of a light aeroplane is of this size.
inline constexpr double kBelowFlapLimit_kt = 1.0;

/// The numbers to fly at one test point, at one mass, in knots as the pilot reads them. Book speeds and
/// limits, which are CAS, are taken as they stand, as a pilot without a correction card must.
///   target = target_reference sqrt(m/m_ref)
///   m_ref  the mass that card speeds are given for, type.mass.reference_kg
/// so that every mass flies the point at one angle of attack; only where target and upper band would come
/// within kBelowFlapLimit_kt of the flap limit the target is cut to fit, and the note says so. Values that a
/// point does not have are NaN: target for the slow ones, entry for the steady ones, stop for all but
/// slow_through, the limit where there is none is infinite.
struct PointSpeeds {
  double stall_kt = kUnset;                            ///< book stall at this flap setting and mass
  double target_reference_kt = kUnset;                 ///< steady point: to hold, at the reference mass
  double target_kt = kUnset;                           ///< and at this mass
  double entry_kt = kUnset;                            ///< slow points: to hold before slowing down
  double stop_kt = kUnset;                             ///< slow_through: where to stop slowing down
  double band_low_kt = kUnset, band_high_kt = kUnset;  ///< about target or entry
  double flap_limit_kt = std::numeric_limits<double>::infinity();
  std::string note;  ///< one sentence where the limit binds, else empty

  /// The speed to set up before anything is recorded.
  double set_up_kt() const { return target_kt == target_kt ? target_kt : entry_kt; }
};

/// Errors as book_stall_kt. A stall is entered from the greater of 10 kt above the stall (14 CFR 23.201(b),
/// amendment 62: at least that) and 1.3 times it (common practice), at this mass.
PointSpeeds point_speeds(const TestPoint& point, const AircraftType& type, double mass_kg);

}  // namespace stallwright
