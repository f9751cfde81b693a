#pragma once
#include <array>
#include <cstdint>

#include "aircraft/airframe_state.hpp"
#include "aircraft/math/elementary.hpp"
#include "sim/random/noise_key.hpp"

namespace stallwright {

/// Unsteadiness of separated flow, as unit-variance noise that the airframe scales by how much is separated.
/// Each channel is a second-order autoregression, a resonance at the shedding frequency with broad damping:
///   y_k = 2 r cos(theta) y_{k-1} - r^2 y_{k-2} + s e_k,   theta = 2 pi f dt,  r = exp(-zeta theta)
///   s^2 = (1 - r^2)(1 + r^4 - 2 r^2 cos 2 theta)/(1 + r^2)        makes the variance one   (closed form of
///   AR(2)) f = St V/c,  St = 0.2 on the frontal height of the section, taken as c sin(stall angle) with sin
///   0.3: 0.6 V/c (bluff-body shedding, Roshko's Strouhal number, from memory); held between 2 and 15 Hz.
template <class T>
struct ShakeState {
  std::array<T, kShakes> now{}, before{};
  friend bool operator==(const ShakeState&, const ShakeState&) = default;
};

template <class T>
ShakeState<T> advance_shake(const ShakeState<T>& s, T airspeed_mps, double chord_m, double step_s,
                            const std::array<T, kShakes>& noise) {
  constexpr double kDamping = 0.3;
  const T frequency = math::clamp(T(0.6) * airspeed_mps / chord_m, T(2), T(15));
  const T theta = frequency * (2.0 * math::kPi * step_s);
  const T r = math::exp(-kDamping * theta), r2 = r * r;
  const T gain =
      math::sqrt((T(1) - r2) * (T(1) + r2 * r2 - T(2) * r2 * math::cos(T(2) * theta)) / (T(1) + r2));
  const T feed = T(2) * r * math::cos(theta);
  ShakeState<T> next;
  for (std::size_t k = 0; k < kShakes; ++k) {
    next.now[k] = feed * s.now[k] - r2 * s.before[k] + gain * noise[k];
    next.before[k] = s.now[k];
  }
  return next;
}

/// The noise of one step of a sortie.
inline std::array<double, kShakes> shake_noise(const random::Key& key, std::uint64_t step) {
  std::array<double, kShakes> noise{};
  for (std::size_t k = 0; k < kShakes; ++k)
    noise[k] = random::normal(key.stream(random::Channel::kBuffet), step, static_cast<std::uint32_t>(k));
  return noise;
}

/// The same of several sorties.
template <class T>
requires(!std::is_integral_v<T>) std::array<T, kShakes> shake_noise(const random::NoiseKey<T>& key,
                                                                    const T& step) {
  std::array<T, kShakes> noise;
  for (std::size_t k = 0; k < kShakes; ++k)
    noise[k] = normal(key, random::Channel::kBuffet, step, static_cast<std::uint32_t>(k));
  return noise;
}

}  // namespace stallwright
