#pragma once
#include <array>
#include <cstdint>

#include "aircraft/math/elementary.hpp"
#include "aircraft/math/vec3.hpp"
#include "sim/air/lag_filter.hpp"
#include "sim/air/transverse_filter.hpp"
#include "sim/air/turbulence_intensity.hpp"
#include "sim/random/noise_key.hpp"

/// Dryden turbulence as the aeroplane meets it: three gust velocities and three gust rates. [MIL-F-8785C 3.7]
///
///   Phi_u = 2 sigma_u^2 L_u / (pi V) / (1 + (L_u w/V)^2)
///   Phi_v,w = sigma^2 L / (pi V) (1 + 3 (L w/V)^2) / (1 + (L w/V)^2)^2
///   Phi_p = sigma_w^2 / (V L_w) 0.8 (pi L_w / (4 b))^(1/3) / (1 + (4 b w / (pi V))^2)
///   q_g = -(1/V) dw_g/dt / (1 + 4 b s / (pi V)),   r_g = +(1/V) dv_g/dt / (1 + 3 b s / (pi V))
///     w  frequency, rad/s; spectra one-sided (their integral from 0 is the variance);  V  true airspeed, m/s
///     b  wing span, m;  sigma, L  see turbulence_intensity.hpp
///
/// What the numbers mean: at a body point r from the reference point, air moves at v_g + omega_g x r.
/// Signs: x points forward and the field is frozen (Taylor), so the air a distance x ahead is what the
/// reference point meets x/V later: d/dx = (1/V) d/dt. omega_g x (x, 0, 0) = (0, r_g x, -q_g x), hence
/// r_g = dv_g/dx and q_g = -dw_g/dx: where the nose runs into a rising downward gust, the air itself turns
/// nose-down. (The specification leaves the sign to the definition of the rate.) p_g = dw_g/dy has its own
/// noise.
///
/// Every filter is stepped exactly for the current V and dt (transverse_filter.hpp); the states have variance
/// 1 and are scaled only on the way out, so a change of speed, height or step leaves the variance right. The
/// specification lays the axes below 1000 ft along the mean wind and the vertical; here body axes are used
/// throughout: sigma_u = sigma_v, so a turn changes nothing, and the tilt of a light aeroplane's normal
/// flight is neglected.
namespace stallwright {

/// White noise of one step: independent standard normal numbers.
template <class T>
struct DrydenNoise {
  T u{}, p{};
  std::array<T, 3> v{}, w{};
};

/// Memory of the filters.
template <class T>
struct DrydenState {
  T u{}, p{};
  TransverseState<T> v{}, w{};
  friend bool operator==(const DrydenState&, const DrydenState&) = default;
};

template <class T>
struct DrydenParams {
  TurbulenceScales<T> scales;
  T span_m;
};

/// Velocity (m/s) and rate (rad/s) of the air, body axes.
template <class T>
struct Gust {
  math::Vec3<T> v_B_mps;
  math::Vec3<T> omega_B_radps;
  friend bool operator==(const Gust&, const Gust&) = default;
};

/// Inverse path lengths of the three rate filters, 1/m: pi/(4b) for p and q, pi/(3b) for r.
template <class T>
constexpr T pitch_lag_per_m(const T& span_m) {
  return T(math::kPi / 4.0) / span_m;
}
template <class T>
constexpr T yaw_lag_per_m(const T& span_m) {
  return T(math::kPi / 3.0) / span_m;
}

/// Standard deviation of p_g, rad/s: the integral of Phi_p, sigma_w^2 0.8 (pi L/(4b))^(1/3) pi^2 / (8 b L).
template <class T>
T roll_rate_sigma(const DrydenParams<T>& d) {
  const T k = pitch_lag_per_m(d.span_m), length = d.scales.length_w_m;
  const T cube_root = math::exp(math::log(k * length) * T(1.0 / 3.0));
  return d.scales.sigma_w_mps * math::sqrt(T(0.8 * math::kPi / 2.0) * cube_root * k / length);
}

/// A state drawn from the stationary distribution, so that no run-in is needed.
template <class T>
DrydenState<T> stationary_start(const DrydenParams<T>& d, const DrydenNoise<T>& n) {
  const auto draw = [](const T& a, const std::array<T, 3>& noise) {
    return correlated(cholesky(stationary_covariance(a)), noise);
  };
  return {n.u, n.p, draw(yaw_lag_per_m(d.span_m) * d.scales.length_v_m, n.v),
          draw(pitch_lag_per_m(d.span_m) * d.scales.length_w_m, n.w)};
}

/// The filters one step later. V below 0 counts as 0: at rest the gust stands still. Valid for V dt up to the
/// shorter of b and L (beyond that the step is too coarse for the filters).
template <class T>
DrydenState<T> advance(const DrydenParams<T>& d, const DrydenState<T>& x, const T& airspeed_mps,
                       const T& dt_s, const DrydenNoise<T>& n) {
  const T path = math::max(airspeed_mps, T(0.0)) * dt_s;
  const TurbulenceScales<T>& s = d.scales;
  const T pitch = pitch_lag_per_m(d.span_m), yaw = yaw_lag_per_m(d.span_m);
  return {lag_step<T>(x.u, path / s.length_u_m, n.u), lag_step<T>(x.p, path * pitch, n.p),
          advance(transverse_step(path / s.length_v_m, yaw * s.length_v_m), x.v, n.v),
          advance(transverse_step(path / s.length_w_m, pitch * s.length_w_m), x.w, n.w)};
}

/// What the air does at this state.
template <class T>
Gust<T> gust(const DrydenParams<T>& d, const DrydenState<T>& x) {
  const TurbulenceScales<T>& s = d.scales;
  const T v = gust_of(x.v), w = gust_of(x.w);
  const T q = -(s.sigma_w_mps * pitch_lag_per_m(d.span_m) * (w - x.w.y));
  const T r = s.sigma_v_mps * yaw_lag_per_m(d.span_m) * (v - x.v.y);
  return {{s.sigma_u_mps * x.u, s.sigma_v_mps * v, s.sigma_w_mps * w}, {roll_rate_sigma(d) * x.p, q, r}};
}

/// Standard deviations in the stationary state, in the places of the quantities themselves.
template <class T>
Gust<T> stationary_sigma(const DrydenParams<T>& d) {
  const TurbulenceScales<T>& s = d.scales;
  const T pitch = pitch_lag_per_m(d.span_m), yaw = yaw_lag_per_m(d.span_m);
  // E(gust - y)^2 = 1 - E y^2, because E(gust y) = E y^2 in the stationary state.
  const auto rate = [](const T& k, const T& length) {
    return k * math::sqrt(T(1.0) - stationary_covariance(k * length).a33);
  };
  return {{s.sigma_u_mps, s.sigma_v_mps, s.sigma_w_mps},
          {roll_rate_sigma(d), s.sigma_w_mps * rate(pitch, s.length_w_m),
           s.sigma_v_mps * rate(yaw, s.length_v_m)}};
}

/// Which normal numbers go to which filter.
///   pair(channel, index)  two of them
template <class T, class Pair>
DrydenNoise<T> dryden_noise_from(Pair&& pair) {
  using random::Channel;
  const std::array<T, 2> u = pair(Channel::kGustU, 0), v = pair(Channel::kGustV, 1),
                         w = pair(Channel::kGustW, 2);
  const std::array<T, 2> last = pair(Channel::kGustP, 3);
  return {u[0], u[1], {v[0], v[1], last[0]}, {w[0], w[1], last[1]}};
}

/// The noise of a step of a sortie; `start` draws that of the stationary start instead.
inline DrydenNoise<double> dryden_noise(const random::Key& key, std::uint64_t tick, bool start = false) {
  using random::Channel;
  return dryden_noise_from<double>([&](Channel channel, std::uint32_t index) {
    return start ? random::normal_pair(key.stream(Channel::kGustStart), 0, index)
                 : random::normal_pair(key.stream(channel), tick);
  });
}

/// The same of several sorties.
template <class T>
requires(!std::is_integral_v<T>) DrydenNoise<T> dryden_noise(const random::NoiseKey<T>& key, const T& tick) {
  return dryden_noise_from<T>(
      [&](random::Channel channel, std::uint32_t) { return normal_pair(key, channel, tick); });
}

}  // namespace stallwright
