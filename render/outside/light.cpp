#include "render/outside/light.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "render/outside/noise.hpp"

namespace stallwright::outside {
namespace {

using Eigen::Vector3f;

/// A colour as it is seen, made linear with the gamma of 2 that the shaders undo.
Vector3f linear(float r, float g, float b) { return {r * r, g * g, b * b}; }

/// Dusk, low sun, morning and midday by the sun's elevation.
Vector3f by_elevation(double elevation_deg, const Vector3f& dusk, const Vector3f& low, const Vector3f& high) {
  const auto up = static_cast<float>(smooth_step(-8.0, 2.0, elevation_deg));
  const auto day = static_cast<float>(smooth_step(1.0, 30.0, elevation_deg));
  const Vector3f first = dusk + (low - dusk) * up;
  return first + (high - first) * day;
}

}  // namespace

Light light_of(double sun_azimuth_deg, double sun_elevation_deg, double visibility_m, double cloud_cover) {
  const double azimuth = sun_azimuth_deg * std::numbers::pi / 180.0;
  const double up = sun_elevation_deg;
  const double elevation = up * std::numbers::pi / 180.0;
  const auto grey = static_cast<float>(smooth_step(0.45, 1.0, cloud_cover));
  Light light;
  light.to_sun_E = Eigen::Vector3d(std::cos(elevation) * std::cos(azimuth),
                                   std::cos(elevation) * std::sin(azimuth), -std::sin(elevation))
                       .cast<float>();
  light.sun = by_elevation(up, Vector3f::Zero(), {1.15f, 0.72f, 0.40f}, {1.28f, 1.20f, 1.05f}) *
              (1.0f - 0.75f * grey);
  light.sky = by_elevation(up, {0.10f, 0.12f, 0.17f}, {0.34f, 0.36f, 0.42f}, {0.42f, 0.48f, 0.56f});
  light.zenith =
      by_elevation(up, linear(0.12f, 0.17f, 0.29f), linear(0.33f, 0.47f, 0.65f), linear(0.27f, 0.46f, 0.70f));
  light.horizon =
      by_elevation(up, linear(0.42f, 0.38f, 0.42f), linear(0.90f, 0.80f, 0.68f), linear(0.83f, 0.88f, 0.91f));
  light.haze =
      by_elevation(up, linear(0.24f, 0.25f, 0.31f), linear(0.62f, 0.60f, 0.58f), linear(0.63f, 0.71f, 0.77f));
  light.glow =
      by_elevation(up, linear(0.30f, 0.15f, 0.08f), linear(0.72f, 0.48f, 0.24f), linear(0.38f, 0.34f, 0.26f));
  const Vector3f overcast = linear(0.74f, 0.76f, 0.78f) * (light.horizon.sum() / 2.2f);
  light.zenith += (overcast * 0.8f - light.zenith) * grey;
  light.horizon += (overcast - light.horizon) * 0.8f * grey;
  light.glow *= 1.0f - grey;
  light.extinction_per_m = static_cast<float>(2.996 / std::max(visibility_m, 200.0));
  return light;
}

}  // namespace stallwright::outside
