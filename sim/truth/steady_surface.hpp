#pragma once
#include <array>

#include "sim/truth/judge.hpp"

namespace stallwright {

/// Ratio of steady straight flight around a steady point, at other speeds and powers than the point's own:
///   r = r0 + a1 dx + a2 dx^2 + a3 dx^3 + (b1 + b2 dx) dy + b3 dy^2
///   x  lift area n m g/q_c, m2;  y  thrust area T/q_c, m2;  dx, dy from the point's own
/// fitted by least squares to steady flights at 0.88 to 1.25 times the point's speed and up to 1.5 m/s of climb or
/// sink beside its own path. Exactly r0 at the point. Outside those flights the polynomial goes on.
class SteadySurface {
 public:
  /// Throws std::runtime_error where too few steady flights exist around the point.
  SteadySurface(const Aircraft& aircraft, const TestPoint& point, const StaticPoint& at, const StillAir& air);

  double ratio(double lift_area_m2, double thrust_area_m2) const;
  double lift_area_m2() const { return x0_; }                ///< of the point itself
  double worst_residual() const { return worst_residual_; }  ///< of the fit, ratio

 private:
  static constexpr std::size_t kTerms = 6;
  static std::array<double, kTerms> terms(double dx, double dy);

  double x0_, y0_, r0_, worst_residual_ = 0.0;
  std::array<double, kTerms> coefficients_{};
};

}  // namespace stallwright
