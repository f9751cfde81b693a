#include "sim/air/thermals.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

#include "aircraft/math/table.hpp"

namespace stallwright {
namespace {

struct ShapeClass {
  double ratio, k1, k2, k3, k4;
};
constexpr std::array<ShapeClass, 7> kClasses{{{0.14, 1.5352, 2.5826, -0.0113, -0.1950},
                                              {0.25, 1.5265, 3.6054, -0.0176, -0.1265},
                                              {0.36, 1.4866, 4.8356, -0.0320, -0.0818},
                                              {0.47, 1.2042, 7.7904, 0.0848, -0.0445},
                                              {0.58, 0.8816, 13.9720, 0.3404, -0.0216},
                                              {0.69, 0.7067, 23.9940, 0.5689, -0.0099},
                                              {0.80, 0.6189, 42.7965, 0.7157, -0.0033}}};

const ShapeClass& nearest_class(double ratio) {
  return *std::min_element(kClasses.begin(), kClasses.end(), [&](const ShapeClass& a, const ShapeClass& b) {
    return std::abs(a.ratio - ratio) < std::abs(b.ratio - ratio);
  });
}

double cube_root(double x) { return x > 0.0 ? math::exp(math::log(x) / 3.0) : 0.0; }

/// A cell number as an unsigned one, negative ones after the positive.
std::uint64_t folded(std::int64_t n) {
  return n >= 0 ? 2u * static_cast<std::uint64_t>(n) : 2u * static_cast<std::uint64_t>(-(n + 1)) + 1u;
}

/// One number for a pair of cell numbers (Cantor's pairing).
std::uint64_t cell_number(std::int64_t north, std::int64_t east) {
  const std::uint64_t a = folded(north), b = folded(east);
  return (a + b) * (a + b + 1u) / 2u + b;
}

}  // namespace

ThermalShape thermal_shape(const MixedLayer& layer, double height_m) {
  ThermalShape s;
  const double zeta = height_m / layer.depth_m;
  if (layer.scale_mps <= 0.0 || zeta <= 0.0 || zeta >= 10.0 / 11.0) return s;
  const double root = cube_root(zeta);
  s.mean_mps = layer.scale_mps * root * (1.0 - 1.1 * zeta);
  s.outer_m = std::max(10.0, 0.102 * root * (1.0 - 0.25 * zeta) * layer.depth_m);
  s.inner_m = s.outer_m * (s.outer_m < 600.0 ? 0.0011 * s.outer_m + 0.14 : 0.8);
  const double r1 = s.inner_m, r2 = s.outer_m;
  s.core_mps = 3.0 * s.mean_mps * (r2 * r2 * r2 - r2 * r2 * r1) / (r2 * r2 * r2 - r1 * r1 * r1);
  return s;
}

double thermal_updraft_mps(const MixedLayer& layer, double height_m, double distance_m) {
  const ThermalShape s = thermal_shape(layer, height_m);
  if (s.mean_mps <= 0.0) return 0.0;
  const double share = distance_m / s.outer_m, zeta = height_m / layer.depth_m;
  if (share >= 2.0) return 0.0;
  const ShapeClass& k = nearest_class(s.inner_m / s.outer_m);
  const double shape =
      1.0 / (1.0 + math::pow_positive(std::max(std::abs(k.k1 * (share + k.k3)), 1e-9), k.k2)) + k.k4 * share;
  double up = s.core_mps * std::max(shape, 0.0);
  if (distance_m > s.inner_m && zeta > 0.5 && zeta <= 0.9)
    up += std::min(0.0, math::kPi / 6.0 * math::sin(math::kPi * share) * s.mean_mps * 2.5 * (zeta - 0.5));
  return up;
}

ThermalField::ThermalField(const MixedLayer& layer, const random::Key& key,
                           const math::Vec3<double>& drift_E_mps)
    : layer_(layer), stream_(key.stream(random::Channel::kThermal)), drift_E_mps_(drift_E_mps) {
  constexpr double kEach = 0.6;
  cell_m_ = math::sqrt(layer.depth_m * thermal_shape(layer, 0.5 * layer.depth_m).outer_m / kEach);
  constexpr int kHeights = 40, kRings = 200;
  for (int i = 0; i <= kHeights; ++i) {
    const double height = layer.depth_m * i / kHeights;
    const double edge = 2.0 * thermal_shape(layer, height).outer_m, width = edge / kRings;
    double sum = 0.0, square = 0.0;
    for (int k = 0; k < kRings; ++k) {
      const double r = (k + 0.5) * width, up = thermal_updraft_mps(layer, height, r);
      sum += up * 2.0 * math::kPi * r * width;
      square += up * up * 2.0 * math::kPi * r * width;
    }
    height_m_.push_back(height);
    mean_mps_.push_back(sum / (cell_m_ * cell_m_));
    square_.push_back(square / (cell_m_ * cell_m_));
  }
}

double ThermalField::sink_mps(double height_m) const {
  return math::interpolate(height_m_, mean_mps_, height_m);
}

double ThermalField::variance(double height_m) const {
  const double mean = sink_mps(height_m);
  return std::max(0.0, math::interpolate(height_m_, square_, height_m) - mean * mean);
}

double ThermalField::updraft(double north_m, double east_m, double height_m) const {
  const auto north = static_cast<std::int64_t>(std::floor(north_m / cell_m_));
  const auto east = static_cast<std::int64_t>(std::floor(east_m / cell_m_));
  double up = -sink_mps(height_m);
  for (std::int64_t i = north - 1; i <= north + 1; ++i)
    for (std::int64_t j = east - 1; j <= east + 1; ++j) {
      const std::uint64_t cell = cell_number(i, j);
      const double n = (static_cast<double>(i) + random::uniform(stream_, cell, 0)) * cell_m_;
      const double e = (static_cast<double>(j) + random::uniform(stream_, cell, 1)) * cell_m_;
      const double distance = math::sqrt((north_m - n) * (north_m - n) + (east_m - e) * (east_m - e));
      if (distance < cell_m_) up += thermal_updraft_mps(layer_, height_m, distance);
    }
  return up;
}

Updraft ThermalField::at(const math::Vec3<double>& position_E_m, double height_m, double time_s) const {
  const double north = position_E_m.x - drift_E_mps_.x * time_s,
               east = position_E_m.y - drift_E_mps_.y * time_s;
  constexpr double kStep_m = 2.0;
  Updraft u;
  u.up_mps = updraft(north, east, height_m);
  u.per_m_north =
      (updraft(north + kStep_m, east, height_m) - updraft(north - kStep_m, east, height_m)) / (2.0 * kStep_m);
  u.per_m_east =
      (updraft(north, east + kStep_m, height_m) - updraft(north, east - kStep_m, height_m)) / (2.0 * kStep_m);
  return u;
}

}  // namespace stallwright
