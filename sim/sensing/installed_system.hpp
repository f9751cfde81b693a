#pragma once
#include "sim/sensing/aoa_probe.hpp"
#include "sim/sensing/pitot_static.hpp"
#include "sim/sensing/systematic.hpp"

/// Static response of probe and pitot-static system as installed in one aeroplane: what would be read if
/// nothing changed and nothing disturbed. The truth is this with no systematic errors; the instruments start
/// from the same functions.
///
///   ratio = (p_lower - p_upper)/max(q_ci, 20 Pa)
///     q_ci  impact pressure with position error, Pa (pitot_static.hpp);  p_lower, p_upper  of the ports
///     (aoa_probe.hpp)
/// The floor of 20 Pa, 11 kt at sea level, keeps the ratio finite on the ground and in a tail slide.
namespace stallwright {

inline constexpr double kLeastImpactPressure_pa = 20.0;

/// The flow that meets the two sensors.
template <class T>
struct SensedFlow {
  Vec3<T> velocity_B_mps;        ///< of the centre of gravity through the air, gust included
  Vec3<T> probe_velocity_B_mps;  ///< of the probe through the air there, upwash, gust and rotation included
  T density_kgpm3{}, static_pressure_pa{};
};

/// Pressures in the lines, Pa, in steady flow.
template <class T>
struct InstalledPressures {
  T impact_pa{}, static_pa{}, probe_pa{};
};

/// Pressures with this sortie's errors of the installation (position error residual, mounting).
template <class T>
InstalledPressures<T> installed_pressures(const AircraftType& type, const SensedFlow<T>& flow,
                                          const SystematicErrors<T>& errors) {
  const PitotStaticPressures<T> pitot =
      static_pitot_pressures(type.pitot_static, flow.velocity_B_mps, flow.density_kgpm3,
                             flow.static_pressure_pa, errors.position_error_share);
  return {pitot.impact_pa, pitot.static_pa,
          static_probe_pressure(type.probe, flow.probe_velocity_B_mps, flow.density_kgpm3,
                                errors.probe_mount_rad)};
}

template <class T>
T probe_ratio(const T& probe_pa, const T& impact_pa) {
  return probe_pa / math::max(impact_pa, T(kLeastImpactPressure_pa));
}

/// What a steady state reads.
template <class T>
struct StaticReadings {
  T probe_ratio{}, indicated_airspeed_mps{}, impact_pressure_pa{}, pressure_altitude_m{};
};

/// The truth of a reading: nominal installation, no lag, noise, drift or resolution.
template <class T>
StaticReadings<T> static_readings(const AircraftType& type, const SensedFlow<T>& flow) {
  const InstalledPressures<T> p = installed_pressures(type, flow, SystematicErrors<T>::none());
  return {probe_ratio(p.probe_pa, p.impact_pa), cas_of_impact_pressure(p.impact_pa), p.impact_pa,
          pressure_altitude(p.static_pa)};
}

}  // namespace stallwright
