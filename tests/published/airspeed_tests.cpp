#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "sim/air/airspeed.hpp"
#include "tests/published/csv_rows.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;
using evidence::hold;
using evidence::Published;
using evidence::WorstRow;

TEST_CASE("calibrated, equivalent and true airspeed agree with the worked table", "[air][published]") {
  // [GRACEY-1980] relations, worked table: two units of the last printed digit.
  const auto rows = published::csv_rows("cas_eas_tas.csv");
  REQUIRE(rows.size() > 60);
  WorstRow impact, mach, equivalent, true_speed;
  for (const auto& row : rows) {
    const auto air = atmosphere(Day{}, geometric_altitude(row[0] * kFoot));
    const double cas = row[1] * kKnot, tas = tas_of_cas(cas, air);
    const std::string at = std::to_string(static_cast<int>(std::lround(row[1]))) + " kt, " +
                           std::to_string(static_cast<int>(std::lround(row[0]))) + " ft";
    impact.row(at, impact_pressure_of_cas(cas), row[2], 2e-3);
    mach.row(at, tas / air.speed_of_sound_mps, row[3], 2e-6);
    equivalent.row(at, eas_of_tas(tas, air) / kKnot, row[4], 2e-4);
    true_speed.row(at, tas / kKnot, row[5], 2e-4);
  }
  const Published table{"GRACEY-1980", "ch. 3, relations of airspeeds, tabulated", "worked by hand"};
  const char* digits = "two units of the last digit";
  impact.hold(table, "impact pressure", "Pa", digits);
  mach.hold(table, "Mach number", "1", digits);
  equivalent.hold(table, "equivalent airspeed", "kt", digits);
  true_speed.hold(table, "true airspeed", "kt", digits);
}

TEST_CASE("an airliner's equivalent airspeed agrees with the check case of NASA", "[air][published]") {
  // [NESC-2015] case 11, t = 0: 335.1594543 KTAS at 10,013 ft, Mach 0.5250701904; density 0.0017548379
  // slug/ft3.
  const auto air = atmosphere(Day{}, 10013.0 * kFoot);
  const double tas = 335.1594543 * kKnot;
  const double density = 0.0017548379458813 * 515.378819;
  const Published start{"NESC-2015", "case 11, air and speed at the start", "read"};
  hold(start, "Mach number at the start of case 11", tas / air.speed_of_sound_mps, 0.5250701904,
       2e-5 * 0.5250701904, "1", "its table of the atmosphere");
  hold(start, "density at the start of case 11", air.density_kgpm3, density, 3e-5 * density, "kg/m3",
       "its table of the atmosphere");
  hold(start, "equivalent airspeed at the start of case 11", eas_of_tas(tas, air) / kKnot, 287.982, 0.01,
       "kt", "its table of the atmosphere");
}
