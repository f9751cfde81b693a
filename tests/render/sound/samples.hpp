#pragma once
#include <cmath>
#include <cstddef>
#include <vector>

#include "render/sound/synth.hpp"

/// Samples of a view, and what can be measured on them.
namespace stallwright::samples {

inline constexpr double kRate_hz = 48000.0;
using Samples = std::vector<float>;

inline Samples of(const view::SoundView& heard, double seconds, std::uint64_t seed = 1) {
  auto state = sound::synth_state(seed);
  Samples out(static_cast<std::size_t>(seconds * kRate_hz));
  sound::advance(state, heard, out.data(), out.size(), kRate_hz);
  return out;
}

inline Samples part(const Samples& all, double from_s, double to_s) {
  return {all.begin() + static_cast<std::ptrdiff_t>(from_s * kRate_hz),
          all.begin() + static_cast<std::ptrdiff_t>(to_s * kRate_hz)};
}

inline double rms(const Samples& x) {
  double sum = 0.0;
  for (const float s : x) sum += static_cast<double>(s) * static_cast<double>(s);
  return std::sqrt(sum / static_cast<double>(x.size()));
}

/// Level without the first half second, dB; no more than -200.
inline double level_dB(const view::SoundView& heard, double seconds = 4.0) {
  return 20.0 * std::log10(rms(part(of(heard, seconds), 0.5, seconds)) + 1e-10);
}

inline double largest(const Samples& x) {
  double peak = 0.0;
  for (const float s : x) peak = std::fmax(peak, std::abs(static_cast<double>(s)));
  return peak;
}

inline double largest_step(const Samples& x) {
  double peak = 0.0;
  for (std::size_t i = 1; i < x.size(); ++i)
    peak = std::fmax(peak, std::abs(static_cast<double>(x[i] - x[i - 1])));
  return peak;
}

/// Power at a frequency as a share of all, by the sums of Goertzel; 1: a pure sine of this frequency.
inline double share_at(const Samples& x, double hz) {
  const double step = 2.0 * 3.14159265358979323846 * hz / kRate_hz;
  double c = 0.0, s = 0.0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    c += static_cast<double>(x[i]) * std::cos(step * static_cast<double>(i));
    s += static_cast<double>(x[i]) * std::sin(step * static_cast<double>(i));
  }
  const double n = static_cast<double>(x.size()), level = rms(x);
  return 2.0 * (c * c + s * s) / (n * n * level * level);
}

/// Fundamental by autocorrelation: the shortest lag from 1/2000 to 1/50 s whose correlation is a peak within 2 % of the
/// best one's, refined by a parabola.
inline double fundamental_hz(const Samples& x) {
  const std::size_t first = static_cast<std::size_t>(kRate_hz / 2000.0),
                    last = static_cast<std::size_t>(kRate_hz / 50.0);
  std::vector<double> r(last + 2);
  for (std::size_t lag = first - 1; lag < r.size(); ++lag)
    for (std::size_t i = 0; i + last + 2 < x.size(); ++i)
      r[lag] += static_cast<double>(x[i]) * static_cast<double>(x[i + lag]);
  double best = 0.0;
  for (std::size_t lag = first; lag <= last; ++lag) best = std::fmax(best, r[lag]);
  for (std::size_t lag = first; lag <= last; ++lag) {
    if (r[lag] < 0.98 * best || r[lag] < r[lag - 1] || r[lag] < r[lag + 1]) continue;
    const double bend = r[lag - 1] - 2.0 * r[lag] + r[lag + 1];
    return kRate_hz / (static_cast<double>(lag) + 0.5 * (r[lag - 1] - r[lag + 1]) / bend);
  }
  return 0.0;
}

/// Spectral centroid by differences, Hz: rms of the slope over rms of the signal, over 2 pi. Higher: brighter.
inline double brightness_hz(const Samples& x) {
  Samples d(x.size() - 1);
  for (std::size_t i = 0; i < d.size(); ++i) d[i] = x[i + 1] - x[i];
  return rms(d) * kRate_hz / (2.0 * 3.14159265358979323846 * rms(x));
}

}  // namespace stallwright::samples
