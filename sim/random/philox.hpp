#pragma once
#include <array>
#include <cstdint>

#include "aircraft/math/elementary.hpp"
#include "sim/random/channels.hpp"

/// Random numbers without a generator: each number is a pure function of where it belongs.
///
/// Philox 4x32-10 is a keyed bijection of 128-bit counters, ten rounds of                       [SALMON-2011]
///   (c0, c1, c2, c3) -> (hi(M1 c2) ^ c1 ^ k0, lo(M1 c2), hi(M0 c0) ^ c3 ^ k1, lo(M0 c0)),
///   with the key raised by (W0, W1) between rounds.
/// A number's place (seed, sortie, channel, tick, index) goes into key and counter one to one:
///   key = (seed low, seed high),  counter = (tick low, tick high, sortie, channel * 65536 + index)
/// so, with channel and index below 65536, no two places share a block. Order and thread do not matter.
namespace stallwright::random {

/// One keyed block: four random words for a counter.
constexpr std::array<std::uint32_t, 4> philox4x32_10(std::array<std::uint32_t, 4> counter,
                                                     std::array<std::uint32_t, 2> key) {
  constexpr std::uint64_t kM0 = 0xD2511F53u, kM1 = 0xCD9E8D57u;  // [SALMON-2011] multipliers, table 2
  constexpr std::uint32_t kW0 = 0x9E3779B9u,
                          kW1 = 0xBB67AE85u;  // golden ratio and sqrt(3) - 1, as 32-bit fractions
  for (int round = 0; round < 10; ++round) {
    const std::uint64_t a = kM0 * counter[0], b = kM1 * counter[2];
    counter = {static_cast<std::uint32_t>(b >> 32) ^ counter[1] ^ key[0], static_cast<std::uint32_t>(b),
               static_cast<std::uint32_t>(a >> 32) ^ counter[3] ^ key[1], static_cast<std::uint32_t>(a)};
    key[0] += kW0;
    key[1] += kW1;
  }
  return counter;
}

/// The numbers of one purpose in one sortie.
struct Stream {
  std::uint64_t seed = 0;
  std::uint32_t sortie = 0;
  Channel channel = Channel::kCard;
  friend bool operator==(const Stream&, const Stream&) = default;
};

/// The numbers of one sortie.
struct Key {
  std::uint64_t seed = 0;
  std::uint32_t sortie = 0;
  constexpr Stream stream(Channel channel) const { return {seed, sortie, channel}; }
  friend bool operator==(const Key&, const Key&) = default;
};

/// The block that belongs to a place. tick counts steps, samples or draws; index < 65536 numbers draws in a
/// tick.
constexpr std::array<std::uint32_t, 4> block(const Stream& s, std::uint64_t tick, std::uint32_t index = 0) {
  return philox4x32_10({static_cast<std::uint32_t>(tick), static_cast<std::uint32_t>(tick >> 32), s.sortie,
                        (static_cast<std::uint32_t>(s.channel) << 16) | (index & 0xFFFFu)},
                       {static_cast<std::uint32_t>(s.seed), static_cast<std::uint32_t>(s.seed >> 32)});
}

/// Two words as a number in the open interval (0, 1): the middle of one of 2^52 equal cells, exact.
constexpr double open_unit(std::uint32_t high, std::uint32_t low) {
  const std::uint64_t cell = ((static_cast<std::uint64_t>(high) << 32) | low) >> 12;
  return (static_cast<double>(cell) + 0.5) * 0x1p-52;
}

/// Uniform in (0, 1); neither end occurs.
constexpr double uniform(const Stream& s, std::uint64_t tick, std::uint32_t index = 0) {
  const auto w = block(s, tick, index);
  return open_unit(w[0], w[1]);
}

/// Two independent standard normal numbers, each |value| < 8.6, by Box and Muller:
///   sqrt(-2 ln u1) (cos(2 pi u2), sin(2 pi u2)).
inline std::array<double, 2> normal_pair(const Stream& s, std::uint64_t tick, std::uint32_t index = 0) {
  const auto w = block(s, tick, index);
  const double radius = math::sqrt(-2.0 * math::log(open_unit(w[0], w[1])));
  double sine = 0.0, cosine = 0.0;
  math::sincos(2.0 * math::kPi * open_unit(w[2], w[3]), sine, cosine);
  return {radius * cosine, radius * sine};
}

/// One standard normal number: the first of the pair.
inline double normal(const Stream& s, std::uint64_t tick, std::uint32_t index = 0) {
  return normal_pair(s, tick, index)[0];
}

}  // namespace stallwright::random
