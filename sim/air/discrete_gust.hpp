#pragma once
#include "aircraft/math/elementary.hpp"
#include "aircraft/math/vec3.hpp"
#include "sim/air/dryden.hpp"

/// One gust of a known shape, for an instructor to put into a flight and for checks of the response.
///
///   one minus cosine  v = (U/2) (1 - cos(2 pi s/d)) for 0 <= s <= d, otherwise 0           [CFR14-23 23.333(c)]
///                     the regulation's gust has d = 25 mean chords
///   ramp and hold     v = (U/2) (1 - cos(pi s/d)) for 0 <= s <= d, then U, which stays      [MIL-F-8785C 3.7]
///     s  distance flown through the air since the gust was met, m;  U  greatest gust velocity, m/s;  d  length, m
///
/// Axes: up is the earth's vertical; forward and right are level, by the heading at the moment the gust is met, and stay
/// as they are in a turn that follows. (Body axes would bank the gust with the aeroplane.)
/// The gust is alike over the whole span, so it rolls nothing by itself. Along the fuselage it is taken as linear about
/// the reference point, as turbulence is: the nose is in the gust before the wing and the tail after it, told by the
/// rates q_g = -dw/ds and r_g = dv/ds (signs: dryden.hpp). The path is taken along the body's forward axis. Good for
/// lengths well above that of the aeroplane.
namespace stallwright {

enum class GustShape { kOneMinusCosine, kRampAndHold };

/// A gust as planned.
struct DiscreteGust {
  GustShape shape = GustShape::kOneMinusCosine;
  double start_s = 0.0;                        ///< time of the sortie at which it is met
  double length_m = 1.0;                       ///< d, above 0
  math::Vec3<double> peak_mps{0.0, 0.0, 0.0};  ///< U: forward, right, up
  friend bool operator==(const DiscreteGust&, const DiscreteGust&) = default;
};

/// How far into a gust the aeroplane is.
template <class T>
struct DiscreteGustState {
  T distance_m{};           ///< s
  math::Vec3<T> ahead_E{};  ///< unit vector of the heading when it was met, level; zero before that
  friend bool operator==(const DiscreteGustState&, const DiscreteGustState&) = default;
};

/// Share of the peak at a distance, and its slope, 1/m.
template <class T>
struct GustShare {
  T share, slope_per_m;
};

/// Shape of the gust at s: before 0 nothing, past d nothing (one minus cosine) or the peak (ramp and hold).
template <class T>
GustShare<T> gust_share(GustShape shape, const T& distance_m, double length_m) {
  const bool holds = shape == GustShape::kRampAndHold;
  const T wave_per_m((holds ? 1.0 : 2.0) * math::kPi / length_m);
  T sine(0.0), cosine(1.0);
  const T s = math::clamp(distance_m, T(0.0), T(length_m));
  math::sincos(wave_per_m * s, sine, cosine);
  const auto within = (distance_m >= T(0.0)) & (T(length_m) >= distance_m);
  const T after = math::where(distance_m > T(length_m), T(holds ? 1.0 : 0.0), T(0.0));
  return {math::where(within, T(0.5) * (T(1.0) - cosine), after),
          math::where(within, T(0.5) * wave_per_m * sine, T(0.0))};
}

/// What the air does at this state.
///   to_B  rotation from earth to body axes
template <class T>
Gust<T> gust(const DiscreteGust& g, const DiscreteGustState<T>& x, const math::Mat3<T>& to_B) {
  const math::Vec3<T>&ahead = x.ahead_E, right{-ahead.y, ahead.x, T(0.0)}, up{T(0.0), T(0.0), T(-1.0)};
  const math::Vec3<T> peak_B =
      to_B * (ahead * T(g.peak_mps.x) + right * T(g.peak_mps.y) + up * T(g.peak_mps.z));
  const GustShare<T> at = gust_share(g.shape, x.distance_m, g.length_m);
  return {peak_B * at.share, {T(0.0), -(peak_B.z * at.slope_per_m), peak_B.y * at.slope_per_m}};
}

/// The distance one step later; the gust is met at the first step that begins at its start or after it.
///   forward_E  the body's forward axis, earth axes (not vertical when the gust is met)
template <class T>
DiscreteGustState<T> advance(const DiscreteGust& g, const DiscreteGustState<T>& x, const T& time_s,
                             const math::Vec3<T>& forward_E, const T& airspeed_mps, const T& dt_s) {
  const auto begun = time_s >= T(g.start_s);
  const auto first = begun & (x.ahead_E.x == T(0.0)) & (x.ahead_E.y == T(0.0));
  const T level = math::sqrt(forward_E.x * forward_E.x + forward_E.y * forward_E.y);
  const T over = T(1.0) / math::max(level, T(1e-9));
  DiscreteGustState<T> out = x;
  out.ahead_E.x = math::where(first, forward_E.x * over, x.ahead_E.x);
  out.ahead_E.y = math::where(first, forward_E.y * over, x.ahead_E.y);
  out.distance_m = x.distance_m + math::where(begun, math::max(airspeed_mps, T(0.0)) * dt_s, T(0.0));
  return out;
}

}  // namespace stallwright
