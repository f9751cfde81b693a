#pragma once
#include "aircraft/math/vec3.hpp"
#include "sim/random/philox.hpp"
#include "sim/sensing/instrument_grade.hpp"

namespace stallwright {

using math::Vec3;

/// What is wrong with this sortie's instruments from take-off to landing; only the simulator knows.
/// Each effect is normal with the standard deviation that the grade states, independent of all others, and
/// drawn from its own place, so the order of drawing does not matter. Signs: what is added to the reading.
template <class T>
struct SystematicErrors {
  T position_error_share{};  ///< of the impact pressure, added to the static pressure: speed and height read
                             ///< lower
  T probe_offset_pa{};       ///< added to the probe's differential pressure
  T probe_scale{};           ///< differential pressure times 1 + this
  T probe_mount_rad{};       ///< axis further below body x than nominal: the ratio reads lower
  Vec3<T> acceleration_mps2, rate_radps;
  Vec3<T> attitude_rad;  ///< roll, pitch, yaw
  T gps_altitude_m{};
  T temperature_K{};
  T mass_share{};  ///< of the true mass, added to what the pilot enters

  static SystematicErrors none() { return {}; }
  friend bool operator==(const SystematicErrors&, const SystematicErrors&) = default;
};

/// Speed at which the grade states the probe's offset as a ratio, m/s, and the dynamic pressure there, Pa:
/// rho0 V^2/2, sea-level standard density.
inline constexpr double kProbeOffsetSpeed_mps = 40.0;
inline constexpr double kProbeOffsetPressure_pa = 0.5 * 1.225 * kProbeOffsetSpeed_mps * kProbeOffsetSpeed_mps;

/// This sortie's draw.
SystematicErrors<double> draw_systematic_errors(const InstrumentGrade& grade, const random::Key& key);

/// What the pilot enters as the aeroplane's mass, kg:  m (1 + e).
inline double entered_mass(double mass_kg, const SystematicErrors<double>& errors) {
  return mass_kg * (1.0 + errors.mass_share);
}

}  // namespace stallwright
