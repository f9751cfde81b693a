#include <catch2/catch.hpp>
#include <cmath>

#include "sim/air/standard_atmosphere.hpp"
#include "tests/published/csv_rows.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;
using evidence::hold;
using evidence::Published;
using evidence::WorstRow;

namespace {
/// One unit of the fifth significant digit.
double fifth_digit(double value) { return std::pow(10.0, std::floor(std::log10(value)) - 4.0); }

std::string metres(double altitude_m) {
  return std::to_string(static_cast<int>(std::lround(altitude_m))) + " m";
}
}  // namespace

TEST_CASE("the standard day agrees with the 1976 table from sea level to 30,000 ft", "[air][published]") {
  // [USSA-1976]. T and a to 1e-5, p and rho to 2e-5 of the computed columns (printed to 7 digits, R* from
  // memory); one unit of the last digit of the printed ones.
  const auto rows = published::csv_rows("ussa1976.csv");
  REQUIRE(rows.size() > 30);
  WorstRow height, t, p, rho, a, printed_t, printed_p, printed_rho, printed_a;
  for (const auto& row : rows) {
    const auto air = atmosphere(Day{}, row[0]);
    const std::string at = metres(row[0]);
    height.row(at, geopotential_height(row[0]), row[2], 1e-3);
    t.row_relative(at, air.temperature_K, row[3], 1e-5);
    p.row_relative(at, air.pressure_Pa, row[4], 2e-5);
    rho.row_relative(at, air.density_kgpm3, row[5], 2e-5);
    a.row_relative(at, air.speed_of_sound_mps, row[6], 1e-5);
    if (std::isnan(row[7])) continue;
    printed_t.row(at, air.temperature_K, row[7], 1e-3);
    printed_p.row(at, air.pressure_Pa, row[8], fifth_digit(row[8]));
    printed_rho.row(at, air.density_kgpm3, row[9], fifth_digit(row[9]));
    printed_a.row(at, air.speed_of_sound_mps, row[10], 0.01);
  }
  const Published computed{"USSA-1976", "table I, columns computed from its equations", "recomputed"};
  height.hold(computed, "geopotential height", "m", "digits of the column");
  t.hold(computed, "temperature", "K", "1e-5");
  p.hold(computed, "pressure", "Pa", "2e-5: R* from memory");
  rho.hold(computed, "density", "kg/m3", "2e-5: R* from memory");
  a.hold(computed, "speed of sound", "m/s", "1e-5");
  const Published printed{"USSA-1976", "table I, printed entries", "from memory"};
  printed_t.hold(printed, "printed temperature", "K", "one unit of the last digit");
  printed_p.hold(printed, "printed pressure", "Pa", "one unit of the fifth digit");
  printed_rho.hold(printed, "printed density", "kg/m3", "one unit of the fifth digit");
  printed_a.hold(printed, "printed speed of sound", "m/s", "one unit of the last digit");
}

TEST_CASE("30,000 ft agrees with the flight simulation check cases of NASA", "[air][published]") {
  // [NESC-2015] case 01, t = 0: four tools, digits they share; 1 degR = 5/9 K, 1 psf = 47.880259 Pa, 1
  // slug/ft3 = 515.378819.
  const auto air = atmosphere(Day{}, 9144.0);
  const Published start{"NESC-2015", "case 01, air at the start", "read"};
  const auto share = [&](const char* quantity, double measured, double published, double within,
                         const char* unit) {
    hold(start, std::string("air at 30,000 ft: ") + quantity, measured, published, within * published, unit,
         "digits that four tools share");
  };
  share("temperature", air.temperature_K, 411.8388731 * 5.0 / 9.0, 1e-7, "K");
  share("pressure", air.pressure_Pa, 629.674 * 47.880259, 1.5e-5, "Pa");
  share("density", air.density_kgpm3, 8.90696e-4 * 515.378819, 2e-5, "kg/m3");
  share("speed of sound", air.speed_of_sound_mps, 994.84915 * 0.3048, 1e-6, "m/s");
}

TEST_CASE("the isothermal layer has its printed pressure at 20 km of geopotential height",
          "[air][published]") {
  // [USSA-1976] 20 km geopotential: 216.65 K, 54.7489 mb (from memory, all digits printed).
  const auto air = atmosphere(Day{}, geometric_altitude(20000.0));
  const Published top{"USSA-1976", "table I, 20 km geopotential", "from memory"};
  hold(top, "temperature at 20 km", air.temperature_K, 216.65, 216.65e-9, "K", "exact, but for rounding");
  hold(top, "pressure at 20 km", air.pressure_Pa, 5474.89, 2e-6 * 5474.89, "Pa", "digits printed");
}
