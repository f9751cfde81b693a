#pragma once
#include <bit>
#include <cstdint>
#include <cstring>
#if defined(__SSE2__)
#include <immintrin.h>
#endif

#include "aircraft/math/lane_primitives.hpp"

/// Several numbers side by side, one for each of as many aeroplanes: the number type of the state path where many flights
/// are stepped at once. Each operation acts lane by lane and rounds as the same operation on a double does, so a lane
/// carries the bits that its aeroplane would have alone. Compiler vectors of W doubles (W a power of two).
namespace stallwright::math {

template <int W>
struct Mask {
  typedef std::int64_t Bits __attribute__((vector_size(W * 8)));
  Bits bits;
  friend Mask operator&(const Mask& a, const Mask& b) { return {a.bits & b.bits}; }
  friend Mask operator|(const Mask& a, const Mask& b) { return {a.bits | b.bits}; }
  friend Mask operator!(const Mask& a) { return {~a.bits}; }
};

template <int W>
struct Lanes {
  typedef double Vector __attribute__((vector_size(W * 8)));
  using Bits = typename Mask<W>::Bits;
  Vector v;

  Lanes() = default;
  Lanes(double x) : v(x - Vector{}) {}  // every lane; less nothing, which keeps a minus zero
  explicit Lanes(const Vector& x) : v(x) {}

  friend Lanes operator+(const Lanes& a, const Lanes& b) { return Lanes(Vector(a.v + b.v)); }
  friend Lanes operator-(const Lanes& a, const Lanes& b) { return Lanes(Vector(a.v - b.v)); }
  friend Lanes operator*(const Lanes& a, const Lanes& b) { return Lanes(Vector(a.v * b.v)); }
  friend Lanes operator/(const Lanes& a, const Lanes& b) { return Lanes(Vector(a.v / b.v)); }
  friend Lanes operator-(const Lanes& a) { return Lanes(Vector(-a.v)); }
  friend Mask<W> operator<(const Lanes& a, const Lanes& b) { return {a.v < b.v}; }
  friend Mask<W> operator>(const Lanes& a, const Lanes& b) { return {a.v > b.v}; }
  friend Mask<W> operator<=(const Lanes& a, const Lanes& b) { return {a.v <= b.v}; }
  friend Mask<W> operator>=(const Lanes& a, const Lanes& b) { return {a.v >= b.v}; }
  friend Mask<W> operator==(const Lanes& a, const Lanes& b) { return {a.v == b.v}; }
};

template <int W>
Lanes<W> select(const Mask<W>& condition, const Lanes<W>& a, const Lanes<W>& b) {
  return Lanes<W>(typename Lanes<W>::Vector(condition.bits ? a.v : b.v));
}

/// One instruction where the processor has it: it gives its second operand where the first is not the smaller (larger) one.
template <int W>
Lanes<W> smaller_of(const Lanes<W>& a, const Lanes<W>& b) {
#if defined(__AVX512F__)
  if constexpr (W == 8) return Lanes<W>(typename Lanes<W>::Vector(_mm512_min_pd(__m512d(b.v), __m512d(a.v))));
#endif
#if defined(__AVX__)
  if constexpr (W == 4) return Lanes<W>(typename Lanes<W>::Vector(_mm256_min_pd(__m256d(b.v), __m256d(a.v))));
#endif
#if defined(__SSE2__)
  if constexpr (W == 2) return Lanes<W>(typename Lanes<W>::Vector(_mm_min_pd(__m128d(b.v), __m128d(a.v))));
#endif
  return select(b < a, b, a);
}
template <int W>
Lanes<W> larger_of(const Lanes<W>& a, const Lanes<W>& b) {
#if defined(__AVX512F__)
  if constexpr (W == 8) return Lanes<W>(typename Lanes<W>::Vector(_mm512_max_pd(__m512d(b.v), __m512d(a.v))));
#endif
#if defined(__AVX__)
  if constexpr (W == 4) return Lanes<W>(typename Lanes<W>::Vector(_mm256_max_pd(__m256d(b.v), __m256d(a.v))));
#endif
#if defined(__SSE2__)
  if constexpr (W == 2) return Lanes<W>(typename Lanes<W>::Vector(_mm_max_pd(__m128d(b.v), __m128d(a.v))));
#endif
  return select(a < b, b, a);
}

template <int W>
Lanes<W> square_root(const Lanes<W>& x) {
#if defined(__AVX512F__)
  if constexpr (W == 8) return Lanes<W>(typename Lanes<W>::Vector(_mm512_sqrt_pd(__m512d(x.v))));
#endif
#if defined(__AVX__)
  if constexpr (W == 4) return Lanes<W>(typename Lanes<W>::Vector(_mm256_sqrt_pd(__m256d(x.v))));
#endif
#if defined(__SSE2__)
  if constexpr (W == 2) return Lanes<W>(typename Lanes<W>::Vector(_mm_sqrt_pd(__m128d(x.v))));
#endif
  Lanes<W> y;
  for (int i = 0; i < W; ++i) y.v[i] = std::sqrt(x.v[i]);
  return y;
}

template <int W>
Lanes<W> round_to_integer(const Lanes<W>& x) {
  const Lanes<W> no_fraction(6755399441055744.0);  // 1.5 * 2^52, as for a double
  return (x + no_fraction) - no_fraction;
}

template <int W>
Lanes<W> scale_by_power_of_two(const Lanes<W>& x, const Lanes<W>& k) {
  using Bits = typename Lanes<W>::Bits;
  const Bits biased = std::bit_cast<Bits>((k + Lanes<W>(6755399441055744.0 + 1023.0)).v);
  return x * Lanes<W>(std::bit_cast<typename Lanes<W>::Vector>(Bits(biased << 52)));
}

template <int W>
SplitNumber<Lanes<W>> split_exponent(const Lanes<W>& x) {
  using Bits = typename Lanes<W>::Bits;
  using Vector = typename Lanes<W>::Vector;
  const Bits bits = std::bit_cast<Bits>(x.v);
  const Bits field = (bits >> 52) & 0x7FF;
  const Lanes<W> biased =
      Lanes<W>(std::bit_cast<Vector>(Bits(field | 0x4330000000000000))) - Lanes<W>(4503599627370496.0);
  const Bits fraction = (bits & 0x000FFFFFFFFFFFFF) | 0x3FF0000000000000;
  return {Lanes<W>(std::bit_cast<Vector>(fraction)), biased - Lanes<W>(1023.0)};
}

}  // namespace stallwright::math
