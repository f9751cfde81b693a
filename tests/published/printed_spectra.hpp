#pragma once
#include <cmath>
#include <complex>

#include "sim/air/turbulence_intensity.hpp"

/// The spectra as the specification prints them, for tests: written out again, apart from the filters. [MIL-F-8785C 3.7]
namespace stallwright::published {

/// One-sided spectra per rad/s of u, v, w, p, q, r (0 to 5) at frequency w, airspeed v, span b.
struct PrintedSpectra {
  TurbulenceModel model;
  TurbulenceScales<double> s;
  double b, v;

  double longitudinal(double w) const {
    const double x = s.length_u_m * w / v,
                 front = 2.0 * s.sigma_u_mps * s.sigma_u_mps * s.length_u_m / (M_PI * v);
    if (model == TurbulenceModel::kDryden) return front / (1.0 + x * x);
    return front * std::pow(1.0 + std::pow(1.339 * x, 2), -5.0 / 6.0);
  }
  double transverse(double w, double sigma, double length) const {
    const double x = length * w / v, front = sigma * sigma * length / (M_PI * v);
    if (model == TurbulenceModel::kDryden) return front * (1.0 + 3.0 * x * x) / std::pow(1.0 + x * x, 2);
    const double z = std::pow(1.339 * x, 2);
    return front * (1.0 + 8.0 / 3.0 * z) * std::pow(1.0 + z, -11.0 / 6.0);
  }
  /// From w to q and from v to r.
  std::complex<double> pitch_rate_of_w(double w) const {
    return -std::complex<double>(0.0, w / v) / std::complex<double>(1.0, 4.0 * b * w / (M_PI * v));
  }
  std::complex<double> yaw_rate_of_v(double w) const {
    return std::complex<double>(0.0, w / v) / std::complex<double>(1.0, 3.0 * b * w / (M_PI * v));
  }
  double at(int quantity, double w) const {
    const double in_v = transverse(w, s.sigma_v_mps, s.length_v_m),
                 in_w = transverse(w, s.sigma_w_mps, s.length_w_m);
    switch (quantity) {
      case 0:
        return longitudinal(w);
      case 1:
        return in_v;
      case 2:
        return in_w;
      case 3:
        return s.sigma_w_mps * s.sigma_w_mps / (v * s.length_w_m) * 0.8 *
               std::cbrt(M_PI * s.length_w_m / (4.0 * b)) / (1.0 + std::pow(4.0 * b * w / (M_PI * v), 2));
      case 4:
        return std::norm(pitch_rate_of_w(w)) * in_w;
      default:
        return std::norm(yaw_rate_of_v(w)) * in_v;
    }
  }
};

inline constexpr const char* kGustNames[] = {"u", "v", "w", "p", "q", "r"};

inline const char* word(TurbulenceModel model) {
  return model == TurbulenceModel::kDryden ? "Dryden" : "von Karman";
}

}  // namespace stallwright::published
