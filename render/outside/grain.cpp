#include "render/outside/grain.hpp"

#include <algorithm>
#include <cmath>

#include "render/outside/noise.hpp"

namespace stallwright::outside {
namespace {

/// Blend of the values at the whole places of a grid that repeats after `period` steps, -0.5 .. 0.5.
double tiling_noise(double x, double y, int period, std::uint32_t salt) {
  const int i = static_cast<int>(std::floor(x)), j = static_cast<int>(std::floor(y));
  const double u = smooth_step(0.0, 1.0, x - i), v = smooth_step(0.0, 1.0, y - j);
  const int i1 = (i + 1) % period, j1 = (j + 1) % period;
  const double low = std::lerp(mixed_share(i, j, salt), mixed_share(i1, j, salt), u);
  const double high = std::lerp(mixed_share(i, j1, salt), mixed_share(i1, j1, salt), u);
  return std::lerp(low, high, v) - 0.5;
}

std::uint8_t grain_at(int x, int y, std::uint32_t salt) {
  double sum = 0.0, weight = 0.5;
  for (int period = 16; period <= 128; period *= 2, weight *= 0.78) {
    const double scale = static_cast<double>(period) / kGrain_px;
    sum += weight * tiling_noise(x * scale, y * scale, period, salt + static_cast<std::uint32_t>(period));
  }
  return static_cast<std::uint8_t>(std::clamp(128.0 + 190.0 * sum, 0.0, 255.0));
}

}  // namespace

std::vector<std::uint8_t> grain_picture() {
  std::vector<std::uint8_t> picture;
  picture.reserve(2 * kGrain_px * kGrain_px);
  for (int y = 0; y < kGrain_px; ++y)
    for (int x = 0; x < kGrain_px; ++x) {
      picture.push_back(grain_at(x, y, 101));
      picture.push_back(grain_at(x, y, 909));
    }
  return picture;
}

}  // namespace stallwright::outside
