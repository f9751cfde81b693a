#pragma once
#include "sim/reduction/set_points.hpp"

namespace stallwright {

/// Records that a point has: its windows, for a stall those with a break; at least 1 for a point that was found.
int records_of(const SetPoint& point);

/// Half of the 95 % interval that so many records like those at hand would give, in ratio. From the budget: what each
/// record has for itself falls with the root of their number (with more degrees of freedom), what a sortie or the
/// aeroplane and its instruments have for all of them stays.
///   records  1 or more
double half_width_with(const SetPoint& point, int records);

/// What it takes to know a point well enough.
struct RepeatsWanted {
  int records = 0;  ///< altogether, in air like this; 0: no number up to the most that is asked for does it
  double half_width_kt = kNone;  ///< with so many, kt; with `records` 0: what no repeat brings down
  bool done = false;             ///< those at hand do
};

/// Fewest records altogether that bring the 95 % half-width to `wanted_kt` or below.
///   kt_per_ratio  of the point, positive (knots_per_ratio, or 1/|slope_per_kt|)
///   most          that anybody would fly
RepeatsWanted repeats_wanted(const SetPoint& point, double wanted_kt, double kt_per_ratio, int most = 9);

}  // namespace stallwright
