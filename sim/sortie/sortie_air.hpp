#pragma once
#include "sim/air/dryden.hpp"
#include "sim/air/standard_atmosphere.hpp"
#include "sim/air/wake_shake.hpp"
#include "sim/air/wind.hpp"
#include "sim/motion/felt.hpp"
#include "sim/sensing/instruments.hpp"

namespace stallwright {

/// The day and the place of a sortie, and what of the aeroplane decides how it meets turbulence.
struct SortieAir {
  AirColumn column;
  MeanWind wind;
  TurbulenceIntensity intensity;
  double terrain_m = 0.0;  ///< height of the ground above sea level
  double span_m = 0.0, mean_chord_m = 0.0;
};

template <class T>
T height_above_ground(const SortieAir& here, const RigidState<T>& rigid) {
  return math::max(T(-rigid.position_E_m.z - here.terrain_m), T(0.0));
}

/// Air of this day with a gust in it and with the shaking of separated flow.
template <class T>
AirSample<T> air_sample(const SortieAir& here, const RigidState<T>& rigid, const Gust<T>& gust,
                        const ShakeState<T>& shake) {
  AirSample<T> air;
  air.density_kgpm3 = here.column.at(T(-rigid.position_E_m.z)).density_kgpm3;
  air.wind_E_mps = wind_velocity_E(here.wind, height_above_ground(here, rigid));
  air.gust_B_mps = gust.v_B_mps;
  air.gust_rate_B_radps = gust.omega_B_radps;
  air.shake = shake.now;
  return air;
}

/// All that the instruments can feel.
template <class T>
SensedTruth<T> sensed_truth(const SortieAir& here, const FlightState<T>& flight, const AirSample<T>& air,
                            const Felt<T>& felt, const Controls<T>& controls) {
  const T altitude = -flight.rigid.position_E_m.z;
  const AtmosphereState<T> atmosphere = here.column.at(altitude);
  const EulerAngles<T> e = euler_angles(flight.rigid.attitude_EB);
  const Vec3<T> ground = rotation_EB(flight.rigid.attitude_EB) * flight.rigid.velocity_B_mps;
  SensedTruth<T> t;
  t.flow = {relative_flow(flight.rigid, air).velocity_B, felt.probe_velocity_B_mps, air.density_kgpm3,
            atmosphere.pressure_Pa};
  t.temperature_K = atmosphere.temperature_K;
  t.altimeter_setting_pa = T(here.column.day().qnh_Pa);
  t.altitude_m = altitude;
  t.ground_speed_mps = math::sqrt(ground.x * ground.x + ground.y * ground.y);
  t.attitude_rad = {e.roll_rad, e.pitch_rad, e.yaw_rad};
  t.rate_B_radps = flight.rigid.rate_B_radps;
  t.specific_force_B_mps2 = felt.specific_force_B_mps2;
  t.propeller_radps = flight.airframe.propeller_radps;
  t.flap_rad = flight.airframe.flap_rad;
  t.controls = controls;
  return t;
}

/// Share of the wing root's chord that carries attached flow.
template <class T>
T attached_root(const AirframeState<T>& airframe) {
  constexpr std::size_t first = (kWingStrips - kRootStrips) / 2;
  T sum(0.0);
  for (std::size_t i = first; i < first + kRootStrips; ++i) sum = sum + airframe.separation[i];
  return sum / T(static_cast<double>(kRootStrips));
}

}  // namespace stallwright
