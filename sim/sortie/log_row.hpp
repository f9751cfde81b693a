#pragma once
#include <limits>
#include <string>
#include <vector>

#include "sim/sortie/director.hpp"

namespace stallwright {

/// One line of log.csv: what the recorder saw, in the units of its columns, rounded as printed, so that a log in
/// memory and the same log read back from its file are equal to the last bit.
struct LogRow {
  double t_s = 0.0;
  int point = 0, repeat = 0, attempt = 0, recording = 0, forced = 0, in_band = 1, tone = 0;
  std::string phase;
  double target_kt = 0.0;  ///< speed the card asks for at this mass; 0 where it asks for none
  double mass_kg = 0.0, flap_deg = 0.0, impact_pressure_pa = 0.0, ias_kt = 0.0, altitude_ft = 0.0,
         vertical_speed_fpm = 0.0, ratio = 0.0, pitch_deg = 0.0, bank_deg = 0.0, heading_deg = 0.0,
         roll_rate_degps = 0.0, pitch_rate_degps = 0.0, yaw_rate_degps = 0.0, forward_mps2 = 0.0,
         right_mps2 = 0.0, down_mps2 = 0.0, gps_speed_kt = 0.0, gps_altitude_ft = 0.0, outside_air_C = 0.0,
         propeller_rpm = 0.0, stick_aft = 0.0, stick_right = 0.0, pedal_right = 0.0, throttle = 0.0;
};

inline constexpr double kNotFlown = std::numeric_limits<double>::quiet_NaN();

/// One line of truth.csv: what only the simulator knows, at the same moments.
struct TruthRow {
  double t_s = 0.0;
  double alpha_deg = 0.0, beta_deg = 0.0, tas_kt = 0.0, altitude_ft = 0.0, load_factor = 0.0,
         lift_coefficient = 0.0, static_ratio = 0.0, attached_root = 0.0, attached_left = 0.0,
         attached_right = 0.0, gust_forward_mps = 0.0, gust_right_mps = 0.0, gust_down_mps = 0.0,
         climb_mps = 0.0, roll_deg = 0.0, pitch_deg = 0.0, thrust_n = 0.0;
  /// What ideal instruments would show beside `static_ratio`, rounded as log.csv rounds.
  double ideal_impact_pa = 0.0, ideal_forward_mps2 = 0.0, ideal_right_mps2 = 0.0, ideal_down_mps2 = 0.0;
  /// Ideal instruments aboard the twin in air without gusts (smooth_twin.hpp); NaN, an empty field, outside records.
  double smooth_ratio = kNotFlown, smooth_impact_pa = kNotFlown, smooth_forward_mps2 = kNotFlown,
         smooth_right_mps2 = kNotFlown, smooth_down_mps2 = kNotFlown, smooth_thrust_n = kNotFlown;
  std::string state_hash;  ///< of the whole flight state, on whole seconds, otherwise empty
};

/// A value as it will be printed with so many decimals.
double as_printed(double value, int decimals);

/// Readings and marks of one tick as a log line.
LogRow log_row(double time_s, const Readings<double>& seen, const Marks& marks, double entered_mass_kg);

/// Rounds a truth line as its file will.
void round_as_printed(TruthRow& row);

/// Names of the columns, and one row as fields, in the same order.
std::vector<std::string> log_columns();
std::vector<std::string> log_fields(const LogRow& row);
std::vector<std::string> truth_columns();

/// The numbers of a truth line beside t_s, in the order of their columns.
struct TruthColumn {
  std::string name;
  double TruthRow::*value;
  bool may_be_empty;  ///< outside records
};
std::vector<TruthColumn> truth_numbers();
std::vector<std::string> truth_fields(const TruthRow& row);

}  // namespace stallwright
