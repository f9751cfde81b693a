#include "sim/air/convection.hpp"

#include <algorithm>

#include "sim/air/standard_atmosphere.hpp"

namespace stallwright {
namespace {

constexpr double kAfterSunrise_h = 1.0, kBeforeSunset_h = 1.5;
constexpr double kEntrained = 0.2;
constexpr double kHeatCapacity = 1210.0;  ///< rho c_p, J/(m3 K)
constexpr double kHour_s = 3600.0;
constexpr double kFadesAt = 1.2;  ///< of zi

double cube_root(double x) { return x > 0.0 ? math::exp(math::log(x) / 3.0) : 0.0; }

/// 1 up to the top of the mixed layer, 0 from kFadesAt of it on.
double fade(double zeta) { return std::clamp((kFadesAt - zeta) / (kFadesAt - 1.0), 0.0, 1.0); }

}  // namespace

Daylight daylight_hours(const ConvectiveDay& day) {
  const double declination =
      23.45 * math::kDegree * math::sin(2.0 * math::kPi * (284.0 + day.day_of_year) / 365.0);
  const double cosine = std::clamp(-math::tan(day.latitude_rad) * math::tan(declination), -1.0, 1.0);
  const double half_h = math::acos(cosine) * 12.0 / math::kPi;
  return {12.0 - half_h, 12.0 + half_h};
}

MixedLayer mixed_layer(const ConvectiveDay& day) {
  const Daylight light = daylight_hours(day);
  const double begin_h = light.rise_h + kAfterSunrise_h, end_h = light.set_h - kBeforeSunset_h;
  MixedLayer layer;
  layer.depth_m = day.morning_depth_m;
  if (end_h <= begin_h || day.hour <= begin_h) return layer;
  const double length_h = end_h - begin_h;
  const double phase = math::kPi * std::min(1.0, (day.hour - begin_h) / length_h);
  const double peak = day.peak_heat_flux_wpm2 / kHeatCapacity;
  const double warmed = peak * length_h * kHour_s / math::kPi * (1.0 - math::cos(phase));
  layer.depth_m = math::sqrt(day.morning_depth_m * day.morning_depth_m +
                             2.0 * (1.0 + 2.0 * kEntrained) / day.lapse_K_per_m * warmed);
  if (day.hour >= end_h) return layer;
  layer.heat_flux_wpm2 = day.peak_heat_flux_wpm2 * math::sin(phase);
  layer.scale_mps = cube_root(ussa1976::kGravity / day.potential_temperature_K * layer.heat_flux_wpm2 /
                              kHeatCapacity * layer.depth_m);
  return layer;
}

double convective_sigma_w_mps(const MixedLayer& layer, double height_m) {
  if (layer.scale_mps <= 0.0) return 0.0;
  const double zeta = std::max(height_m, 0.0) / layer.depth_m, inside = std::min(zeta, 1.0);
  return layer.scale_mps * math::sqrt(1.8) * cube_root(inside) * (1.0 - 0.8 * inside) * fade(zeta);
}

double convective_sigma_u_mps(const MixedLayer& layer, double height_m) {
  if (layer.scale_mps <= 0.0) return 0.0;
  return 0.59 * layer.scale_mps * fade(std::max(height_m, 0.0) / layer.depth_m);
}

double convective_length_m(const MixedLayer& layer, TurbulenceModel model) {
  return (model == TurbulenceModel::kDryden ? 0.35 : 0.32) * layer.depth_m;
}

}  // namespace stallwright
