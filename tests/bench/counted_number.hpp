#pragma once
#include "aircraft/math/lane_primitives.hpp"
#include "tests/bench/kernels.hpp"

namespace stallwright::bench {

inline Operations so_far;

/// What comparing Counted gives: like a mask of lanes, no plain truth value.
struct CountedMask {
  bool holds;
  friend CountedMask operator&(CountedMask a, CountedMask b) { return {a.holds && b.holds}; }
  friend CountedMask operator|(CountedMask a, CountedMask b) { return {a.holds || b.holds}; }
  friend CountedMask operator!(CountedMask a) { return {!a.holds}; }
};

inline CountedMask compared(bool holds) { return ++so_far.comparisons, CountedMask{holds}; }

/// A double that counts what is done to it. A change of sign is free.
struct Counted {
  double v;

  Counted() = default;
  constexpr Counted(double x) : v(x) {}

  friend Counted operator+(const Counted& a, const Counted& b) { return ++so_far.additions, a.v + b.v; }
  friend Counted operator-(const Counted& a, const Counted& b) { return ++so_far.additions, a.v - b.v; }
  friend Counted operator*(const Counted& a, const Counted& b) { return ++so_far.multiplications, a.v * b.v; }
  friend Counted operator/(const Counted& a, const Counted& b) { return ++so_far.divisions, a.v / b.v; }
  friend Counted operator-(const Counted& a) { return -a.v; }
  friend CountedMask operator<(const Counted& a, const Counted& b) { return compared(a.v < b.v); }
  friend CountedMask operator>(const Counted& a, const Counted& b) { return compared(a.v > b.v); }
  friend CountedMask operator<=(const Counted& a, const Counted& b) { return compared(a.v <= b.v); }
  friend CountedMask operator>=(const Counted& a, const Counted& b) { return compared(a.v >= b.v); }
  friend CountedMask operator==(const Counted& a, const Counted& b) { return compared(a.v == b.v); }
};

inline Counted select(const CountedMask& condition, const Counted& a, const Counted& b) {
  return ++so_far.selections, condition.holds ? a : b;
}
inline Counted square_root(const Counted& x) { return ++so_far.roots, math::square_root(x.v); }
inline Counted round_to_integer(const Counted& x) {
  return so_far.additions += 2, math::round_to_integer(x.v);
}
inline Counted scale_by_power_of_two(const Counted& x, const Counted& k) {
  ++so_far.additions, ++so_far.multiplications, ++so_far.bit_steps;
  return math::scale_by_power_of_two(x.v, k.v);
}
inline math::SplitNumber<Counted> split_exponent(const Counted& x) {
  so_far.additions += 2, ++so_far.bit_steps;
  const math::SplitNumber<double> split = math::split_exponent(x.v);
  return {split.mantissa, split.exponent};
}

}  // namespace stallwright::bench
