#pragma once
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

/// The few parts that every voice is built of. All are plain values; a rate is that of the samples, Hz.
namespace stallwright::sound {

/// White noise, -1 .. 1, from its own state: same start, same noise (a 64-bit xorshift with a multiplied output).
struct Noise {
  std::uint64_t state = 1;  ///< never 0
  double next() {
    state ^= state >> 12;
    state ^= state << 25;
    state ^= state >> 27;
    return static_cast<double>((state * 0x2545f4914f6cdd1dULL) >> 11) * 0x1p-52 - 1.0;
  }
};

/// Value that moves towards its aim by at most `step` a sample and then stands exactly on it: no clicks, true silence.
inline double moved(double value, double aim, double step) {
  return value + std::clamp(aim - value, -step, step);
}

/// Share of the way to its aim that a first-order lag covers in one sample.
///   lag_s  time constant
inline double share_a_sample(double lag_s, double rate) { return 1.0 - std::exp(-1.0 / (lag_s * rate)); }

/// Likewise for a low-pass filter with this corner.
inline double share_at_corner(double corner_hz, double rate) {
  return 1.0 - std::exp(-2.0 * std::numbers::pi * corner_hz / rate);
}

/// First-order low-pass filter.
struct LowPass {
  double held = 0.0;
  double next(double in, double share) { return held += (in - held) * share; }
};

/// Turns of an oscillator, 0 .. 1.
struct Turns {
  double at = 0.0;
  double next(double hz, double rate) {
    at += hz / rate;
    return at -= std::floor(at);
  }
};

inline double sine(double turns) { return std::sin(2.0 * std::numbers::pi * turns); }

}  // namespace stallwright::sound
