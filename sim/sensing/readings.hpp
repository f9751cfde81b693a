#pragma once

namespace stallwright {

/// What the instruments show and the recorder stores, 50 times a second; SI and radians.
/// Nothing in here is known only to the simulator.
template <class T>
struct Readings {
  T impact_pressure_pa{};      ///< q_c as the pitot-static system gives it, position error included
  T indicated_airspeed_mps{};  ///< from it, sea-level scale
  T pressure_altitude_m{}, indicated_altitude_m{};  ///< the latter on the QNH set
  T vertical_speed_mps{};                           ///< of the altitude, as an instrument lags it (about 2 s)
  T probe_ratio{};  ///< probe differential pressure over impact pressure, both as measured
  T pitch_rad{}, bank_rad{}, heading_rad{};
  T roll_rate_radps{}, pitch_rate_radps{}, yaw_rate_radps{};
  T forward_mps2{}, right_mps2{}, down_mps2{};  ///< specific force, body axes (level flight: down is -9.8)
  T gps_speed_mps{}, gps_altitude_m{};
  T outside_air_K{};
  T propeller_radps{};
  T stick_aft{}, stick_right{}, pedal_right{}, throttle{}, flap_rad{};
};

}  // namespace stallwright
