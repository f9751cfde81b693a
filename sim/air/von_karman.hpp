#pragma once
#include <array>
#include <cstdint>

#include "sim/air/dryden.hpp"
#include "sim/air/lag_filter.hpp"
#include "sim/air/von_karman_fields.hpp"

/// Von Karman turbulence as the aeroplane meets it: three gust velocities and three gust rates. [MIL-F-8785C 3.7]
///
/// u, v, w are sums of independent Dryden fields of several scale lengths (von_karman_fields.hpp: spectra, fit and its
/// error). The gust rates are the specification's, the same for both models:
///   q_g = -(1/V) dw_g/dt / (1 + 4 b s / (pi V)),   r_g = +(1/V) dv_g/dt / (1 + 3 b s / (pi V)),
/// applied field by field, which is the same because they are linear; p_g has its own noise, as in dryden.hpp, and the
/// same spectrum. Axes, signs and symbols are dryden.hpp's too.
///
/// Every field is stepped exactly for the current V and dt, its states have variance 1, and shares and sigma are
/// applied on the way out: the variance does not depend on step, speed or height. The shortest fields are shorter than a
/// step; there they are noise that keeps its variance.
namespace stallwright {

template <class T>
using PerField = std::array<T, kVonKarmanFields>;

/// White noise of one step: independent standard normal numbers.
template <class T>
struct VonKarmanNoise {
  PerField<T> u{};
  T p{};
  PerField<std::array<T, 3>> v{}, w{};
};

/// Memory of the filters.
template <class T>
struct VonKarmanState {
  PerField<T> u{};
  T p{};
  PerField<TransverseState<T>> v{}, w{};
  friend bool operator==(const VonKarmanState&, const VonKarmanState&) = default;
};

template <class T>
struct VonKarmanParams {
  TurbulenceScales<T> scales;
  T span_m;
};

/// Standard deviation of p_g, rad/s; Phi_p does not ask which model the rest has.
template <class T>
T roll_rate_sigma(const VonKarmanParams<T>& d) {
  return roll_rate_sigma(DrydenParams<T>{d.scales, d.span_m});
}

/// A state drawn from the stationary distribution, so that no run-in is needed.
template <class T>
VonKarmanState<T> stationary_start(const VonKarmanParams<T>& d, const VonKarmanNoise<T>& n) {
  VonKarmanState<T> x{};
  x.u = n.u;
  x.p = n.p;
  for (std::size_t i = 0; i < kVonKarmanFields; ++i) {
    const auto draw = [&](const T& lag_per_m, const T& length, const std::array<T, 3>& noise) {
      return correlated(cholesky(stationary_covariance(lag_per_m * length * T(kFieldLengths[i]))), noise);
    };
    x.v[i] = draw(yaw_lag_per_m(d.span_m), d.scales.length_v_m, n.v[i]);
    x.w[i] = draw(pitch_lag_per_m(d.span_m), d.scales.length_w_m, n.w[i]);
  }
  return x;
}

/// The filters one step later. V below 0 counts as 0: at rest the gust stands still. Valid for V dt up to b.
template <class T>
VonKarmanState<T> advance(const VonKarmanParams<T>& d, const VonKarmanState<T>& x, const T& airspeed_mps,
                          const T& dt_s, const VonKarmanNoise<T>& n) {
  const T path = math::max(airspeed_mps, T(0.0)) * dt_s;
  const TurbulenceScales<T>& s = d.scales;
  const T pitch = pitch_lag_per_m(d.span_m), yaw = yaw_lag_per_m(d.span_m);
  VonKarmanState<T> out{};
  out.p = lag_step<T>(x.p, path * pitch, n.p);
  for (std::size_t i = 0; i < kVonKarmanFields; ++i) {
    const T length(kFieldLengths[i]);
    const T lu = s.length_u_m * length, lv = s.length_v_m * length, lw = s.length_w_m * length;
    out.u[i] = lag_step<T>(x.u[i], path / lu, n.u[i]);
    out.v[i] = advance(transverse_step(path / lv, yaw * lv), x.v[i], n.v[i]);
    out.w[i] = advance(transverse_step(path / lw, pitch * lw), x.w[i], n.w[i]);
  }
  return out;
}

/// What the air does at this state.
template <class T>
Gust<T> gust(const VonKarmanParams<T>& d, const VonKarmanState<T>& x) {
  const TurbulenceScales<T>& s = d.scales;
  T u(0.0), v(0.0), w(0.0), v_slope(0.0), w_slope(0.0);
  for (std::size_t i = 0; i < kVonKarmanFields; ++i) {
    const T share = math::sqrt(T(kFieldShares[i]));
    const T vi = gust_of(x.v[i]), wi = gust_of(x.w[i]);
    u = u + share * x.u[i];
    v = v + share * vi;
    w = w + share * wi;
    v_slope = v_slope + share * (vi - x.v[i].y);
    w_slope = w_slope + share * (wi - x.w[i].y);
  }
  const T q = -(s.sigma_w_mps * pitch_lag_per_m(d.span_m) * w_slope);
  const T r = s.sigma_v_mps * yaw_lag_per_m(d.span_m) * v_slope;
  return {{s.sigma_u_mps * u, s.sigma_v_mps * v, s.sigma_w_mps * w}, {roll_rate_sigma(d) * x.p, q, r}};
}

/// Standard deviations in the stationary state, in the places of the quantities themselves.
template <class T>
Gust<T> stationary_sigma(const VonKarmanParams<T>& d) {
  const TurbulenceScales<T>& s = d.scales;
  const auto rate = [](const T& k, const T& length) {
    T variance(0.0);
    for (std::size_t i = 0; i < kVonKarmanFields; ++i) {
      const T past = stationary_covariance(k * length * T(kFieldLengths[i])).a33;
      variance = variance + T(kFieldShares[i]) * (T(1.0) - past);
    }
    return k * math::sqrt(variance);
  };
  return {{s.sigma_u_mps, s.sigma_v_mps, s.sigma_w_mps},
          {roll_rate_sigma(d), s.sigma_w_mps * rate(pitch_lag_per_m(d.span_m), s.length_w_m),
           s.sigma_v_mps * rate(yaw_lag_per_m(d.span_m), s.length_v_m)}};
}

/// The noise of a step of a sortie, 18 pairs; `start` draws that of the stationary start instead.
inline VonKarmanNoise<double> von_karman_noise(const random::Key& key, std::uint64_t tick,
                                               bool start = false) {
  const auto stream = key.stream(start ? random::Channel::kVonKarmanStart : random::Channel::kVonKarman);
  std::array<double, 2 * 18> n{};
  for (std::uint32_t pair = 0; pair < 18; ++pair) {
    const auto two = random::normal_pair(stream, start ? 0 : tick, pair);
    n[2 * pair] = two[0];
    n[2 * pair + 1] = two[1];
  }
  VonKarmanNoise<double> out;
  out.p = n[0];
  for (std::size_t i = 0; i < kVonKarmanFields; ++i) {
    const std::size_t at = 1 + 7 * i;
    out.u[i] = n[at];
    out.v[i] = {n[at + 1], n[at + 2], n[at + 3]};
    out.w[i] = {n[at + 4], n[at + 5], n[at + 6]};
  }
  return out;
}

}  // namespace stallwright
