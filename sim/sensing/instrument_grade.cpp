#include "sim/sensing/instrument_grade.hpp"

#include "aircraft/input_error.hpp"
#include "aircraft/math/elementary.hpp"

namespace stallwright {

InstrumentGrade ideal_instruments() {
  InstrumentGrade grade;
  grade.name = "ideal";
  return grade;
}

// Orders of magnitude of sound equipment of its kind, from memory and common practice; no one product's data
// sheet.
InstrumentGrade standard_instruments() {
  InstrumentGrade g;
  g.name = "standard";

  // What a careful GPS-box calibration leaves of the nominal position error: 0.2 % of speed, a quarter of a
  // knot.
  g.position_error_share = 0.004;
  // 2.4 Pa: a 0 to 2 kPa transducer of 0.1 % of span, zeroed before flight, after an hour of changing
  // temperature.
  g.probe_offset_ratio = 0.0025;
  // Bore, burrs and port angle (a degree of theta at 45 deg moves sin(2 theta) by 0.06 % only); transducer
  // span 0.25 %.
  g.probe_scale = 0.004;
  // A bracket set with a digital level reads to 0.1 deg.
  g.probe_mount_rad = 0.1 * math::kDegree;
  // Good solid-state accelerometer after a levelled zero: 2 to 3 mg over temperature; 0.25 % of weight.
  g.acceleration_bias_mps2 = 0.025;
  // Fuel by gauge and dipstick (2 to 3 kg), crew and bags weighed or asked (2 to 3 kg) on 600 kg.
  g.mass_share = 0.006;
  g.attitude_bias_rad = 0.3 * math::kDegree;  // alignment of the unit in the aeroplane
  g.rate_bias_radps = 0.05 * math::kDegree;   // after the zero on the ground; 180 deg/h
  g.gps_altitude_bias_m = 4.0;                // single receiver, slow ionospheric part
  g.temperature_bias_K = 0.7;                 // placement and recovery of a probe under the wing

  g.pressure_noise_pa = 0.7;         // a sample at 50 Hz: electronics and pressure hiss of the airframe
  g.acceleration_noise_mps2 = 0.03;  // engine vibration left by the unit's filter; sensor alone 0.01
  g.rate_noise_radps = 0.10 * math::kDegree;    // the same
  g.attitude_noise_rad = 0.05 * math::kDegree;  // what attitude filters leave
  g.gps_speed_noise_mps = 0.1;                  // Doppler
  g.gps_altitude_noise_m = 1.0;
  g.temperature_noise_K = 0.05;
  g.probe_drift_pa_per_sqrt_s = 0.03;  // grows to 1 Pa in twenty minutes

  g.pressure_step_pa = 0.25;        // 13 bits over 2 kPa
  g.acceleration_step_mps2 = 0.01;  // 1 mg
  g.rate_step_radps = 0.02 * math::kDegree;
  g.attitude_step_rad = 0.05 * math::kDegree;
  g.temperature_step_K = 0.1;

  g.probe_lag_s = 0.06;  // two or three metres of 4 mm tube and the transducer's filter
  g.attitude_lag_s = 0.05;
  g.acceleration_lag_s = 0.02;  // anti-aliasing filter of the inertial unit, 8 Hz
  g.gps_lag_s = 0.2;            // filter and transfer
  g.tube_lag = true;
  return g;
}

InstrumentGrade instrument_grade(const std::string& name) {
  if (name == "ideal") return ideal_instruments();
  if (name == "standard") return standard_instruments();
  throw InputError("sensors: expected ideal or standard, found '" + name + "'");
}

}  // namespace stallwright
