#pragma once
#include "aircraft/aircraft_type.hpp"
#include "aircraft/math/vec3.hpp"
#include "sim/air/airspeed.hpp"

/// Pitot-static system: what pressures reach the instruments, and how late.
///
///   q_c = p ((1 + 0.2 M^2)^3.5 - 1),  M = V sqrt(rho/(gamma p))                              [GRACEY-1980
///   ch. 3] p_i = p + e q_c,   q_ci = p + q_c - p_i = (1 - e) q_c,   e = e0 + e1 alpha + residual position
///   error tau = 128 mu L C/(pi d^4 p)                                        Poiseuille's lag of a tube
///   [GRACEY-1980 ch. 10] mu = 1.458e-6 T^1.5/(T + 110.4)                                    Sutherland
///   [USSA-1976 eq. 51]
///     p, rho, T  pressure, density, temperature of the air, Pa, kg/m3, K;  V  speed through it, m/s
///     e  static-pressure error as a share of q_c: positive raises the static pressure, so speed reads low
///        (dV/V = -e/2 for small e and speeds) and so does height (dh = -e q_c/(rho g))
///     mu  viscosity, Pa s;  L, d  length and bore of the tube, m;  C  volume at its end, m3
/// alpha counts to +-30 deg; past it the error stays as it is there, since nothing is known of it.
/// The pitot itself is taken as perfect up to 60 deg to the flow (real ones hold 1 % to 20 or 30 deg, from
/// memory); from there the reading falls to nothing across the stream and stays so in flow from behind.
/// Laminar tube flow, the same tube for both lines. The travel time of sound, L/a, about 10 ms, is left out:
/// half a sample, common to both lines.
namespace stallwright {

using math::Vec3;

inline constexpr double kPositionErrorAlpha_rad = 30.0 * math::kDegree;  ///< past it the error is held
inline constexpr double kPitotFullCosine = 0.5;  ///< of the angle up to which it reads in full

/// Impact pressure, Pa, of air of pressure p and density rho met at a speed, m/s.
template <class T>
T impact_pressure(const T& speed_mps, const T& density_kgpm3, const T& pressure_pa) {
  const T mach = speed_mps * math::sqrt(T(density_kgpm3 / (T(ussa1976::kGamma) * pressure_pa)));
  return impact_pressure_of_mach(mach, pressure_pa);
}

/// Share of the impact pressure that a pitot along body x catches.
template <class T>
T pitot_recovery(const Vec3<T>& velocity_B_mps) {
  const T speed = math::sqrt(dot(velocity_B_mps, velocity_B_mps));
  return math::clamp(T(velocity_B_mps.x / (T(kPitotFullCosine) * math::max(speed, T(1e-3)))), T(0.0), T(1.0));
}

/// Static-pressure error over impact pressure, as the type file states it.
template <class T>
T nominal_position_error(const PitotStaticType& system, const Vec3<T>& velocity_B_mps) {
  const T alpha = math::clamp(T(math::atan2(velocity_B_mps.z, velocity_B_mps.x)), T(-kPositionErrorAlpha_rad),
                              T(kPositionErrorAlpha_rad));
  return T(system.error_at_zero_alpha) + T(system.error_per_rad) * alpha;
}

/// Pressures in the lines in steady flow, Pa.
template <class T>
struct PitotStaticPressures {
  T impact_pa{};  ///< pitot less static line: q_ci
  T static_pa{};  ///< static line: p_i
};

/// Static response of the installed system.
///   velocity_B_mps  of the aeroplane through the air;  residual  this sortie's error beyond the nominal one,
///   share of q_c
template <class T>
PitotStaticPressures<T> static_pitot_pressures(const PitotStaticType& system, const Vec3<T>& velocity_B_mps,
                                               const T& density_kgpm3, const T& pressure_pa,
                                               const T& residual) {
  const T speed = math::sqrt(dot(velocity_B_mps, velocity_B_mps));
  const T q_c = impact_pressure(speed, density_kgpm3, pressure_pa);
  const T error = (nominal_position_error(system, velocity_B_mps) + residual) * q_c;
  return {pitot_recovery(velocity_B_mps) * q_c - error, pressure_pa + error};
}

/// Viscosity of air, Pa s, T in K (100 to 1500 K).
template <class T>
T air_viscosity(const T& temperature_K) {
  return T(1.458e-6) * temperature_K * math::sqrt(temperature_K) / (temperature_K + T(110.4));
}

/// Time constant of a tube that feeds a volume, s; as 1/p, as d^-4.
template <class T>
T tube_lag(const PitotStaticType& system, const T& temperature_K, const T& pressure_pa) {
  const double d2 = system.tube_diameter_m * system.tube_diameter_m;
  const double shape = 128.0 * system.tube_length_m * system.volume_m3 / (math::kPi * d2 * d2);
  return T(shape) * air_viscosity(temperature_K) / pressure_pa;
}

}  // namespace stallwright
