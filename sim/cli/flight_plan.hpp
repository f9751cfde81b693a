#pragma once
#include <string>
#include <vector>

#include "sim/air/standard_atmosphere.hpp"
#include "sim/cli/cli_common.hpp"
#include "sim/sortie/card_speeds.hpp"

namespace stallwright::cli {

/// One point of the card as it is to be flown at this mass.
struct PlannedPoint {
  TestPoint point;
  double flap_deg = 0.0;
  PointSpeeds speeds;  ///< kt as indicated; the aeroplane's position error is left out (IAS = CAS)
};

/// Something that must be so before anybody goes.
struct GoItem {
  bool ok = true;
  std::string text;
};

/// What can be known before the flight, from the type's book figures, the card, the loading and the day. The
/// simulator's truth has no part in it.
struct FlightPlan {
  Flight flight;
  Day day;
  MassProperties mass;
  CgRange cg_range;
  double working_altitude_ft = 0.0, floor_altitude_ft = 0.0;  ///< above mean sea level
  double pressure_altitude_ft = 0.0, density_altitude_ft = 0.0,
         temperature_C = 0.0;       ///< at the working height
  double true_per_indicated = 1.0;  ///< TAS/EAS at the working height, sqrt(rho0/rho)
  std::vector<PlannedPoint> points;
  std::vector<GoItem> items;
  bool go() const;
};

FlightPlan make_plan(const Flight& flight, const Day& day);

/// A page of text, at most 100 columns; and the same for another program, format "stallwright-plan-1".
std::string plan_text(const FlightPlan& plan);
std::string plan_json(const FlightPlan& plan);

}  // namespace stallwright::cli
