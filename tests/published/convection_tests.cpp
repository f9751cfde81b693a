// Convection of a fair-weather day against its sources. [ALLEN] [LENSCHOW] [DEARDORFF] [COOPER-1969]
#include <catch2/catch.hpp>
#include <cmath>
#include <string>

#include "sim/air/thermals.hpp"
#include "tests/published/csv_rows.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;

namespace {
MixedLayer layer_of(double scale_mps, double depth_m) {
  MixedLayer layer;
  layer.scale_mps = scale_mps;
  layer.depth_m = depth_m;
  return layer;
}
}  // namespace

TEST_CASE("thermals have Allen's size, core and shape", "[air][published]") {
  const evidence::Published allen{"ALLEN", "appendix routine", "worked by hand"};
  const MixedLayer layer = layer_of(2.56, 1400.0);
  const auto rows = published::csv_rows("allen_thermals.csv");
  REQUIRE(rows.size() == 12);
  for (const auto& row : rows) {
    const ThermalShape shape = thermal_shape(layer, row[0]);
    const std::string at = " at " + std::to_string(std::lround(row[0])) + " m, " +
                           std::to_string(std::lround(row[1])) + " m from the core";
    const std::string digits = "printed digits";
    evidence::hold(allen, "outer radius" + at, shape.outer_m, row[3], 1e-5 * row[3], "m", digits);
    evidence::hold(allen, "core speed" + at, shape.core_mps, row[4], 6e-6, "m/s", digits);
    evidence::hold(allen, "mean updraft" + at, shape.mean_mps, row[5], 6e-6, "m/s", digits);
    evidence::hold(allen, "inner over outer radius" + at, shape.inner_m / shape.outer_m, row[6],
                   1e-4 * row[6], "1", digits);
    evidence::hold(allen, "updraft" + at, thermal_updraft_mps(layer, row[0], row[1]), row[2], 2e-5, "m/s",
                   digits);
  }
  // Maximum of the mean updraft: 0.4577 w* at 1/4.4 of the depth, nothing from 10/11 on.
  const evidence::Published maximum{"ALLEN", "mean updraft, its maximum", "worked by hand"};
  evidence::hold(maximum, "greatest mean updraft over w*", thermal_shape(layer, 1400.0 / 4.4).mean_mps / 2.56,
                 0.4577, 5e-5, "1", "printed digits");
  evidence::hold(maximum, "mean updraft at 0.91 of the depth", thermal_shape(layer, 1400.0 * 0.91).mean_mps,
                 0.0, 0.0, "m/s", "exact");
}

TEST_CASE("the variance of the vertical wind follows Lenschow's profile", "[air][published]") {
  const evidence::Published lenschow{"LENSCHOW", "variance profile", "read in a copy"};
  const MixedLayer layer = layer_of(2.0, 1000.0);
  const auto relative = [&](double zeta) { return convective_sigma_w_mps(layer, 1000.0 * zeta) / 2.0; };
  const auto variance = [&](double zeta, double published) {
    evidence::hold(lenschow, "variance of w over w* squared at z/zi " + std::to_string(zeta).substr(0, 3),
                   relative(zeta) * relative(zeta), published, 5e-5, "1", "printed digits");
  };
  variance(0.1, 0.3282);
  variance(0.5, 0.4082);
  variance(1.0, 0.0720);
  evidence::hold(lenschow, "rms of w over w* at its maximum, z/zi 5/16", relative(0.3125), 0.6828, 5e-5, "1",
                 "printed digits");
  CHECK(relative(0.3125) > relative(0.31));
  CHECK(relative(0.3125) > relative(0.315));
  CHECK(relative(1.2) == 0.0);
}

TEST_CASE("the convective velocity is Deardorff's", "[air][published]") {
  ConvectiveDay day;
  day.hour = 13.0;
  const MixedLayer layer = mixed_layer(day);
  const evidence::Published deardorff{"DEARDORFF", "definition of w*", "worked by hand"};
  // By hand from the flux and depth that the day gives.
  const double cube = 9.80665 / 295.0 * layer.heat_flux_wpm2 / 1210.0 * layer.depth_m;
  evidence::hold(deardorff, "cube of w* from flux and depth at 13 h", std::pow(layer.scale_mps, 3.0), cube,
                 1e-9 * cube, "m3/s3", "rounding");
  // 240 W/m2 over 1,000 m and at 300 K make about 1.9 m/s (common practice: 1 to 3 m/s on a sunny day).
  CHECK(std::cbrt(9.80665 / 300.0 * 240.0 / 1210.0 * 1000.0) == Approx(1.865).margin(0.01));
  CHECK(layer.scale_mps > 1.0);
  CHECK(layer.scale_mps < 3.0);
}

TEST_CASE("days are twelve hours long at the equinox and on the equator, longest in June",
          "[air][published]") {
  const evidence::Published cooper{"COOPER-1969", "declination", "from memory"};
  ConvectiveDay day;
  day.day_of_year = 81.0;  // declination 0
  evidence::hold(cooper, "sunrise at the equinox", daylight_hours(day).rise_h, 6.0, 0.02, "h", "a minute");
  day.day_of_year = 172.0;
  evidence::hold(cooper, "sunrise at the solstice of June, 45 deg north", daylight_hours(day).rise_h, 4.29,
                 0.05, "h", "15 h 26 min of day without refraction, from memory to some minutes");
  CHECK(daylight_hours(day).rise_h + daylight_hours(day).set_h == Approx(24.0));
  day.latitude_rad = 0.0;
  evidence::hold(cooper, "sunset on the equator in June", daylight_hours(day).set_h, 18.0, 1e-5 * 18.0, "h",
                 "exact");
}
