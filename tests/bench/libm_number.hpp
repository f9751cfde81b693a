#pragma once
// Must come before every header of aircraft/ and sim/: those call math::exp(...) by its full name, and such a call sees only
// what was declared before it.
#include <cmath>

#include "aircraft/math/lane_primitives.hpp"

namespace stallwright::bench {

/// A double whose elementary functions are those of the C library: what the flight would cost with them. All else is as for
/// a double.
struct Libm {
  double v;

  Libm() = default;
  constexpr Libm(double x) : v(x) {}

  friend constexpr Libm operator+(const Libm& a, const Libm& b) { return {a.v + b.v}; }
  friend constexpr Libm operator-(const Libm& a, const Libm& b) { return {a.v - b.v}; }
  friend constexpr Libm operator*(const Libm& a, const Libm& b) { return {a.v * b.v}; }
  friend constexpr Libm operator/(const Libm& a, const Libm& b) { return {a.v / b.v}; }
  friend constexpr Libm operator-(const Libm& a) { return {-a.v}; }
  friend constexpr bool operator<(const Libm& a, const Libm& b) { return a.v < b.v; }
  friend constexpr bool operator>(const Libm& a, const Libm& b) { return a.v > b.v; }
  friend constexpr bool operator<=(const Libm& a, const Libm& b) { return a.v <= b.v; }
  friend constexpr bool operator>=(const Libm& a, const Libm& b) { return a.v >= b.v; }
  friend constexpr bool operator==(const Libm& a, const Libm& b) { return a.v == b.v; }
};

constexpr Libm select(bool condition, const Libm& a, const Libm& b) { return condition ? a : b; }
inline Libm square_root(const Libm& x) { return {std::sqrt(x.v)}; }
constexpr Libm round_to_integer(const Libm& x) { return {math::round_to_integer(x.v)}; }

}  // namespace stallwright::bench

namespace stallwright::math {

using bench::Libm;
inline Libm exp(const Libm& x) { return {std::exp(x.v)}; }
inline Libm exp_within(const Libm& x) { return exp(x); }
inline Libm log(const Libm& x) { return {std::log(x.v)}; }
inline void sincos(const Libm& x, Libm& sine, Libm& cosine) { ::sincos(x.v, &sine.v, &cosine.v); }
inline void sincos_within_45(const Libm& x, Libm& sine, Libm& cosine) { sincos(x, sine, cosine); }
inline Libm sin(const Libm& x) { return {std::sin(x.v)}; }
inline Libm cos(const Libm& x) { return {std::cos(x.v)}; }
inline Libm tan(const Libm& x) { return {std::tan(x.v)}; }
inline Libm atan2(const Libm& y, const Libm& x) { return {std::atan2(y.v, x.v)}; }
inline Libm atan(const Libm& x) { return {std::atan(x.v)}; }
inline Libm asin(const Libm& x) { return {std::asin(x.v)}; }
inline Libm acos(const Libm& x) { return {std::acos(x.v)}; }
inline Libm pow_positive(const Libm& x, const Libm& y) { return {std::pow(x.v, y.v)}; }

}  // namespace stallwright::math
