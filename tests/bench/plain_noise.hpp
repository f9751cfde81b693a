#pragma once
#include "sim/random/noise_key.hpp"

namespace stallwright::bench {

/// random::normal_pair for a number type that stands for one number: the same words, the rest in T.
template <class T>
std::array<T, 2> plain_normal_pair(const random::NoiseKey<T>& key, random::Channel channel, const T& tick,
                                   std::uint32_t index) {
  const auto whole = [](const T& number) { return static_cast<std::uint64_t>(number.v); };
  const random::Stream stream{(whole(key.seed_high) << 32) | whole(key.seed_low),
                              static_cast<std::uint32_t>(whole(key.sortie)), channel};
  const auto w = random::block(stream, whole(tick), index);
  const T radius = math::sqrt(T(-2.0) * math::log(T(random::open_unit(w[0], w[1]))));
  T sine(0.0), cosine(0.0);
  math::sincos(T(2.0 * math::kPi) * T(random::open_unit(w[2], w[3])), sine, cosine);
  return {radius * cosine, radius * sine};
}

}  // namespace stallwright::bench
