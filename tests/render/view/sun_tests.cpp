#include <catch2/catch.hpp>

#include "render/view/sun.hpp"

using Catch::Matchers::WithinAbs;
using stallwright::view::sun_position;

// Closed forms of the celestial sphere. Declination's own error is within half a degree, so days of known declination are used.
namespace {
constexpr double kJune = 172.6;   // day + 10 = half a year: declination +23.44
constexpr double kMarch = 81.31;  // a quarter: declination 0
}  // namespace

TEST_CASE("at noon the sun stands at 90 degrees less the latitude plus the declination", "[view][sun]") {
  for (const double latitude : {30.0, 45.0, 51.0, 60.0}) {
    INFO("latitude " << latitude << " deg");
    CHECK_THAT(sun_position(latitude, kMarch, 12.0).elevation_deg, WithinAbs(90.0 - latitude, 0.02));
    CHECK_THAT(sun_position(latitude, kJune, 12.0).elevation_deg, WithinAbs(90.0 - latitude + 23.44, 0.02));
    CHECK_THAT(sun_position(latitude, kJune, 12.0).azimuth_deg, WithinAbs(180.0, 1e-6));
  }
}

TEST_CASE("south of the equator the noon sun stands in the north", "[view][sun]") {
  const auto noon = sun_position(-35.0, kJune, 12.0);
  CHECK_THAT(noon.elevation_deg, WithinAbs(90.0 - 35.0 - 23.44, 0.02));
  CHECK((noon.azimuth_deg < 1.0 || noon.azimuth_deg > 359.0));
}

TEST_CASE("at the equinox the sun rises due east at six and sets due west at eighteen", "[view][sun]") {
  const auto rise = sun_position(51.0, kMarch, 6.0), set = sun_position(51.0, kMarch, 18.0);
  CHECK_THAT(rise.elevation_deg, WithinAbs(0.0, 0.02));
  CHECK_THAT(rise.azimuth_deg, WithinAbs(90.0, 0.02));
  CHECK_THAT(set.elevation_deg, WithinAbs(0.0, 0.02));
  CHECK_THAT(set.azimuth_deg, WithinAbs(270.0, 0.02));
}

TEST_CASE("the six o'clock sun of midsummer stands north of east, at the angle that the sphere gives",
          "[view][sun]") {
  // sin(elevation) = sin(latitude) sin(declination): 18.0 deg at 51 deg; azimuth = atan2(1, -tan(23.44) cos(51)) ...
  const auto early = sun_position(51.0, kJune, 6.0);
  CHECK_THAT(early.elevation_deg, WithinAbs(18.01, 0.05));
  CHECK_THAT(early.azimuth_deg, WithinAbs(74.73, 0.05));
}

TEST_CASE("the sun's place repeats with the day and the year, and is defined at the poles", "[view][sun]") {
  const auto once = sun_position(51.0, 100.0, 8.0);
  CHECK_THAT(sun_position(51.0, 100.0, 32.0).azimuth_deg, WithinAbs(once.azimuth_deg, 1e-9));
  CHECK_THAT(sun_position(51.0, 100.0 + 365.25, 8.0).elevation_deg, WithinAbs(once.elevation_deg, 1e-9));
  CHECK_THAT(sun_position(90.0, kJune, 3.0).elevation_deg, WithinAbs(23.44, 0.02));
  for (double hour = 0.0; hour < 24.0; hour += 0.5) {
    const double azimuth_deg = sun_position(51.0, kJune, hour).azimuth_deg;
    CHECK((azimuth_deg >= 0.0 && azimuth_deg < 360.0));
  }
}
