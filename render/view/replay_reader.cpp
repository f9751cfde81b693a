// From the two files of a sortie to the rows of a replay.
#include <algorithm>
#include <cmath>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/units.hpp"
#include "render/view/replay_track.hpp"
#include "sim/reduction/csv.hpp"

namespace stallwright::view {
namespace {

using math::kDegree;

/// A column of the log, the reading that it fills, and what one of its unit is in SI.
struct Seen {
  const char* column;
  double Readings<double>::*member;
  double si;
  double offset = 0.0;
};
constexpr Seen kSeen[] = {
    {"impact_pressure_pa", &Readings<double>::impact_pressure_pa, 1.0},
    {"ias_kt", &Readings<double>::indicated_airspeed_mps, kKnot},
    {"altitude_ft", &Readings<double>::indicated_altitude_m, kFoot},
    {"vertical_speed_fpm", &Readings<double>::vertical_speed_mps, kFootPerMinute},
    {"ratio", &Readings<double>::probe_ratio, 1.0},
    {"pitch_deg", &Readings<double>::pitch_rad, kDegree},
    {"bank_deg", &Readings<double>::bank_rad, kDegree},
    {"heading_deg", &Readings<double>::heading_rad, kDegree},
    {"roll_rate_degps", &Readings<double>::roll_rate_radps, kDegree},
    {"pitch_rate_degps", &Readings<double>::pitch_rate_radps, kDegree},
    {"yaw_rate_degps", &Readings<double>::yaw_rate_radps, kDegree},
    {"forward_mps2", &Readings<double>::forward_mps2, 1.0},
    {"right_mps2", &Readings<double>::right_mps2, 1.0},
    {"down_mps2", &Readings<double>::down_mps2, 1.0},
    {"gps_speed_kt", &Readings<double>::gps_speed_mps, kKnot},
    {"gps_altitude_ft", &Readings<double>::gps_altitude_m, kFoot},
    {"outside_air_C", &Readings<double>::outside_air_K, 1.0, 273.15},
    {"propeller_rpm", &Readings<double>::propeller_radps, 2.0 * math::kPi / 60.0},
    {"stick_aft", &Readings<double>::stick_aft, 1.0},
    {"stick_right", &Readings<double>::stick_right, 1.0},
    {"pedal_right", &Readings<double>::pedal_right, 1.0},
    {"throttle", &Readings<double>::throttle, 1.0},
    {"flap_deg", &Readings<double>::flap_rad, kDegree},
};
constexpr const char* kMarks[] = {"t_s",    "point",   "repeat", "attempt",  "recording",
                                  "forced", "in_band", "tone",   "target_kt"};

Phase phase_called(const std::string& name) {
  for (const Phase phase : {Phase::clearing, Phase::transit, Phase::settle, Phase::record, Phase::slow,
                            Phase::broken, Phase::recover, Phase::climb, Phase::done})
    if (phase_name(phase) == name) return phase;
  return Phase::transit;
}

/// The angle nearest to the one before that stands for the same direction.
double run_on(double rad, double before) {
  const double turn = 2.0 * math::kPi;
  return rad + turn * std::round((before - rad) / turn);
}

}  // namespace

void ReplayTrack::read_log(const std::filesystem::path& file) {
  CsvRequest request;
  for (const char* name : kMarks) request.numbers.emplace_back(name);
  for (const Seen& seen : kSeen) request.numbers.emplace_back(seen.column);
  request.texts = {"phase"};
  request.least_rows = 2;
  const NumericTable table = read_csv(file, request);
  rows_.resize(table.rows);
  for (const Seen& seen : kSeen) {
    const std::vector<double>& column = table.column(seen.column);
    for (std::size_t i = 0; i < table.rows; ++i)
      rows_[i].seen.*seen.member = column[i] * seen.si + seen.offset;
  }
  const auto number = [&](const char* name, std::size_t i) { return table.column(name)[i]; };
  for (std::size_t i = 0; i < table.rows; ++i) {
    Row& row = rows_[i];
    row.t_s = number("t_s", i);
    row.point = static_cast<int>(number("point", i));
    row.repeat = static_cast<int>(number("repeat", i));
    row.attempt = static_cast<int>(number("attempt", i));
    row.recording = number("recording", i) != 0.0;
    row.forced = number("forced", i) != 0.0;
    row.in_band = number("in_band", i) != 0.0;
    row.tone = number("tone", i) != 0.0;
    row.target_kt = number("target_kt", i);
    row.phase = phase_called(table.texts.at("phase")[i]);
    row.seen.heading_rad = i == 0 ? row.seen.heading_rad : run_on(row.seen.heading_rad, rows_[i - 1].yaw_rad);
    row.seen.pressure_altitude_m = row.seen.indicated_altitude_m;
    row.north_m = row.east_m = 0.0;
    row.altitude_m = row.seen.indicated_altitude_m;
    row.yaw_rad = row.seen.heading_rad;
    row.pitch_rad = row.seen.pitch_rad;
    row.seen.bank_rad = i == 0 ? row.seen.bank_rad : run_on(row.seen.bank_rad, rows_[i - 1].seen.bank_rad);
    row.roll_rad = row.seen.bank_rad;
    row.tas_mps = row.seen.indicated_airspeed_mps;
    row.climb_mps = row.seen.vertical_speed_mps;
    row.alpha_rad = 0.0;
    row.through_air_B_mps = {row.tas_mps, 0.0, 0.0};
  }
}

void ReplayTrack::read_truth(const std::filesystem::path& file) {
  std::error_code error;
  if (!std::filesystem::exists(file, error)) return;
  CsvRequest request;
  request.numbers = {"t_s",       "alpha_deg", "beta_deg",         "tas_kt",         "altitude_ft",
                     "climb_mps", "roll_deg",  "gust_forward_mps", "gust_right_mps", "gust_down_mps",
                     "pitch_deg"};
  request.least_rows = 2;
  const NumericTable table = read_csv(file, request);
  rows_.resize(std::min(rows_.size(), table.rows));
  has_truth_ = true;
  const auto of = [&](const char* name) -> const std::vector<double>& { return table.column(name); };
  const std::vector<double>&alpha = of("alpha_deg"), &beta = of("beta_deg"), &tas = of("tas_kt"),
        &height = of("altitude_ft"), &climb = of("climb_mps"), &roll = of("roll_deg"),
        &pitch = of("pitch_deg"), &forward = of("gust_forward_mps"), &right = of("gust_right_mps"),
        &down = of("gust_down_mps");
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    Row& row = rows_[i];
    row.tas_mps = tas[i] * kKnot;
    row.altitude_m = height[i] * kFoot;
    row.climb_mps = climb[i];
    row.pitch_rad = pitch[i] * kDegree;
    row.roll_rad = i == 0 ? roll[i] * kDegree : run_on(roll[i] * kDegree, rows_[i - 1].roll_rad);
    row.alpha_rad = alpha[i] * kDegree;
    const double b = beta[i] * kDegree;
    row.through_air_B_mps = {row.tas_mps * std::cos(row.alpha_rad) * std::cos(b) + forward[i],
                             row.tas_mps * std::sin(b) + right[i],
                             row.tas_mps * std::sin(row.alpha_rad) * std::cos(b) + down[i]};
  }
}

}  // namespace stallwright::view
