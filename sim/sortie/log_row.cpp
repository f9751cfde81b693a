#include "sim/sortie/log_row.hpp"

#include <charconv>
#include <cmath>

#include "aircraft/math/elementary.hpp"
#include "aircraft/math/units.hpp"

namespace stallwright {
namespace {

/// One numeric column: its name, its printed decimals, the member it shows.
template <class Row>
struct Column {
  const char* name;
  int decimals;
  double Row::*value;
};

const Column<LogRow> kLogColumns[] = {
    {"target_kt", 3, &LogRow::target_kt},
    {"mass_kg", 1, &LogRow::mass_kg},
    {"flap_deg", 2, &LogRow::flap_deg},
    {"impact_pressure_pa", 2, &LogRow::impact_pressure_pa},
    {"ias_kt", 3, &LogRow::ias_kt},
    {"altitude_ft", 1, &LogRow::altitude_ft},
    {"vertical_speed_fpm", 1, &LogRow::vertical_speed_fpm},
    {"ratio", 6, &LogRow::ratio},
    {"pitch_deg", 4, &LogRow::pitch_deg},
    {"bank_deg", 4, &LogRow::bank_deg},
    {"heading_deg", 3, &LogRow::heading_deg},
    {"roll_rate_degps", 4, &LogRow::roll_rate_degps},
    {"pitch_rate_degps", 4, &LogRow::pitch_rate_degps},
    {"yaw_rate_degps", 4, &LogRow::yaw_rate_degps},
    {"forward_mps2", 5, &LogRow::forward_mps2},
    {"right_mps2", 5, &LogRow::right_mps2},
    {"down_mps2", 5, &LogRow::down_mps2},
    {"gps_speed_kt", 2, &LogRow::gps_speed_kt},
    {"gps_altitude_ft", 1, &LogRow::gps_altitude_ft},
    {"outside_air_C", 2, &LogRow::outside_air_C},
    {"propeller_rpm", 1, &LogRow::propeller_rpm},
    {"stick_aft", 4, &LogRow::stick_aft},
    {"stick_right", 4, &LogRow::stick_right},
    {"pedal_right", 4, &LogRow::pedal_right},
    {"throttle", 4, &LogRow::throttle},
};

const Column<TruthRow> kTruthColumns[] = {
    {"alpha_deg", 5, &TruthRow::alpha_deg},
    {"beta_deg", 5, &TruthRow::beta_deg},
    {"tas_kt", 4, &TruthRow::tas_kt},
    {"altitude_ft", 2, &TruthRow::altitude_ft},
    {"load_factor", 6, &TruthRow::load_factor},
    {"lift_coefficient", 6, &TruthRow::lift_coefficient},
    {"static_ratio", 6, &TruthRow::static_ratio},
    {"attached_root", 5, &TruthRow::attached_root},
    {"attached_left", 5, &TruthRow::attached_left},
    {"attached_right", 5, &TruthRow::attached_right},
    {"gust_forward_mps", 4, &TruthRow::gust_forward_mps},
    {"gust_right_mps", 4, &TruthRow::gust_right_mps},
    {"gust_down_mps", 4, &TruthRow::gust_down_mps},
    {"climb_mps", 4, &TruthRow::climb_mps},
    {"roll_deg", 4, &TruthRow::roll_deg},
    {"pitch_deg", 4, &TruthRow::pitch_deg},
    {"thrust_n", 2, &TruthRow::thrust_n},
    {"ideal_impact_pa", 2, &TruthRow::ideal_impact_pa},
    {"ideal_forward_mps2", 5, &TruthRow::ideal_forward_mps2},
    {"ideal_right_mps2", 5, &TruthRow::ideal_right_mps2},
    {"ideal_down_mps2", 5, &TruthRow::ideal_down_mps2},
    {"smooth_ratio", 6, &TruthRow::smooth_ratio},
    {"smooth_impact_pa", 2, &TruthRow::smooth_impact_pa},
    {"smooth_forward_mps2", 5, &TruthRow::smooth_forward_mps2},
    {"smooth_right_mps2", 5, &TruthRow::smooth_right_mps2},
    {"smooth_down_mps2", 5, &TruthRow::smooth_down_mps2},
    {"smooth_thrust_n", 2, &TruthRow::smooth_thrust_n},
};

std::string fixed(double value, int decimals) {
  if (std::isnan(value)) return "";
  char text[64];
  const auto end = std::to_chars(text, text + sizeof text, value, std::chars_format::fixed, decimals).ptr;
  return {text, end};
}

}  // namespace

double as_printed(double value, int decimals) {
  if (std::isnan(value)) return value;
  // Most values are far from half-way between two printed ones: then the nearest whole number of last digits is known, and
  // dividing it by a power of ten, both exact, gives the double that reading the text would.
  static constexpr double kPowers[] = {1.0, 10.0, 100.0, 1e3, 1e4, 1e5, 1e6};
  if (decimals <= 6 && std::abs(value) < 1e6) {
    const double scaled = value * kPowers[decimals], whole = math::round(scaled);
    if (std::abs(std::abs(scaled - whole) - 0.5) > 1e-3)
      return whole == 0.0 ? 0.0 : whole / kPowers[decimals];
  }
  // Through the text itself: only so is the number in memory the one that a reader of the file will get.
  char text[64];
  const char* end = std::to_chars(text, text + sizeof text, value, std::chars_format::fixed, decimals).ptr;
  double out = value;
  std::from_chars(text, end, out);
  return out == 0.0 ? 0.0 : out;  // no minus zero
}

LogRow log_row(double time_s, const Readings<double>& seen, const Marks& marks, double entered_mass_kg) {
  LogRow row;
  row.t_s = as_printed(time_s, 2);
  row.point = marks.point;
  row.repeat = marks.repeat;
  row.attempt = marks.attempt;
  row.recording = marks.recording ? 1 : 0;
  row.forced = marks.forced ? 1 : 0;
  row.in_band = marks.in_band ? 1 : 0;
  row.phase = phase_name(marks.phase);
  row.target_kt = marks.target_kt;
  row.mass_kg = entered_mass_kg;
  row.flap_deg = seen.flap_rad / math::kDegree;
  row.impact_pressure_pa = seen.impact_pressure_pa;
  row.ias_kt = seen.indicated_airspeed_mps / kKnot;
  row.altitude_ft = seen.indicated_altitude_m / kFoot;
  row.vertical_speed_fpm = seen.vertical_speed_mps / kFoot * 60.0;
  row.ratio = seen.probe_ratio;
  row.pitch_deg = seen.pitch_rad / math::kDegree;
  row.bank_deg = seen.bank_rad / math::kDegree;
  row.heading_deg = seen.heading_rad / math::kDegree;
  row.roll_rate_degps = seen.roll_rate_radps / math::kDegree;
  row.pitch_rate_degps = seen.pitch_rate_radps / math::kDegree;
  row.yaw_rate_degps = seen.yaw_rate_radps / math::kDegree;
  row.forward_mps2 = seen.forward_mps2;
  row.right_mps2 = seen.right_mps2;
  row.down_mps2 = seen.down_mps2;
  row.gps_speed_kt = seen.gps_speed_mps / kKnot;
  row.gps_altitude_ft = seen.gps_altitude_m / kFoot;
  row.outside_air_C = seen.outside_air_K - 273.15;
  row.propeller_rpm = seen.propeller_radps * 60.0 / (2.0 * math::kPi);
  row.stick_aft = seen.stick_aft;
  row.stick_right = seen.stick_right;
  row.pedal_right = seen.pedal_right;
  row.throttle = seen.throttle;
  for (const auto& column : kLogColumns) row.*column.value = as_printed(row.*column.value, column.decimals);
  return row;
}

std::vector<std::string> log_columns() {
  std::vector<std::string> names = {"t_s",    "point",   "repeat", "attempt", "recording",
                                    "forced", "in_band", "tone",   "phase"};
  for (const auto& column : kLogColumns) names.emplace_back(column.name);
  return names;
}

std::vector<std::string> log_fields(const LogRow& row) {
  std::vector<std::string> fields = {
      fixed(row.t_s, 2),           std::to_string(row.point),     std::to_string(row.repeat),
      std::to_string(row.attempt), std::to_string(row.recording), std::to_string(row.forced),
      std::to_string(row.in_band), std::to_string(row.tone),      row.phase};
  for (const auto& column : kLogColumns) fields.push_back(fixed(row.*column.value, column.decimals));
  return fields;
}

void round_as_printed(TruthRow& row) {
  for (const auto& column : kTruthColumns) row.*column.value = as_printed(row.*column.value, column.decimals);
}

std::vector<TruthColumn> truth_numbers() {
  std::vector<TruthColumn> numbers;
  for (const auto& column : kTruthColumns)
    numbers.push_back({column.name, column.value, std::isnan(TruthRow{}.*column.value)});
  return numbers;
}

std::vector<std::string> truth_columns() {
  std::vector<std::string> names = {"t_s"};
  for (const auto& column : kTruthColumns) names.emplace_back(column.name);
  names.emplace_back("state_hash");
  return names;
}

std::vector<std::string> truth_fields(const TruthRow& row) {
  std::vector<std::string> fields = {fixed(row.t_s, 2)};
  for (const auto& column : kTruthColumns) fields.push_back(fixed(row.*column.value, column.decimals));
  fields.push_back(row.state_hash);
  return fields;
}

}  // namespace stallwright
