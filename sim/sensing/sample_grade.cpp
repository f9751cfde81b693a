#include "sim/sensing/sample_grade.hpp"

#include "sim/sensing/sensor_noise.hpp"

namespace stallwright {

SampleGrade<double> sample_grade(const InstrumentGrade& grade) {
  SampleGrade<double> g;
  g.pressure_noise_pa = grade.pressure_noise_pa;
  g.acceleration_noise_mps2 = grade.acceleration_noise_mps2;
  g.rate_noise_radps = grade.rate_noise_radps;
  g.attitude_noise_rad = grade.attitude_noise_rad;
  g.gps_speed_noise_mps = grade.gps_speed_noise_mps;
  g.gps_altitude_noise_m = grade.gps_altitude_noise_m;
  g.temperature_noise_K = grade.temperature_noise_K;
  // Random walk: variance grows by the square of the grade's figure each second.
  g.probe_drift_pa = grade.probe_drift_pa_per_sqrt_s * math::sqrt(kSample_s);
  g.pressure_step_pa = grade.pressure_step_pa;
  g.acceleration_step_mps2 = grade.acceleration_step_mps2;
  g.rate_step_radps = grade.rate_step_radps;
  g.attitude_step_rad = grade.attitude_step_rad;
  g.temperature_step_K = grade.temperature_step_K;
  g.probe = lag_step(grade.probe_lag_s, kSample_s);
  g.inertial = lag_step(grade.acceleration_lag_s, kSample_s);
  g.attitude = lag_step(grade.attitude_lag_s, kSample_s);
  g.gps = lag_step(grade.gps_lag_s, kSample_s);
  g.vertical_speed = lag_step(kVerticalSpeedLag_s, kSample_s);
  g.tube_lag = grade.tube_lag ? 1.0 : 0.0;
  return g;
}

}  // namespace stallwright
