#pragma once
#include "aircraft/math/lanes.hpp"
#include "sim/random/noise_key.hpp"

/// philox.hpp lane by lane: the same words, and from them the same normal numbers.
namespace stallwright::random {

namespace detail {

/// Words of 32 bits, one in the low half of each 64-bit lane.
template <int W>
struct WordLanes {
  typedef std::uint64_t Bits __attribute__((vector_size(W * 8)));
};
template <int W>
using Words = typename WordLanes<W>::Bits;

template <int W>
Words<W> words(const math::Lanes<W>& whole) {
  const math::Lanes<W> shifted =
      whole + math::Lanes<W>(4503599627370496.0);  // 2^52: the bits of a whole number below it
  return std::bit_cast<Words<W>>(shifted.v) & 0xFFFFFFFFu;
}

/// Full product of the low halves.
template <int W>
Words<W> product(const Words<W>& a, std::uint64_t b) {
#if defined(__AVX512F__)
  if constexpr (W == 8)
    return std::bit_cast<Words<W>>(
        _mm512_mul_epu32(std::bit_cast<__m512i>(a), _mm512_set1_epi64(static_cast<std::int64_t>(b))));
#endif
#if defined(__AVX2__)
  if constexpr (W == 4)
    return std::bit_cast<Words<W>>(
        _mm256_mul_epu32(std::bit_cast<__m256i>(a), _mm256_set1_epi64x(static_cast<std::int64_t>(b))));
#endif
#if defined(__SSE2__)
  if constexpr (W == 2)
    return std::bit_cast<Words<W>>(
        _mm_mul_epu32(std::bit_cast<__m128i>(a), _mm_set1_epi64x(static_cast<std::int64_t>(b))));
#endif
  return a * b;
}

template <int W>
std::array<Words<W>, 4> philox4x32_10(std::array<Words<W>, 4> counter, std::array<Words<W>, 2> key) {
  constexpr std::uint64_t kM0 = 0xD2511F53u, kM1 = 0xCD9E8D57u;  // as in philox.hpp
  constexpr std::uint64_t kW0 = 0x9E3779B9u, kW1 = 0xBB67AE85u, kLow = 0xFFFFFFFFu;
#pragma GCC unroll 10
  for (int round = 0; round < 10; ++round) {
    const Words<W> a = product<W>(counter[0], kM0), b = product<W>(counter[2], kM1);
    counter = {(b >> 32) ^ counter[1] ^ key[0], b & kLow, (a >> 32) ^ counter[3] ^ key[1], a & kLow};
    key = {(key[0] + kW0) & kLow, (key[1] + kW1) & kLow};
  }
  return counter;
}

template <int W>
math::Lanes<W> open_unit(const Words<W>& high, const Words<W>& low) {
  const Words<W> cell = ((high << 32) | low) >> 12;  // 52 bits
  const Words<W> bits = cell | 0x4330000000000000u;  // 2^52 + cell
  using Vector = typename math::Lanes<W>::Vector;
  const math::Lanes<W> whole =
      math::Lanes<W>(std::bit_cast<Vector>(bits)) - math::Lanes<W>(4503599627370496.0);
  return (whole + math::Lanes<W>(0.5)) * math::Lanes<W>(0x1p-52);
}

}  // namespace detail

template <int W>
std::array<math::Lanes<W>, 2> normal_pair(const NoiseKey<math::Lanes<W>>& key, Channel channel,
                                          const math::Lanes<W>& tick, std::uint32_t index = 0) {
  using T = math::Lanes<W>;
  const detail::Words<W> place =
      detail::Words<W>{} + ((static_cast<std::uint64_t>(channel) << 16) | (index & 0xFFFFu));
  const auto w =
      detail::philox4x32_10<W>({detail::words(tick), detail::Words<W>{}, detail::words(key.sortie), place},
                               {detail::words(key.seed_low), detail::words(key.seed_high)});
  const T radius = math::sqrt(T(-2.0) * math::log(detail::open_unit<W>(w[0], w[1])));
  T sine(0.0), cosine(0.0);
  math::sincos(T(2.0 * math::kPi) * detail::open_unit<W>(w[2], w[3]), sine, cosine);
  return {radius * cosine, radius * sine};
}

}  // namespace stallwright::random
