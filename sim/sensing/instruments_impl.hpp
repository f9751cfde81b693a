#pragma once
// Definitions of the templates declared in instruments.hpp.

namespace stallwright {

namespace detail {

/// Steps 3 to 5 for a reading: bias, noise, resolution.
template <class T>
T read_out(const T& value, const T& bias, const T& noise_sd, const T& noise, const T& step) {
  return quantised(T(value + bias + noise_sd * noise), step);
}

/// The same for the three components of a vector, its lag before.
template <class T, class Follow>
Vec3<T> read_out3(Vec3<Lag<T>>& lag, const Vec3<T>& input, Follow follow, const LagStep<T>& lag_of,
                  const Vec3<T>& bias, const T& noise_sd, const Vec3<T>& noise, const T& step) {
  lag = {follow(lag.x, input.x, lag_of), follow(lag.y, input.y, lag_of), follow(lag.z, input.z, lag_of)};
  return {read_out(lag.x.output, bias.x, noise_sd, noise.x, step),
          read_out(lag.y.output, bias.y, noise_sd, noise.y, step),
          read_out(lag.z.output, bias.z, noise_sd, noise.z, step)};
}

/// Pitot-static system and probe, and all that is computed from them.
template <class T>
void read_pressures(const AircraftType& type, const SampleGrade<T>& grade, const SystematicErrors<T>& errors,
                    const SensorNoise<T>& noise, const SensedTruth<T>& truth, InstrumentState<T>& state,
                    Readings<T>& out) {
  const InstalledPressures<T> at_ports = installed_pressures(type, truth.flow, errors);

  // Both lines have the same lag, so lagging their difference is lagging each of them.
  const T tube = tube_lag(type.pitot_static, truth.temperature_K, truth.flow.static_pressure_pa);
  const LagStep<T> tubes = lag_step(T(tube * grade.tube_lag), kSample_s);
  state.impact = followed(state.impact, at_ports.impact_pa, tubes);
  state.static_pressure = followed(state.static_pressure, at_ports.static_pa, tubes);
  state.probe = followed(state.probe, at_ports.probe_pa, grade.probe);

  state.probe_drift_pa = state.probe_drift_pa + grade.probe_drift_pa * noise.probe_drift;

  const T sd = grade.pressure_noise_pa, step = grade.pressure_step_pa;
  const T impact = read_out(state.impact.output, T(0.0), sd, noise.impact, step);
  const T pressure = read_out(state.static_pressure.output, T(0.0), sd, noise.static_pressure, step);
  const T probe = read_out(T(state.probe.output * (T(1.0) + errors.probe_scale)),
                           T(errors.probe_offset_pa + state.probe_drift_pa), sd, noise.probe, step);

  out.impact_pressure_pa = impact;
  out.indicated_airspeed_mps = cas_of_impact_pressure(impact);
  out.pressure_altitude_m = pressure_altitude(pressure);
  out.indicated_altitude_m = out.pressure_altitude_m - pressure_altitude(truth.altimeter_setting_pa);
  out.probe_ratio = probe_ratio(probe, impact);

  state.vertical_speed = followed(state.vertical_speed, out.pressure_altitude_m, grade.vertical_speed);
  out.vertical_speed_mps = (out.pressure_altitude_m - state.vertical_speed.output) / T(kVerticalSpeedLag_s);
}

/// Attitude, rates and accelerations.
template <class T>
void read_inertial(const SampleGrade<T>& grade, const SystematicErrors<T>& errors,
                   const SensorNoise<T>& noise, const SensedTruth<T>& truth, InstrumentState<T>& state,
                   Readings<T>& out) {
  const Vec3<T> force = read_out3(state.acceleration, truth.specific_force_B_mps2, followed<T>,
                                  grade.inertial, errors.acceleration_mps2, grade.acceleration_noise_mps2,
                                  noise.acceleration, grade.acceleration_step_mps2);
  const Vec3<T> rate =
      read_out3(state.rate, truth.rate_B_radps, followed<T>, grade.inertial, errors.rate_radps,
                grade.rate_noise_radps, noise.rate, grade.rate_step_radps);
  const Vec3<T> attitude =
      read_out3(state.attitude, truth.attitude_rad, followed_angle<T>, grade.attitude, errors.attitude_rad,
                grade.attitude_noise_rad, noise.attitude, grade.attitude_step_rad);
  out.forward_mps2 = force.x;
  out.right_mps2 = force.y;
  out.down_mps2 = force.z;
  out.roll_rate_radps = rate.x;
  out.pitch_rate_radps = rate.y;
  out.yaw_rate_radps = rate.z;
  out.bank_rad = within_half_turn(attitude.x);
  out.pitch_rad = attitude.y;
  out.heading_rad = as_heading(attitude.z);
}

template <class T, class Fix>
void read_gps(const SampleGrade<T>& grade, const SystematicErrors<T>& errors, const SensorNoise<T>& noise,
              const SensedTruth<T>& truth, const Fix& fix, InstrumentState<T>& state, Readings<T>& out) {
  state.gps_speed = followed(state.gps_speed, truth.ground_speed_mps, grade.gps);
  state.gps_altitude = followed(state.gps_altitude, truth.altitude_m, grade.gps);
  // A speed is never negative, whatever the noise.
  const T speed = math::max(T(state.gps_speed.output + grade.gps_speed_noise_mps * noise.gps_speed), T(0.0));
  const T altitude =
      state.gps_altitude.output + errors.gps_altitude_m + grade.gps_altitude_noise_m * noise.gps_altitude;
  state.gps_speed_fix_mps = math::where(fix, speed, state.gps_speed_fix_mps);
  state.gps_altitude_fix_m = math::where(fix, altitude, state.gps_altitude_fix_m);
  out.gps_speed_mps = state.gps_speed_fix_mps;
  out.gps_altitude_m = state.gps_altitude_fix_m;
}

template <class T>
Vec3<Lag<T>> settled_lags(const Vec3<T>& input) {
  return {settled_lag(input.x), settled_lag(input.y), settled_lag(input.z)};
}

}  // namespace detail

template <class T>
InstrumentState<T> settled_instruments(const AircraftType& type, const SystematicErrors<T>& errors,
                                       const SensedTruth<T>& truth) {
  const InstalledPressures<T> at_ports = installed_pressures(type, truth.flow, errors);
  InstrumentState<T> state;
  state.impact = settled_lag(at_ports.impact_pa);
  state.static_pressure = settled_lag(at_ports.static_pa);
  state.probe = settled_lag(at_ports.probe_pa);
  state.vertical_speed = settled_lag(pressure_altitude(at_ports.static_pa));
  state.attitude = detail::settled_lags(truth.attitude_rad);
  state.rate = detail::settled_lags(truth.rate_B_radps);
  state.acceleration = detail::settled_lags(truth.specific_force_B_mps2);
  state.gps_speed = settled_lag(truth.ground_speed_mps);
  state.gps_altitude = settled_lag(truth.altitude_m);
  state.gps_speed_fix_mps = truth.ground_speed_mps;
  state.gps_altitude_fix_m = truth.altitude_m + errors.gps_altitude_m;
  return state;
}

template <class T, class Fix>
Sensed<T> advance(const AircraftType& type, const SampleGrade<T>& grade, const SystematicErrors<T>& errors,
                  const SensorNoise<T>& noise, const InstrumentState<T>& state, const SensedTruth<T>& truth,
                  const Fix& fix) {
  Sensed<T> next{state, {}};
  Readings<T>& out = next.readings;
  detail::read_pressures(type, grade, errors, noise, truth, next.state, out);
  detail::read_inertial(grade, errors, noise, truth, next.state, out);
  detail::read_gps(grade, errors, noise, truth, fix, next.state, out);
  out.outside_air_K = detail::read_out(truth.temperature_K, errors.temperature_K, grade.temperature_noise_K,
                                       noise.temperature, grade.temperature_step_K);
  out.propeller_radps = truth.propeller_radps;
  out.stick_aft = truth.controls.stick_aft;
  out.stick_right = truth.controls.stick_right;
  out.pedal_right = truth.controls.pedal_right;
  out.throttle = truth.controls.throttle;
  out.flap_rad = truth.flap_rad;
  return next;
}

inline Sensed<double> advance(const AircraftType& type, const SampleGrade<double>& grade,
                              const SystematicErrors<double>& errors, const SensorNoise<double>& noise,
                              const InstrumentState<double>& state, const SensedTruth<double>& truth,
                              std::uint64_t sample) {
  return advance(type, grade, errors, noise, state, truth, sample % kGpsSamples == 0);
}

}  // namespace stallwright
