#include "render/view/sun.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stallwright::view {

SunPosition sun_position(double latitude_deg, double day_of_year, double solar_hour) {
  constexpr double kDegree = std::numbers::pi / 180.0;
  constexpr double kObliquity_deg = 23.44;  // of the ecliptic; from memory
  const double latitude = std::clamp(latitude_deg, -90.0, 90.0) * kDegree;
  const double delta =
      -kObliquity_deg * kDegree * std::cos(2.0 * std::numbers::pi * (day_of_year + 10.0) / 365.25);
  const double hour_angle = 15.0 * kDegree * (solar_hour - 12.0);
  const double sine =
      std::sin(latitude) * std::sin(delta) + std::cos(latitude) * std::cos(delta) * std::cos(hour_angle);
  const double from_south = std::atan2(
      std::sin(hour_angle), std::cos(hour_angle) * std::sin(latitude) - std::tan(delta) * std::cos(latitude));
  double azimuth_deg = std::fmod(180.0 + from_south / kDegree, 360.0);
  if (azimuth_deg < 0.0) azimuth_deg += 360.0;
  return {azimuth_deg, std::asin(std::clamp(sine, -1.0, 1.0)) / kDegree};
}

SunPosition sun_over_the_place(double solar_hour) { return sun_position(48.0, 150.0, solar_hour); }

}  // namespace stallwright::view
