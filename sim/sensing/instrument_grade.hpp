#pragma once
#include <string>

namespace stallwright {

/// How good the instruments are: the one home of these figures. The simulator draws each sortie's systematic
/// errors from them and the uncertainty budget states them, so both speak of the same distribution.
/// Systematic effects are normal with the standard deviations given, drawn once a sortie.
struct InstrumentGrade {
  std::string name;

  // Systematic, drawn once a sortie (standard uncertainties).
  double position_error_share = 0.0;  ///< residual static-pressure error, share of impact pressure
  double probe_offset_ratio =
      0.0;                   ///< zero of the probe's differential pressure, as ratio at 40 m/s (a pressure)
  double probe_scale = 0.0;  ///< relative scale error of the ratio
  double probe_mount_rad = 0.0;         ///< mounting angle against nominal
  double acceleration_bias_mps2 = 0.0;  ///< each axis
  double mass_share = 0.0;              ///< relative error of the mass that the pilot enters
  double attitude_bias_rad = 0.0, rate_bias_radps = 0.0, gps_altitude_bias_m = 0.0, temperature_bias_K = 0.0;

  // Random, each sample (standard deviations).
  double pressure_noise_pa = 0.0;  ///< pitot-static and probe transducers
  double acceleration_noise_mps2 = 0.0, rate_noise_radps = 0.0, attitude_noise_rad = 0.0;
  double gps_speed_noise_mps = 0.0, gps_altitude_noise_m = 0.0, temperature_noise_K = 0.0;
  double probe_drift_pa_per_sqrt_s = 0.0;  ///< random walk of the probe's zero

  // Resolution.
  double pressure_step_pa = 0.0, acceleration_step_mps2 = 0.0, rate_step_radps = 0.0, attitude_step_rad = 0.0,
         temperature_step_K = 0.0;

  // Lags beyond those of the tubes (which come from the aeroplane type): first-order, s.
  double probe_lag_s = 0.0, attitude_lag_s = 0.0, gps_lag_s = 0.0;
  double acceleration_lag_s = 0.0;  ///< of the inertial unit: accelerations and rates
  bool tube_lag = false;            ///< pitot-static tubes lag as Poiseuille says

  friend bool operator==(const InstrumentGrade&, const InstrumentGrade&) = default;
};

/// Perfect instruments: no noise, lag, bias or steps.
InstrumentGrade ideal_instruments();

/// Good general-aviation instruments: low-range pressure transducers, a solid-state inertial unit, GPS.
InstrumentGrade standard_instruments();

/// "ideal" or "standard"; throws InputError naming both otherwise.
InstrumentGrade instrument_grade(const std::string& name);

}  // namespace stallwright
