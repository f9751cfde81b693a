#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "sim/air/airspeed.hpp"
#include "sim/air/standard_atmosphere.hpp"

using namespace stallwright;

TEST_CASE("every day is in hydrostatic balance, in and above the troposphere", "[air][invariant]") {
  for (const Day day : {Day{}, Day{20.0, 99000.0}, Day{-25.0, 103500.0}}) {
    const AirColumn column(day);
    for (double h = 0.0; h <= 19000.0; h += 700.0) {
      CAPTURE(day.temperature_offset_K, day.qnh_Pa, h);
      const double step = 1.0;
      const double slope = (column.at(h + step).pressure_Pa - column.at(h - step).pressure_Pa) / (2.0 * step);
      CHECK(slope == Approx(-column.at(h).density_kgpm3 * gravity(h)).epsilon(1e-6));
    }
  }
}

TEST_CASE("sea level on any day has the QNH as its pressure and the offset in its temperature", "[air]") {
  const auto air = atmosphere(Day{12.0, 100500.0}, 0.0);
  CHECK(air.pressure_Pa == 100500.0);
  CHECK(air.temperature_K == Approx(288.15 + 12.0 - 0.0065 * pressure_altitude(100500.0)));
}

TEST_CASE("an altimeter set to QNH reads true height on a standard day whatever the QNH",
          "[air][closed form]") {
  for (const double qnh : {97000.0, 101325.0, 104500.0})
    for (const double h : {0.0, 500.0, 3000.0, 10500.0, 14000.0}) {
      CAPTURE(qnh, h);
      const double p = atmosphere(Day{0.0, qnh}, h).pressure_Pa;
      CHECK(indicated_altitude(p, qnh) == Approx(geopotential_height(h)).margin(1e-6).epsilon(0));
    }
}

TEST_CASE("on a warm day the altimeter reads low by about the ratio of the temperatures", "[air]") {
  const double h = 1500.0;
  for (const double offset : {-20.0, 20.0}) {
    const double p = atmosphere(Day{offset, 101325.0}, h).pressure_Pa;
    const double mean_standard = 288.15 - 0.0065 * h / 2.0;
    CHECK(indicated_altitude(p, 101325.0) ==
          Approx(h * mean_standard / (mean_standard + offset)).epsilon(2e-3));
  }
}

TEST_CASE("pressure and density altitude undo the standard day through the tropopause",
          "[air][closed form]") {
  for (double z = -1000.0; z <= 20000.0; z += 250.0) {
    const auto air = atmosphere(Day{}, geometric_altitude(z));
    CAPTURE(z);
    CHECK(pressure_altitude(air.pressure_Pa) == Approx(z).margin(1e-7).epsilon(0));
    CHECK(density_altitude(air.density_kgpm3) == Approx(z).margin(1e-7).epsilon(0));
  }
}

TEST_CASE("a hot day's density altitude rises by some 36 m a kelvin near the ground", "[air]") {
  // Rule of thumb, 120 ft a degree C (common practice).
  const auto air = atmosphere(Day{5.0, 101325.0}, 0.0);
  CHECK(density_altitude(air.density_kgpm3) / 5.0 / 0.3048 == Approx(120.0).margin(5.0).epsilon(0));
}

TEST_CASE("gravity is g0 at sea level and falls with the square of the distance", "[air]") {
  CHECK(gravity(0.0) == 9.80665);
  CHECK(gravity(6356766.0) == Approx(9.80665 / 4.0));
}

TEST_CASE("a day outside the stated limits is refused", "[air][limits]") {
  CHECK_THROWS_AS(AirColumn(Day{0.0, 79999.0}), std::invalid_argument);
  CHECK_THROWS_AS(AirColumn(Day{61.0, 101325.0}), std::invalid_argument);
  CHECK_THROWS_AS(AirColumn(Day{std::numeric_limits<double>::quiet_NaN(), 101325.0}), std::invalid_argument);
}

TEST_CASE("each airspeed conversion undoes the other", "[air][invariant]") {
  const auto air = atmosphere(Day{10.0, 100000.0}, 2500.0);
  for (double v = 0.5; v < 150.0; v += 0.5) {
    CHECK(cas_of_tas(tas_of_cas(v, air), air) == Approx(v).epsilon(1e-9));
    CHECK(tas_of_eas(eas_of_tas(v, air), air) == Approx(v).epsilon(1e-15));
  }
  const auto sea_level = atmosphere(Day{}, 0.0);
  CHECK(tas_of_cas(60.0, sea_level) == Approx(60.0).epsilon(1e-12));
}

TEST_CASE("no flow and reversed flow read as no speed", "[air][limits]") {
  CHECK(cas_of_impact_pressure(0.0) == 0.0);
  CHECK(cas_of_impact_pressure(-50.0) == 0.0);
  CHECK(impact_pressure_of_cas(0.0) == 0.0);
}
