#pragma once
#include "aircraft/math/elementary.hpp"
#include "aircraft/math/vec3.hpp"

namespace stallwright {

/// How the mean wind changes with height above the ground.
///   kUniform    W = W_ref
///   kPower   W = W_ref (h / h_ref)^n            n about 1/7 over open country by day (common practice)
///   kLinear  W = W_ref + g (h - h_ref)          never below 0
/// The law is held below 2 m and above 600 m (2000 ft, about the top of the layer that the ground slows).
enum class ShearLaw { kUniform, kPower, kLinear };

struct MeanWind {
  double speed_mps = 0.0;            ///< W_ref, at the reference height
  double from_rad = 0.0;             ///< true direction the wind comes from, clockwise from north
  double reference_height_m = 10.0;  ///< h_ref, above ground
  ShearLaw law = ShearLaw::kUniform;
  double power = 1.0 / 7.0;     ///< n
  double gradient_per_s = 0.0;  ///< g, (m/s)/m
  friend bool operator==(const MeanWind&, const MeanWind&) = default;
};

/// Mean wind speed at a height above ground, m/s.
template <class T>
T wind_speed(const MeanWind& wind, const T& height_m) {
  const T h = math::clamp(height_m, T(2.0), T(600.0));
  const T reference(wind.speed_mps);
  switch (wind.law) {
    case ShearLaw::kPower:
      return reference * math::pow_positive(h / T(wind.reference_height_m), T(wind.power));
    case ShearLaw::kLinear:
      return math::max(reference + T(wind.gradient_per_s) * (h - T(wind.reference_height_m)), T(0.0));
    case ShearLaw::kUniform:
      break;
  }
  return reference;
}

/// Velocity of the mean air over the ground, north-east-down, m/s: against the direction it comes from.
template <class T>
math::Vec3<T> wind_velocity_E(const MeanWind& wind, const T& height_m) {
  const T speed = wind_speed(wind, height_m);
  double sine = 0.0, cosine = 0.0;
  math::sincos(wind.from_rad, sine, cosine);
  return {-(speed * T(cosine)), -(speed * T(sine)), T(0.0)};
}

}  // namespace stallwright
