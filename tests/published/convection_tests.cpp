// Convection of a fair-weather day against its sources.
#include <catch2/catch.hpp>
#include <cmath>

#include "sim/air/thermals.hpp"
#include "tests/published/csv_rows.hpp"

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
  const MixedLayer layer = layer_of(2.56, 1400.0);
  const auto rows = published::csv_rows("allen_thermals.csv");  // [ALLEN]
  REQUIRE(rows.size() == 12);
  for (const auto& row : rows) {
    const ThermalShape shape = thermal_shape(layer, row[0]);
    CAPTURE(row[0], row[1]);
    CHECK(shape.outer_m == Approx(row[3]).epsilon(1e-5));
    CHECK(shape.core_mps == Approx(row[4]).margin(6e-6));
    CHECK(shape.mean_mps == Approx(row[5]).margin(6e-6));
    CHECK(shape.inner_m / shape.outer_m == Approx(row[6]).epsilon(1e-4));
    CHECK(thermal_updraft_mps(layer, row[0], row[1]) == Approx(row[2]).margin(2e-5));
  }
  // Maximum of the mean updraft: 0.4577 w* at 1/4.4 of the depth, nothing from 10/11 on [ALLEN].
  CHECK(thermal_shape(layer, 1400.0 / 4.4).mean_mps / 2.56 == Approx(0.4577).margin(5e-5));
  CHECK(thermal_shape(layer, 1400.0 * 0.91).mean_mps == 0.0);
}

TEST_CASE("the variance of the vertical wind follows Lenschow's profile", "[air][published]") {
  const MixedLayer layer = layer_of(2.0, 1000.0);  // [LENSCHOW]
  const auto relative = [&](double zeta) { return convective_sigma_w_mps(layer, 1000.0 * zeta) / 2.0; };
  CHECK(relative(0.1) * relative(0.1) == Approx(0.3282).margin(5e-5));
  CHECK(relative(0.5) * relative(0.5) == Approx(0.4082).margin(5e-5));
  CHECK(relative(0.3125) == Approx(0.6828).margin(5e-5));
  CHECK(relative(0.3125) > relative(0.31));
  CHECK(relative(0.3125) > relative(0.315));
  CHECK(relative(1.0) * relative(1.0) == Approx(0.0720).margin(5e-5));
  CHECK(relative(1.2) == 0.0);
}

TEST_CASE("the convective velocity is Deardorff's", "[air][published]") {
  ConvectiveDay day;
  day.hour = 13.0;
  const MixedLayer layer = mixed_layer(day);
  // By hand from the flux and depth that the day gives  [DEARDORFF]
  CHECK(std::pow(layer.scale_mps, 3.0) ==
        Approx(9.80665 / 295.0 * layer.heat_flux_wpm2 / 1210.0 * layer.depth_m).epsilon(1e-9));
  // 240 W/m2 over 1,000 m and at 300 K make about 1.9 m/s (common practice: 1 to 3 m/s on a sunny day).
  CHECK(std::cbrt(9.80665 / 300.0 * 240.0 / 1210.0 * 1000.0) == Approx(1.865).margin(0.01));
  CHECK(layer.scale_mps > 1.0);
  CHECK(layer.scale_mps < 3.0);
}

TEST_CASE("days are twelve hours long at the equinox and on the equator, longest in June",
          "[air][published]") {
  ConvectiveDay day;
  day.day_of_year = 81.0;  // declination 0 by Cooper's formula
  CHECK(daylight_hours(day).rise_h == Approx(6.0).margin(0.02));
  day.day_of_year = 172.0;
  CHECK(daylight_hours(day).rise_h ==
        Approx(4.29).margin(0.05));  // 45 deg north: day of 15 h 26 min without refraction (from memory)
  CHECK(daylight_hours(day).rise_h + daylight_hours(day).set_h == Approx(24.0));
  day.latitude_rad = 0.0;
  CHECK(daylight_hours(day).set_h == Approx(18.0));
}
