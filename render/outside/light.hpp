#pragma once
#include <Eigen/Core>

namespace stallwright::outside {

/// Colours of the light, linear red, green, blue; 1 is what shows as white.
struct Light {
  Eigen::Vector3f to_sun_E;         ///< unit
  Eigen::Vector3f sun;              ///< on a surface that faces it
  Eigen::Vector3f sky;              ///< on a surface that faces up, from all of the sky
  Eigen::Vector3f zenith, horizon;  ///< of the clear sky
  Eigen::Vector3f haze;  ///< what far ground fades into: darker than the sky, so that the horizon is an edge
  Eigen::Vector3f glow;  ///< added about the sun
  float extinction_per_m =
      1.0f / 8000.0f;  ///< exponential; 5 % of the contrast is left at the visibility (from memory)
};

/// The light for a sun at this place: low sun is weak and warm, high sun white; below -8 degrees it is dusk and stays so, since
/// a test flight needs a horizon. Much cloud takes the sun's share and greys the sky.
Light light_of(double sun_azimuth_deg, double sun_elevation_deg, double visibility_m, double cloud_cover);

}  // namespace stallwright::outside
