#pragma once
#include "sim/sensing/instruments.hpp"

/// An invented installation and a steady flight for the tests of sensing.
namespace stallwright::sensing_cases {

inline constexpr double kDeg = math::kDegree;

inline AircraftType installation() {
  AircraftType type;
  type.probe.port_angle_rad = 45.0 * kDeg;
  type.probe.mount_rad = 8.0 * kDeg;
  type.pitot_static.error_at_zero_alpha = 0.01;
  type.pitot_static.error_per_rad = -0.12;
  type.pitot_static.tube_length_m = 3.5;
  type.pitot_static.tube_diameter_m = 4.5e-3;
  type.pitot_static.volume_m3 = 250e-6;
  return type;
}

/// Velocity through the air from speed, angle of attack and sideslip.
inline Vec3<double> velocity(double speed_mps, double alpha_rad, double beta_rad = 0.0) {
  return {speed_mps * math::cos(alpha_rad) * math::cos(beta_rad), speed_mps * math::sin(beta_rad),
          speed_mps * math::sin(alpha_rad) * math::cos(beta_rad)};
}

/// Straight and steady at a true airspeed, an angle of attack and an altitude on a standard day, some of it
/// skewed so that no reading is zero.
inline SensedTruth<double> steady(double tas_mps, double alpha_rad, double altitude_m = 1000.0) {
  const AtmosphereState<double> air = atmosphere(Day{}, altitude_m);
  SensedTruth<double> truth;
  truth.flow.velocity_B_mps = velocity(tas_mps, alpha_rad);
  truth.flow.probe_velocity_B_mps = velocity(1.02 * tas_mps, 1.1 * alpha_rad, 0.03);
  truth.flow.density_kgpm3 = air.density_kgpm3;
  truth.flow.static_pressure_pa = air.pressure_Pa;
  truth.temperature_K = air.temperature_K;
  truth.altimeter_setting_pa = 100800.0;
  truth.altitude_m = altitude_m;
  truth.ground_speed_mps = tas_mps + 3.0;
  truth.attitude_rad = {0.05, 0.08, 4.0};
  truth.rate_B_radps = {0.01, -0.02, 0.03};
  truth.specific_force_B_mps2 = {0.3, 0.1, -9.7};
  truth.propeller_radps = 230.0;
  truth.flap_rad = 0.2;
  truth.controls = {0.1, -0.05, 0.02, 0.6, 0.3};
  return truth;
}

/// A flight sampled by one set of instruments.
class Recorder {
 public:
  Recorder(const InstrumentGrade& grade, const SystematicErrors<double>& errors,
           const SensedTruth<double>& start)
      : grade_(sample_grade(grade)), errors_(errors), state_(settled_instruments(type_, errors, start)) {}

  Readings<double> sample(const SensedTruth<double>& truth,
                          const SensorNoise<double>& noise = SensorNoise<double>::none()) {
    const Sensed<double> next = advance(type_, grade_, errors_, noise, state_, truth, count_++);
    state_ = next.state;
    return next.readings;
  }
  const InstrumentState<double>& state() const { return state_; }

 private:
  AircraftType type_ = installation();
  SampleGrade<double> grade_;
  SystematicErrors<double> errors_;
  InstrumentState<double> state_;
  std::uint64_t count_ = 0;
};

}  // namespace stallwright::sensing_cases
