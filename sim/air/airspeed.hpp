#pragma once
#include "sim/air/standard_atmosphere.hpp"

/// Conversions between calibrated, equivalent and true airspeed, Mach number and impact pressure.
///
///   qc = p ((1 + 0.2 M^2)^3.5 - 1),  TAS = M a        isentropic, gamma 1.4   [GRACEY-1980 ch. 3]
///   qc = p0 ((1 + 0.2 (CAS/a0)^2)^3.5 - 1)           what the dial of an airspeed indicator assumes
///   EAS = TAS sqrt(rho/rho0)
///     qc  impact pressure, total less static, Pa;  speeds in m/s
///     p, rho, a  static pressure, density and speed of sound of the air
///     p0, rho0, a0  their standard sea-level values
/// Valid for 0 <= M < 1. A negative speed is taken as its size; a negative impact pressure reads as no speed.
namespace stallwright {

/// Impact pressure, Pa, at a Mach number in air of static pressure p, Pa.
template <class T>
T impact_pressure_of_mach(const T& mach, const T& pressure_Pa) {
  const T stagnation = T(1.0) + T(0.2) * mach * mach;
  return pressure_Pa * (stagnation * stagnation * stagnation * math::sqrt(stagnation) - T(1.0));
}

/// Mach number at an impact pressure, Pa, in air of static pressure p, Pa.
template <class T>
T mach_of_impact_pressure(const T& impact_Pa, const T& pressure_Pa) {
  const T ratio = T(1.0) + math::max(impact_Pa, T(0.0)) / pressure_Pa;
  // Just above 1 the power may round to below 1; the root of a negative number must not reach the dial.
  return math::sqrt(math::max(T(5.0) * (math::pow_positive(ratio, T(2.0 / 7.0)) - T(1.0)), T(0.0)));
}

template <class T>
T impact_pressure_of_cas(const T& cas_mps) {
  return impact_pressure_of_mach(cas_mps / T(ussa1976::kSoundSpeed), T(ussa1976::kPressure));
}
template <class T>
T cas_of_impact_pressure(const T& impact_Pa) {
  return mach_of_impact_pressure(impact_Pa, T(ussa1976::kPressure)) * T(ussa1976::kSoundSpeed);
}

template <class T>
T tas_of_cas(const T& cas_mps, const AtmosphereState<T>& air) {
  return mach_of_impact_pressure(impact_pressure_of_cas(cas_mps), air.pressure_Pa) * air.speed_of_sound_mps;
}
template <class T>
T cas_of_tas(const T& tas_mps, const AtmosphereState<T>& air) {
  return cas_of_impact_pressure(impact_pressure_of_mach(tas_mps / air.speed_of_sound_mps, air.pressure_Pa));
}

template <class T>
T eas_of_tas(const T& tas_mps, const AtmosphereState<T>& air) {
  return tas_mps * math::sqrt(air.density_kgpm3 / T(ussa1976::kDensity));
}
template <class T>
T tas_of_eas(const T& eas_mps, const AtmosphereState<T>& air) {
  return eas_mps * math::sqrt(T(ussa1976::kDensity) / air.density_kgpm3);
}

}  // namespace stallwright
