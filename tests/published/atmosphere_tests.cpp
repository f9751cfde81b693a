#include <catch2/catch.hpp>
#include <cmath>

#include "sim/air/standard_atmosphere.hpp"
#include "tests/published/csv_rows.hpp"

using namespace stallwright;

namespace {
/// One unit of the fifth significant digit.
double fifth_digit(double value) { return std::pow(10.0, std::floor(std::log10(value)) - 4.0); }
}  // namespace

TEST_CASE("the standard day agrees with the 1976 table from sea level to 30,000 ft", "[air][published]") {
  // [USSA-1976]. T and a to 1e-5, p and rho to 2e-5 of the computed columns (printed to 7 digits, R* from
  // memory).
  const auto rows = published::csv_rows("ussa1976.csv");
  REQUIRE(rows.size() > 30);
  for (const auto& row : rows) {
    const auto air = atmosphere(Day{}, row[0]);
    CAPTURE(row[0]);
    CHECK(geopotential_height(row[0]) == Approx(row[2]).margin(1e-3).epsilon(0));
    CHECK(air.temperature_K == Approx(row[3]).epsilon(1e-5));
    CHECK(air.pressure_Pa == Approx(row[4]).epsilon(2e-5));
    CHECK(air.density_kgpm3 == Approx(row[5]).epsilon(2e-5));
    CHECK(air.speed_of_sound_mps == Approx(row[6]).epsilon(1e-5));
    if (std::isnan(row[7])) continue;
    // One unit of the last digit printed in the table.
    CHECK(air.temperature_K == Approx(row[7]).margin(1e-3).epsilon(0));
    CHECK(air.pressure_Pa == Approx(row[8]).margin(fifth_digit(row[8])).epsilon(0));
    CHECK(air.density_kgpm3 == Approx(row[9]).margin(fifth_digit(row[9])).epsilon(0));
    CHECK(air.speed_of_sound_mps == Approx(row[10]).margin(0.01).epsilon(0));
  }
}

TEST_CASE("30,000 ft agrees with the flight simulation check cases of NASA", "[air][published]") {
  // [NESC-2015] case 01, t = 0: four tools, digits they share; 1 degR = 5/9 K, 1 psf = 47.880259 Pa, 1
  // slug/ft3 = 515.378819.
  const auto air = atmosphere(Day{}, 9144.0);
  CHECK(air.temperature_K == Approx(411.8388731 * 5.0 / 9.0).epsilon(1e-7));
  CHECK(air.pressure_Pa == Approx(629.674 * 47.880259).epsilon(1.5e-5));
  CHECK(air.density_kgpm3 == Approx(8.90696e-4 * 515.378819).epsilon(2e-5));
  CHECK(air.speed_of_sound_mps == Approx(994.84915 * 0.3048).epsilon(1e-6));
}

TEST_CASE("the isothermal layer has its printed pressure at 20 km of geopotential height",
          "[air][published]") {
  // [USSA-1976] 20 km geopotential: 216.65 K, 54.7489 mb (from memory, all digits printed).
  const auto air = atmosphere(Day{}, geometric_altitude(20000.0));
  CHECK(air.temperature_K == Approx(216.65).epsilon(1e-9));
  CHECK(air.pressure_Pa == Approx(5474.89).epsilon(2e-6));
}
