#include <catch2/catch.hpp>

#include "aircraft/math/units.hpp"
#include "sim/air/airspeed.hpp"
#include "tests/published/csv_rows.hpp"

using namespace stallwright;

TEST_CASE("calibrated, equivalent and true airspeed agree with the worked table", "[air][published]") {
  // [GRACEY-1980] relations, worked table: two units of the last printed digit.
  const auto rows = published::csv_rows("cas_eas_tas.csv");
  REQUIRE(rows.size() > 60);
  for (const auto& row : rows) {
    CAPTURE(row[0], row[1]);
    const auto air = atmosphere(Day{}, geometric_altitude(row[0] * kFoot));
    const double cas = row[1] * kKnot, tas = tas_of_cas(cas, air);
    CHECK(impact_pressure_of_cas(cas) == Approx(row[2]).margin(2e-3).epsilon(0));
    CHECK(tas / air.speed_of_sound_mps == Approx(row[3]).margin(2e-6).epsilon(0));
    CHECK(eas_of_tas(tas, air) / kKnot == Approx(row[4]).margin(2e-4).epsilon(0));
    CHECK(tas / kKnot == Approx(row[5]).margin(2e-4).epsilon(0));
  }
}

TEST_CASE("an airliner's equivalent airspeed agrees with the check case of NASA", "[air][published]") {
  // [NESC-2015] case 11, t = 0: 335.1594543 KTAS at 10,013 ft, Mach 0.5250701904; density 0.0017548379
  // slug/ft3.
  const auto air = atmosphere(Day{}, 10013.0 * kFoot);
  const double tas = 335.1594543 * kKnot;
  CHECK(tas / air.speed_of_sound_mps == Approx(0.5250701904).epsilon(2e-5));
  CHECK(air.density_kgpm3 == Approx(0.0017548379458813 * 515.378819).epsilon(3e-5));
  CHECK(eas_of_tas(tas, air) / kKnot == Approx(287.982).margin(0.01).epsilon(0));
}
