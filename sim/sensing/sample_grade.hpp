#pragma once
#include "sim/sensing/instrument_grade.hpp"
#include "sim/sensing/sampling.hpp"

namespace stallwright {

inline constexpr double kVerticalSpeedLag_s = 2.0;

/// What of a grade acts at every sample, worked out once: noise, steps and lags of an InstrumentGrade, whose units they have.
/// A pack of lanes holds as many grades side by side.
template <class T>
struct SampleGrade {
  T pressure_noise_pa{}, acceleration_noise_mps2{}, rate_noise_radps{}, attitude_noise_rad{};
  T gps_speed_noise_mps{}, gps_altitude_noise_m{}, temperature_noise_K{};
  T probe_drift_pa{};  ///< standard deviation of a sample's step of the random walk
  T pressure_step_pa{}, acceleration_step_mps2{}, rate_step_radps{}, attitude_step_rad{},
      temperature_step_K{};
  LagStep<T> probe, inertial, attitude, gps;
  LagStep<T> vertical_speed;  ///< of every grade the same
  T tube_lag{};               ///< 1: tubes lag, 0: they do not
};

SampleGrade<double> sample_grade(const InstrumentGrade& grade);

}  // namespace stallwright
