#pragma once
#include <gsl/gsl_fft_complex.h>

#include <array>
#include <cmath>
#include <complex>
#include <vector>

#include "sim/air/turbulence.hpp"

/// Long series of gusts, and their spectra by Welch's method, for tests.
namespace stallwright::published {

using SixGusts = std::array<std::vector<double>, 6>;  ///< u, v, w, p, q, r

inline std::array<double, 6> six(const Gust<double>& g) {
  return {g.v_B_mps.x, g.v_B_mps.y, g.v_B_mps.z, g.omega_B_radps.x, g.omega_B_radps.y, g.omega_B_radps.z};
}

inline SixGusts gust_series(TurbulenceModel model, const TurbulenceScales<double>& scales, double span_m,
                            double airspeed_mps, double step_s, std::size_t count, const random::Key& key) {
  SixGusts out;
  TurbulenceState x = stationary_start(model, scales, span_m, key);
  for (std::size_t i = 0; i < count; ++i) {
    const auto now = six(gust(x, scales, span_m));
    for (std::size_t k = 0; k < 6; ++k) out[k].push_back(now[k]);
    x = advance(x, scales, span_m, airspeed_mps, step_s, key, i);
  }
  return out;
}

/// One-sided cross spectra per rad/s by Welch's method: Hann windows, no overlap, mean of conj(A) B over the segments.
/// `length` is a power of two; entry [a][b][k] is at 2 pi k/(length step).
class WelchSpectra {
 public:
  WelchSpectra(const SixGusts& x, std::size_t length, double step_s)
      : segments_(x[0].size() / length), bin_radps_(2.0 * M_PI / (static_cast<double>(length) * step_s)) {
    double power = 0.0;
    std::vector<double> window(length);
    for (std::size_t i = 0; i < length; ++i) {
      window[i] = 0.5 - 0.5 * std::cos(2.0 * M_PI * static_cast<double>(i) / static_cast<double>(length));
      power += window[i] * window[i];
    }
    for (auto& row : s_)
      for (auto& one : row) one.assign(length / 2, {});
    const double scale = step_s / (M_PI * power * static_cast<double>(segments_));
    std::array<std::vector<std::complex<double>>, 6> f;
    for (std::size_t m = 0; m < segments_; ++m) {
      for (std::size_t q = 0; q < 6; ++q) {
        f[q].assign(length, {});
        for (std::size_t i = 0; i < length; ++i) f[q][i] = x[q][m * length + i] * window[i];
        gsl_fft_complex_radix2_forward(reinterpret_cast<double*>(f[q].data()), 1, length);
      }
      for (std::size_t a = 0; a < 6; ++a)
        for (std::size_t b = 0; b < 6; ++b)
          for (std::size_t k = 0; k < length / 2; ++k) s_[a][b][k] += scale * std::conj(f[a][k]) * f[b][k];
    }
  }
  double segments() const { return static_cast<double>(segments_); }
  double frequency(std::size_t bin) const { return bin_radps_ * static_cast<double>(bin); }
  std::complex<double> cross(std::size_t a, std::size_t b, std::size_t bin) const { return s_[a][b][bin]; }
  double power(std::size_t a, std::size_t bin) const { return s_[a][a][bin].real(); }
  double coherence(std::size_t a, std::size_t b, std::size_t bin) const {
    return std::norm(cross(a, b, bin)) / (power(a, bin) * power(b, bin));
  }

 private:
  std::size_t segments_;
  double bin_radps_;
  std::array<std::array<std::vector<std::complex<double>>, 6>, 6> s_;
};

}  // namespace stallwright::published
