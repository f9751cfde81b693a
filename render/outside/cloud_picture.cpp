#include "render/outside/cloud_picture.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "render/outside/noise.hpp"

namespace stallwright::outside {
namespace {

struct Heap {
  double x, y, radius;
};
constexpr int kHeaps = 34;
using Heaps = std::array<Heap, kHeaps>;

double noise_sum(double x, double y, std::uint32_t salt) {
  double sum = 0.0, weight = 0.5;
  for (int octave = 0; octave < 5; ++octave, weight *= 0.55, x *= 2.0, y *= 2.0)
    sum += weight * value_noise(x, y, salt + static_cast<std::uint32_t>(octave));
  return sum;
}

/// Heaps within -1 .. 1 by 0 .. 1: large ones low and near the middle, small ones about them.
Heaps heaps_of(std::uint32_t which) {
  Heaps heaps{};
  for (int k = 0; k < kHeaps; ++k) {
    const auto draw = [&](std::uint32_t what) { return mixed_share(k, 5, which * 31u + what); };
    const double x = 1.36 * (draw(1) - 0.5) + 0.16 * (draw(2) - 0.5);
    const double top =
        0.66 * (1.0 - x * x * 1.7) * (0.55 + 0.45 * mixed_share(static_cast<int>(4.0 * x + 9.0), 3, which));
    const double radius = 0.09 + 0.15 * draw(3) * (1.0 - std::abs(x));
    heaps[static_cast<std::size_t>(k)] = {x, 0.10 + std::max(0.0, top - 0.6 * radius) * draw(4), radius};
  }
  return heaps;
}

struct Surface {
  double depth = 0.0, right = 0.0, up = 0.0;
};

/// The frontmost heap at a place; x is twice as wide as y is high.
Surface surface_at(const Heaps& heaps, double x, double y) {
  Surface best;
  for (const Heap& heap : heaps) {
    const double dx = x - heap.x, dy = (y - heap.y) * 1.0;
    const double left = heap.radius * heap.radius - dx * dx - dy * dy;
    if (left <= 0.0) continue;
    const double depth = std::sqrt(left);
    if (depth > best.depth) best = {depth, dx / heap.radius, dy / heap.radius};
  }
  return best;
}

std::uint8_t byte(double share) {
  return static_cast<std::uint8_t>(std::clamp(share, 0.0, 1.0) * 255.0 + 0.5);
}

}  // namespace

std::vector<std::uint8_t> cloud_picture(std::uint32_t which) {
  const Heaps heaps = heaps_of(which + 1);
  std::vector<std::uint8_t> picture;
  picture.reserve(4u * kCloudWide_px * kCloudHigh_px);
  for (int row = 0; row < kCloudHigh_px; ++row)
    for (int column = 0; column < kCloudWide_px; ++column) {
      const double x = 2.0 * (column + 0.5) / kCloudWide_px - 1.0, y = (row + 0.5) / kCloudHigh_px;
      const double ruffle = noise_sum(x * 5.0, y * 5.0, 40u + which),
                   other = noise_sum(x * 5.0 + 17.0, y * 5.0, 80u + which);
      const Surface seen = surface_at(heaps, x + 0.075 * ruffle, y + 0.075 * other);
      const double base = smooth_step(0.03, 0.13, y + 0.05 * ruffle);
      const double dense = smooth_step(0.015, 0.11, seen.depth + 0.035 * other) * base;
      const double edge = smooth_step(1.0, 0.86, std::abs(x)) * smooth_step(1.0, 0.9, y);
      picture.push_back(byte(0.5 + 0.5 * (0.8 * seen.right + 0.35 * ruffle)));
      picture.push_back(byte(0.5 + 0.5 * (0.8 * seen.up + 0.35 * other)));
      picture.push_back(byte(0.25 + 0.75 * smooth_step(0.0, 0.5, y)));
      picture.push_back(byte(dense * edge));
    }
  return picture;
}

}  // namespace stallwright::outside
