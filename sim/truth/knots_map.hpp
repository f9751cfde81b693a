#pragma once
#include <vector>

#include "sim/truth/static_response.hpp"

namespace stallwright {

/// The one map from probe ratio to speed, for measured and true values alike: only differences are called errors.
/// Along the 1 g idle glide of the aeroplane as loaded, ratio rises as indicated speed falls; below 1.05 times the
/// 1 g stall speed, where the curve flattens against maximum lift, its tangent there goes on. Above the fastest
/// flight of the curve the tangent there goes on too. Speeds are for the reference mass (x sqrt(m_ref/m)).
class KnotsMap {
 public:
  KnotsMap() = default;

  /// Throws std::runtime_error unless ratio falls strictly with speed along the curve and rises with angle to 10 deg
  /// past the stall (jumps between stalled states apart, see the source).
  KnotsMap(const Aircraft& aircraft, double flap_rad, const StillAir& air, double fastest_mps);

  double speed_kt(double ratio) const;
  double ratio_per_kt(double ratio) const;  ///< slope of the inverse, negative
  double stall_speed_kt() const { return stall_speed_kt_; }
  /// Lift area x = n m g/q_c that the aeroplane makes in steady flight at a ratio, m2, through maximum lift to 10 deg
  /// past it; the end values are held outside.
  double lift_area_m2(double ratio) const;
  const StaticPoint& stall() const { return stall_; }
  /// d(ratio)/d(alpha) along the curve at a ratio, 1/rad; the end values are held outside.
  double ratio_per_rad(double ratio) const;

 private:
  std::vector<double> ratio_, speed_kt_, alpha_rad_;  ///< ratio rising
  std::vector<double> swept_ratio_, swept_area_m2_;   ///< ratio rising, past the stall
  double stall_speed_kt_ = 0.0;
  StaticPoint stall_;
};

}  // namespace stallwright
