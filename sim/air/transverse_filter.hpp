#pragma once
#include <array>

#include "aircraft/math/elementary.hpp"

/// The Dryden filter of one transverse gust (v or w) together with the filter of its gradient along the
/// flight path (r_g or q_g), stepped exactly.
///
///   H(s) = (1 + sqrt3 s) / (1 + s)^2  for the gust,                              [MIL-F-8785C 3.7]
///   y = gust / (1 + s/a)              for its lagged copy
/// in the dimensionless time t' = V t / L, driven by white noise of unit intensity. As two lags in a row:
///   dx1/dt' = -x1 + n,   dx2/dt' = -x2 + x1,   gust = sqrt3 x1 + (1 - sqrt3) x2,   dy/dt' = a (gust - y)
/// The gust has variance 1 exactly (the specification's own noise has a one-sided density of 1 per rad/s,
/// which is pi times stronger than unit intensity and is made up by its 1/pi; with unit noise taken into its
/// formula as printed the variance would be sigma^2/pi). The gradient along the path is a (gust - y) in units
/// of sigma / L.
///
/// The step is exact: x(t' + h) = Phi(h) x + G n with G G^T = P - Phi P Phi^T, P the stationary covariance. P
/// does not depend on V or h, so neither a change of speed nor the choice of the step changes the variance. P
/// depends on a only through y; while a changes with height y follows in the filter's own time.
/// Valid for h >= 0 and a > 0. Where |a - 1| h is at most 1.1 two integrals are summed as series (error below 1e-11),
/// beyond that they have closed forms: a field much shorter than a step comes out as noise of its own variance.
namespace stallwright {

inline constexpr double kSqrt3 = 1.7320508075688772;

template <class T>
struct TransverseState {
  T x1{}, x2{}, y{};
  friend bool operator==(const TransverseState&, const TransverseState&) = default;
};

/// Gust in units of sigma.
template <class T>
constexpr T gust_of(const TransverseState<T>& s) {
  return T(kSqrt3) * s.x1 + T(1.0 - kSqrt3) * s.x2;
}

/// Symmetric 3 x 3 matrix, or the lower triangle of a factor, in the order x1, x2, y.
template <class T>
struct Lower3 {
  T a11, a21, a22, a31, a32, a33;
};

/// Stationary covariance of (x1, x2, y), from A P + P A^T + B B^T = 0.
template <class T>
constexpr Lower3<T> stationary_covariance(const T& a) {
  const T p31 = a / (T(1.0) + a) * T(kSqrt3 / 2.0 + (1.0 - kSqrt3) / 4.0);
  const T p32 = (p31 + a * T(0.25)) / (T(1.0) + a);
  return {T(0.5), T(0.25), T(0.25), p31, p32, T(kSqrt3) * p31 + T(1.0 - kSqrt3) * p32};
}

/// Lower triangular root of a covariance. A pivot that round-off has made negative, or left without meaning
/// (the covariances here are of order 1, so below 1e-30), counts as zero: then nothing is drawn in that
/// direction.
template <class T>
Lower3<T> cholesky(const Lower3<T>& q) {
  const auto root = [](const T& pivot) { return math::sqrt(math::max(pivot, T(0.0))); };
  const auto over = [](const T& x, const T& pivot) {
    const auto usable = pivot > T(1e-15);
    return math::where(usable, x / math::where(usable, pivot, T(1.0)), T(0.0));
  };
  Lower3<T> l{};
  l.a11 = root(q.a11);
  l.a21 = over(q.a21, l.a11);
  l.a31 = over(q.a31, l.a11);
  l.a22 = root(q.a22 - l.a21 * l.a21);
  l.a32 = over(q.a32 - l.a31 * l.a21, l.a22);
  l.a33 = root(q.a33 - l.a31 * l.a31 - l.a32 * l.a32);
  return l;
}

/// Transition matrix over h (its diagonal is phi_x, phi_x, phi_y) and root of the noise covariance.
template <class T>
struct TransverseStep {
  T phi_x, phi_y, phi_21, phi_31, phi_32;
  Lower3<T> noise;
};

/// Largest |a - 1| h for which the series of the step are summed.
inline constexpr double kSeriesReach = 1.1;

template <class T>
TransverseStep<T> transverse_step(const T& h, const T& a) {
  // int_0^1 e^(z r) dr = sum z^k / (k + 1)!  and  int_0^1 r e^(z r) dr = sum z^k / (k! (k + 2)), as series,
  // because their closed forms are 0/0 where the two lags are equal (a = 1), which a climb does pass through.
  // Far from there the closed forms serve, (e^-h - e^-ah)/(a - 1) and (h e^-h - that)/(a - 1), e^-ah included.
  constexpr double kZeroth[] = {1.0,
                                1.0 / 2,
                                1.0 / 6,
                                1.0 / 24,
                                1.0 / 120,
                                1.0 / 720,
                                1.0 / 5040,
                                1.0 / 40320,
                                1.0 / 362880,
                                1.0 / 3628800,
                                1.0 / 39916800,
                                1.0 / 479001600,
                                1.0 / 6227020800,
                                1.0 / 87178291200};
  constexpr double kFirst[] = {1.0 / 2,          1.0 / 3,          1.0 / 8,        1.0 / 30,
                               1.0 / 144,        1.0 / 840,        1.0 / 5760,     1.0 / 45360,
                               1.0 / 403200,     1.0 / 3991680,    1.0 / 43545600, 1.0 / 518918400,
                               1.0 / 6706022400, 1.0 / 93405312000};
  const T span = (a - T(1.0)) * h, z = math::clamp(span, T(-kSeriesReach), T(kSeriesReach));
  const T zeroth = h * math::polynomial(z, kZeroth), first = h * h * math::polynomial(z, kFirst);

  TransverseStep<T> s{};
  s.phi_x = math::exp(-h);
  s.phi_y = math::exp(-a * h);
  s.phi_21 = s.phi_x * h;
  const auto near = T(kSeriesReach) >= math::abs(span);
  const T apart = math::where(near, T(1.0), a - T(1.0));
  const T far_zeroth = (s.phi_x - s.phi_y) / apart, far_first = (s.phi_21 - far_zeroth) / apart;
  s.phi_31 = math::where(near, a * s.phi_y * (T(kSqrt3) * zeroth + T(1.0 - kSqrt3) * first),
                         a * (T(kSqrt3) * far_zeroth + T(1.0 - kSqrt3) * far_first));
  s.phi_32 = math::where(near, a * s.phi_y * T(1.0 - kSqrt3) * zeroth, a * T(1.0 - kSqrt3) * far_zeroth);

  // P - Phi P Phi^T, row by row; m is Phi P.
  const Lower3<T> p = stationary_covariance(a);
  const T m11 = s.phi_x * p.a11;
  const T m21 = s.phi_21 * p.a11 + s.phi_x * p.a21, m22 = s.phi_21 * p.a21 + s.phi_x * p.a22;
  const T m31 = s.phi_31 * p.a11 + s.phi_32 * p.a21 + s.phi_y * p.a31;
  const T m32 = s.phi_31 * p.a21 + s.phi_32 * p.a22 + s.phi_y * p.a32;
  const T m33 = s.phi_31 * p.a31 + s.phi_32 * p.a32 + s.phi_y * p.a33;
  s.noise = cholesky(Lower3<T>{p.a11 - m11 * s.phi_x, p.a21 - m21 * s.phi_x,
                               p.a22 - (m21 * s.phi_21 + m22 * s.phi_x), p.a31 - m31 * s.phi_x,
                               p.a32 - (m31 * s.phi_21 + m32 * s.phi_x),
                               p.a33 - (m31 * s.phi_31 + m32 * s.phi_32 + m33 * s.phi_y)});
  return s;
}

/// L n: three independent standard normal numbers given the covariance L L^T.
template <class T>
constexpr TransverseState<T> correlated(const Lower3<T>& l, const std::array<T, 3>& n) {
  return {l.a11 * n[0], l.a21 * n[0] + l.a22 * n[1], l.a31 * n[0] + l.a32 * n[1] + l.a33 * n[2]};
}

template <class T>
TransverseState<T> advance(const TransverseStep<T>& s, const TransverseState<T>& x,
                           const std::array<T, 3>& n) {
  const TransverseState<T> noise = correlated(s.noise, n);
  return {s.phi_x * x.x1 + noise.x1, s.phi_21 * x.x1 + s.phi_x * x.x2 + noise.x2,
          s.phi_31 * x.x1 + s.phi_32 * x.x2 + s.phi_y * x.y + noise.y};
}

}  // namespace stallwright
