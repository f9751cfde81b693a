#pragma once
#include <string>
#include <vector>

#include "sim/air/standard_atmosphere.hpp"
#include "sim/cli/cli_common.hpp"
#include "sim/cli/plan_air.hpp"
#include "sim/cli/plan_balance.hpp"
#include "sim/cli/plan_climb.hpp"
#include "sim/cli/plan_floor.hpp"
#include "sim/cli/plan_speeds.hpp"

namespace stallwright::cli {

/// Something that must be so before anybody goes.
struct GoItem {
  bool ok = true;
  std::string text;
};

/// What can be known before the flight: from the type's book figures, the card, the loading and the day, and from the
/// type's own trims, climbs and stalls in the simulator. No set point's truth has any part in it.
struct FlightPlan {
  Flight flight;
  Day day;
  MassProperties mass;
  CgRange cg_range;
  Balance balance;
  double working_altitude_ft = 0.0, floor_altitude_ft = 0.0;  ///< above mean sea level
  double pressure_altitude_ft = 0.0, density_altitude_ft = 0.0,
         temperature_C = 0.0;       ///< at the working height
  double true_per_indicated = 1.0;  ///< TAS/EAS at the working height, sqrt(rho0/rho)
  std::vector<ClimbRow> climb;
  bool position_error_known = false;
  std::vector<PlannedPoint> points;  ///< those whose flap setting the aeroplane has
  double v_a_kt = kUnset;            ///< CAS, at this mass: that of the maximum mass times sqrt(m/m_max)
  double stall_up_ias_kt = kUnset,
         stall_full_ias_kt = kUnset;  ///< what the dial shows at the book's stall speeds
  FloorPlan floor;
  std::vector<AirItem> air_items;
  std::vector<GoItem> items;
  bool go() const;
};

///   fair_day  the sun's part in the air to wait for
FlightPlan make_plan(const Flight& flight, const Day& day, const ConvectiveDay& fair_day);

/// Text of at most 100 columns with blanks to write in; the same for another program, format "stallwright-plan-1"; and
/// the page to carry: one HTML file that loads nothing and runs nothing, well-formed XML too, for two or three sheets of
/// A4 in black and white.
std::string plan_text(const FlightPlan& plan);
std::string plan_json(const FlightPlan& plan);
std::string plan_page(const FlightPlan& plan);

}  // namespace stallwright::cli
