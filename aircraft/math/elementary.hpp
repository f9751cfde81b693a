#pragma once
#include "aircraft/math/lane_primitives.hpp"

/// Elementary functions of the state path: the same bits on every processor, compiler and lane width.
///
/// The C library's kernels differ between processors, so nothing that moves the aeroplane may call them. Each
/// function here reduces its argument to a small interval and evaluates one polynomial there with plain adds,
/// multiplies and divides; no branch depends on a value. The coefficients are Chebyshev fits made for this
/// file in 60-digit arithmetic from the defining series; the fit error named beside each set is that of the
/// reduced function. The stated error of each function is the largest seen by the tests, with a margin.
namespace stallwright::math {

inline constexpr double kPi = 3.14159265358979323846;
inline constexpr double kDegree = kPi / 180.0;  ///< rad per degree

/// a where the condition holds, otherwise b, lane by lane. Both are always evaluated.
template <class M, class T>
constexpr T where(const M& condition, const T& a, const T& b) {
  return select(condition, a, b);
}
/// Correctly rounded square root (IEEE 754), so the same bits on every processor; NaN below 0.
template <class T>
inline T sqrt(const T& x) {
  return square_root(x);
}
/// b where b < a, otherwise a; and b where a < b, otherwise a. A number type that has one instruction for each may give overloads
/// of these two in its own namespace.
template <class T>
constexpr T smaller_of(const T& a, const T& b) {
  return where(b < a, b, a);
}
template <class T>
constexpr T larger_of(const T& a, const T& b) {
  return where(a < b, b, a);
}
/// Of two equal ones, and where either is a NaN, the first.
template <class T>
constexpr T min(const T& a, const T& b) {
  return smaller_of(a, b);
}
template <class T>
constexpr T max(const T& a, const T& b) {
  return larger_of(a, b);
}
/// x held to [low, high], low <= high; a NaN stays a NaN.
template <class T>
constexpr T clamp(const T& x, const T& low, const T& high) {
  return larger_of(smaller_of(x, high), low);
}
template <class T>
constexpr T abs(const T& x) {
  return larger_of(T(T(0.0) - x), x);
}
/// Nearest integer, ties to even, |x| < 2^51.
template <class T>
constexpr T round(const T& x) {
  return round_to_integer(x);
}
/// Largest integer not above x, |x| < 2^51.
template <class T>
constexpr T floor(const T& x) {
  const T r = round_to_integer(x);
  return where(r > x, r - T(1.0), r);
}

/// c[0] + c[1] z + c[2] z^2 + ... by Horner's rule.
template <class T, int N>
constexpr T polynomial(const T& z, const double (&c)[N]) {
  T sum(c[N - 1]);
#pragma GCC unroll 16
  for (int i = N - 2; i >= 0; --i) sum = sum * z + T(c[i]);
  return sum;
}

/// e^x for -708 <= x <= 709 alone. Relative error below 4e-16.
///   e^x = 2^k e^r,  k = round(x / ln 2),  |r| <= ln(2) / 2;  ln 2 in two parts so that r is exact but for
///   one rounding
template <class T>
constexpr T exp_within(const T& x) {
  constexpr double kLn2High = 0x1.62e42fefa2000p-1, kLn2Low = 0x1.9ef35793c7673p-41;
  constexpr double kFit[] = {0.5,
                             0.1666666666666667,
                             0.04166666666666667,
                             0.008333333333326136,
                             0.0013888888888883748,
                             0.00019841269874820627,
                             2.4801587325547743e-05,
                             2.7557255400206422e-06,
                             2.75572736431103e-07,
                             2.5105217004720745e-08,
                             2.0914686968086876e-09};  // (e^r - 1 - r) / r^2, error 1.4e-18
  const T k = round_to_integer(x * T(1.4426950408889634));
  const T r = (x - k * T(kLn2High)) - k * T(kLn2Low);
  return scale_by_power_of_two(T(1.0) + (r + r * r * polynomial(r, kFit)), k);
}
/// e^x. Relative error below 4e-16 for -708 <= x <= 709; below that 0, above it infinity.
template <class T>
constexpr T exp(const T& x) {
  const T y = exp_within(clamp(x, T(-708.0), T(709.0)));
  return where(x < T(-708.0), T(0.0), where(x > T(709.0), T(__builtin_inf()), y));
}

/// Natural logarithm. Relative error below 4e-16 for positive normal x; 0 and subnormals give minus infinity,
/// negative numbers NaN.
///   ln x = e ln 2 + ln(1 + f),  1 + f in [1/sqrt 2, sqrt 2),  s = f / (2 + f):
///   ln(1 + f) = 2 atanh s = f - (f^2/2 - s (f^2/2 + R)),  R = 2 (s^2/3 + s^4/5 + ...)
template <class T>
constexpr T log(const T& x) {
  constexpr double kLn2High = 0x1.62e42fefa2000p-1, kLn2Low = 0x1.9ef35793c7673p-41;
  constexpr double kFit[] = {0.6666666666666666,  0.4000000000000088,  0.2857142857080323,
                             0.2222222239180047,  0.18181795630884753, 0.15386240205813478,
                             0.13268759668560612, 0.13086767009948175};  // R / s^2, error 2.07e-18
  const auto split = split_exponent(x);
  const auto upper = split.mantissa > T(1.4142135623730951);
  const T f = where(upper, split.mantissa * T(0.5), split.mantissa) - T(1.0);
  const T e = where(upper, split.exponent + T(1.0), split.exponent);
  const T s = f / (T(2.0) + f);
  const T z = s * s;
  const T half_square = T(0.5) * f * f;
  const T tail = s * (half_square + z * polynomial(z, kFit)) + e * T(kLn2Low);
  const T y = e * T(kLn2High) - ((half_square - tail) - f);
  const T positive = where(x < T(2.2250738585072014e-308), T(-__builtin_inf()), y);
  const T finite = where(x > T(1.7976931348623157e308), x, positive);
  return where(x >= T(0.0), finite, T(__builtin_nan("")));
}

/// Sine and cosine together for |x| <= pi/4, without reduction. Relative error below 4e-16.
template <class T>
constexpr void sincos_within_45(const T& x, T& sine, T& cosine) {
  constexpr double kSineFit[] = {
      -0.16666666666666666,   0.008333333333330948,  -0.00019841269836756774, 2.7557316101617874e-06,
      -2.505113165023518e-08, 1.5918115263265974e-10};  // (sin r / r - 1) / r^2, error 2.04e-17
  constexpr double kCosineFit[] = {
      0.041666666666666664,  -0.0013888888888887398, 2.480158729876456e-05, -2.7557317271145144e-07,
      2.087614614655861e-09, -1.1382623647474604e-11};  // (cos r - 1 + r^2/2) / r^4, error 1.28e-18
  const T z = x * x;
  sine = x + x * z * polynomial(z, kSineFit);
  const T half = T(0.5) * z;
  const T near_one = T(1.0) - half;
  // The second bracket gives back what the subtraction above rounded away.
  cosine = near_one + (((T(1.0) - near_one) - half) + z * z * polynomial(z, kCosineFit));
}

/// Sine and cosine together. Relative error below 4e-16 for |x| <= 1e5 rad; beyond that the reduction loses
/// digits in proportion to |x|; infinity gives NaN.
///   r = x - k pi/2,  k = round(2 x / pi),  pi/2 in three parts so that k times the first two is exact
template <class T>
constexpr void sincos(const T& x, T& sine, T& cosine) {
  constexpr double kPart1 = 0x1.921fb54440000p+0, kPart2 = 0x1.68c234c4c0000p-39,
                   kPart3 = 0x1.98a2e03707345p-77;
  const T k = round_to_integer(x * T(0.6366197723675814));
  const T r = ((x - k * T(kPart1)) - k * T(kPart2)) - k * T(kPart3);
  T s(0.0), c(0.0);
  sincos_within_45(r, s, c);
  const T quadrant = k - T(4.0) * floor(k * T(0.25));
  const auto odd = (quadrant == T(1.0)) | (quadrant == T(3.0));
  const auto sine_negative = quadrant > T(1.5);
  const auto cosine_negative = (quadrant == T(1.0)) | (quadrant == T(2.0));
  const T sine_size = where(odd, c, s);
  const T cosine_size = where(odd, s, c);
  sine = where(sine_negative, -sine_size, sine_size);
  cosine = where(cosine_negative, -cosine_size, cosine_size);
}
template <class T>
constexpr T sin(const T& x) {
  T s(0.0), c(0.0);
  sincos(x, s, c);
  return s;
}
template <class T>
constexpr T cos(const T& x) {
  T s(0.0), c(0.0);
  sincos(x, s, c);
  return c;
}
/// Relative error below 8e-16 for |x| <= 1e5.
template <class T>
constexpr T tan(const T& x) {
  T s(0.0), c(0.0);
  sincos(x, s, c);
  return s / c;
}

/// Angle of the point (x, y), in (-pi, pi]. Relative error below 5e-16 for finite x and y; (0, 0) gives 0,
/// and a negative zero counts as zero.
///   t = smaller / larger of |x|, |y|;  above 1/4: atan t = atan(1/2) + atan((t - 1/2) / (1 + t/2)), so
///   |argument| <= 1/3
template <class T>
constexpr T atan2(const T& y, const T& x) {
  constexpr double kHalfPiHigh = 0x1.921fb54442d18p+0, kHalfPiLow = 0x1.1a62633145c07p-54;
  constexpr double kAtanHalfHigh = 0x1.dac670561bb4fp-2, kAtanHalfLow = 0x1.a2b7f222f65e2p-56;
  constexpr double kRestHigh = 0x1.1b6e192ebbe44p+0, kRestLow = 0x1.b1b466a88828ep-54;  // pi/2 - atan(1/2)
  constexpr double kFit[] = {-0.3333333333333333,  0.19999999999997378,  -0.14285714284933687,
                             0.11111111020756197,  -0.09090903764682916, 0.07692126647950116,
                             -0.06662897705714912, 0.0583328967569695,   -0.04869291047239519,
                             0.029230628341980962};  // (atan a / a - 1) / a^2, error 1.45e-17
  const T ax = abs(x), ay = abs(y);
  const auto steep = ay > ax;
  const T large = where(steep, ay, ax);
  const T small = where(steep, ax, ay);
  const auto upper = small > T(0.25) * large;
  // Halving is exact and, between 1/4 and 1, so is the difference: only the quotient is rounded.
  const T numerator = where(upper, small - T(0.5) * large, small);
  const T denominator = where(upper, large + T(0.5) * small, large);
  const T a = numerator / where(denominator == T(0.0), T(1.0), denominator);
  const T z = a * a;
  const T correction = a * z * polynomial(z, kFit);
  const T high =
      where(steep, where(upper, T(kRestHigh), T(kHalfPiHigh)), where(upper, T(kAtanHalfHigh), T(0.0)));
  const T low = where(steep, where(upper, T(kRestLow), T(kHalfPiLow)), where(upper, T(kAtanHalfLow), T(0.0)));
  const T signed_a = where(steep, -a, a);
  const T signed_correction = where(steep, -correction, correction);
  const T first = high + (signed_a + (signed_correction + low));
  const T all = where(x < T(0.0), T(2.0 * kHalfPiHigh) - (first - T(2.0 * kHalfPiLow)), first);
  return where(y < T(0.0), -all, all);
}
template <class T>
constexpr T atan(const T& x) {
  return atan2(x, T(1.0));
}
/// |x| <= 1, otherwise NaN.
template <class T>
inline T asin(const T& x) {
  return atan2(x, sqrt((T(1.0) - x) * (T(1.0) + x)));
}
/// |x| <= 1, otherwise NaN.
template <class T>
inline T acos(const T& x) {
  return atan2(sqrt((T(1.0) - x) * (T(1.0) + x)), x);
}

/// x^y for x > 0 as e^(y ln x). Relative error below 4e-16 (1 + |y ln x|).
template <class T>
constexpr T pow_positive(const T& x, const T& y) {
  return exp(y * log(x));
}

}  // namespace stallwright::math
