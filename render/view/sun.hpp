#pragma once

namespace stallwright::view {

/// Where the sun stands.
struct SunPosition {
  double azimuth_deg = 0.0;    ///< clockwise from north, 0 .. 360
  double elevation_deg = 0.0;  ///< above the level horizon, -90 .. 90; without refraction
};

/// The sun's place in the sky.
///   declination  delta = -23.44 deg cos(360 deg (day + 10) / 365.25)
///   hour angle   H = 15 deg (solar hour - 12)
///   sin(elevation) = sin(latitude) sin(delta) + cos(latitude) cos(delta) cos(H)
///   azimuth = 180 deg + atan2(sin(H), cos(H) sin(latitude) - tan(delta) cos(latitude))
/// Standard solar geometry, from memory. The declination's cosine takes the orbit as a circle: within half a degree.
///   latitude_deg  north positive, -90 .. 90
///   day_of_year   1 is 1 January; any number, the year repeats
///   solar_hour    by the sun, 12 when it is due south or north; any number, the day repeats
SunPosition sun_position(double latitude_deg, double day_of_year, double solar_hour);

/// The same over the invented place: 48 degrees north on day 150, as assets/air/day.toml has it.
SunPosition sun_over_the_place(double solar_hour);

}  // namespace stallwright::view
