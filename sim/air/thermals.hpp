#pragma once
#include <vector>

#include "aircraft/math/vec3.hpp"
#include "sim/air/convection.hpp"
#include "sim/random/philox.hpp"

/// Thermals of a mixed layer, shape and number by Allen. [ALLEN]
///
///   zeta = z/zi;  mean updraft  wbar = w* zeta^(1/3) (1 - 1.1 zeta),  none above zeta = 10/11
///   outer radius  r2 = max(10 m, 0.102 zeta^(1/3) (1 - 0.25 zeta) zi);  r1/r2 = 0.0011 r2 + 0.14, 0.8 from 600 m on
///   core          wpk = 3 wbar (r2^3 - r2^2 r1)/(r2^3 - r1^3)
///   shape         w/wpk = 1/(1 + |k1 (r/r2 + k3)|^k2) + k4 r/r2, not below zero; k1 to k4 of the nearest class of r1/r2
///   edge sink     (pi/6) sin(pi r/r2) wbar 2.5 (zeta - 0.5), its negative part alone, r1 < r < 2 r2, 0.5 < zeta <= 0.9
///   number        0.6/(zi r2) on a square metre
/// Ours: one thermal in each cell of a square grid of that density (r2 of the middle of the layer), at a seeded place
/// within it, carried along by the wind; what goes up comes down evenly everywhere, so that the mean is nothing.
namespace stallwright {

struct ThermalShape {
  double mean_mps = 0.0, core_mps = 0.0, outer_m = 10.0, inner_m = 1.0;
};
ThermalShape thermal_shape(const MixedLayer& layer, double height_m);

/// Updraft of one thermal at a distance from its axis, m/s, up positive; no sink of the surroundings in it.
double thermal_updraft_mps(const MixedLayer& layer, double height_m, double distance_m);

/// Vertical wind at a place, up, and how it changes to the north and to the east.
struct Updraft {
  double up_mps = 0.0, per_m_north = 0.0, per_m_east = 0.0;
};

class ThermalField {
 public:
  /// key: seed and sortie; drift_E_mps: the wind that carries the thermals.
  ThermalField(const MixedLayer& layer, const random::Key& key, const math::Vec3<double>& drift_E_mps);

  Updraft at(const math::Vec3<double>& position_E_m, double height_m, double time_s) const;

  /// Sink everywhere that makes the mean of the field nothing, and what the field adds to the variance of the vertical
  /// wind, (m/s)^2: means over an area, at a height.
  double sink_mps(double height_m) const;
  double variance(double height_m) const;
  double cell_m() const { return cell_m_; }

 private:
  double updraft(double north_m, double east_m, double height_m) const;

  MixedLayer layer_;
  random::Stream stream_;
  math::Vec3<double> drift_E_mps_;
  double cell_m_ = 1.0;
  std::vector<double> height_m_, mean_mps_, square_;  ///< of the thermals alone
};

}  // namespace stallwright
