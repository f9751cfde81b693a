#pragma once
#include <cmath>
#include <cstdint>

namespace stallwright::outside {

/// A number of 32 well mixed bits from a place on a grid and a salt. The shaders have the same (assets/shaders/land.glsl), so
/// that a field has one crop on the ground and for the trees that stand in it. The mixing constants are of our choice, odd.
constexpr std::uint32_t mixed_bits(std::int32_t i, std::int32_t j, std::uint32_t salt) {
  std::uint32_t h = static_cast<std::uint32_t>(i) * 0x9E3779B1u ^ salt;
  h = (h ^ (h >> 15)) * 0x2C1B3C6Du + static_cast<std::uint32_t>(j) * 0x85EBCA77u;
  h = (h ^ (h >> 13)) * 0x297A2D39u;
  return h ^ (h >> 16);
}

/// The same as a number from 0 up to 1.
constexpr double mixed_share(std::int32_t i, std::int32_t j, std::uint32_t salt) {
  return static_cast<double>(mixed_bits(i, j, salt)) / 4294967296.0;
}

inline double smooth_step(double from, double to, double x) {
  const double t = std::fmin(std::fmax((x - from) / (to - from), 0.0), 1.0);
  return t * t * (3.0 - 2.0 * t);
}

/// Values drawn at the whole places of a grid, -1 .. 1, with a smooth blend between them (slope and curvature continuous).
inline double value_noise(double x, double y, std::uint32_t salt) {
  const double i0 = std::floor(x), j0 = std::floor(y);
  const double u = x - i0, v = y - j0;
  const double a = u * u * u * (u * (u * 6.0 - 15.0) + 10.0);
  const double b = v * v * v * (v * (v * 6.0 - 15.0) + 10.0);
  const auto i = static_cast<std::int32_t>(i0), j = static_cast<std::int32_t>(j0);
  const double low = std::lerp(mixed_share(i, j, salt), mixed_share(i + 1, j, salt), a);
  const double high = std::lerp(mixed_share(i, j + 1, salt), mixed_share(i + 1, j + 1, salt), a);
  return 2.0 * std::lerp(low, high, b) - 1.0;
}

}  // namespace stallwright::outside
