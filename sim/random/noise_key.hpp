#pragma once
#include <type_traits>

#include "sim/random/philox.hpp"

/// Normal numbers by place for any number type of the state path: NoiseKey<T> says whose, and one overload of normal_pair for
/// each T draws them. Lanes (philox_lanes.hpp) get, lane by lane, what a double would.
namespace stallwright::random {

/// Seed and sortie, a pack of lanes for as many sorties; each number holds 32 bits exactly.
template <class T>
struct NoiseKey {
  T seed_low{}, seed_high{}, sortie{};
};

inline NoiseKey<double> noise_key(const Key& key) {
  return {static_cast<double>(static_cast<std::uint32_t>(key.seed)),
          static_cast<double>(static_cast<std::uint32_t>(key.seed >> 32)), static_cast<double>(key.sortie)};
}

/// tick: whole, 0 to below 2^32.
inline std::array<double, 2> normal_pair(const NoiseKey<double>& key, Channel channel, double tick,
                                         std::uint32_t index = 0) {
  const std::uint64_t seed =
      (static_cast<std::uint64_t>(key.seed_high) << 32) | static_cast<std::uint64_t>(key.seed_low);
  return normal_pair({seed, static_cast<std::uint32_t>(key.sortie), channel},
                     static_cast<std::uint64_t>(tick), index);
}

/// The first of the pair.
template <class T>
T normal(const NoiseKey<T>& key, Channel channel, const T& tick, std::uint32_t index = 0) {
  return normal_pair(key, channel, tick, index)[0];
}

}  // namespace stallwright::random
