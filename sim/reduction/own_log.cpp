#include "sim/reduction/own_log.hpp"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>

#include "aircraft/input_error.hpp"
#include "aircraft/math/units.hpp"
#include "aircraft/toml_reader.hpp"
#include "sim/air/airspeed.hpp"
#include "sim/motion/flight.hpp"
#include "sim/reduction/own_table.hpp"
#include "sim/reduction/resample.hpp"

namespace stallwright {
namespace {

constexpr double kFlying_pa = 100.0;   ///< some 25 kt: below it no ratio of pressures means anything
constexpr double kAirborne_kt = 30.0;  ///< fuel burn is counted from here where the map does not say
constexpr double kSlowestInterval_s = 1.1;

std::string rounded(double value, double step) { return number_text(std::round(value / step) * step); }

/// Impact pressure and ratio at each row of the table as it stands, before anything is interpolated.
void add_pressures(const ColumnMap& map, OwnTable& table) {
  const auto values = [&](Quantity q) -> std::vector<double>& {
    return table.values[static_cast<std::size_t>(q)];
  };
  std::vector<double>& impact = values(Quantity::impact_pressure);
  std::vector<double>& speed = values(Quantity::airspeed);
  if (!map.has(Quantity::impact_pressure))
    for (const double v : speed)
      impact.push_back(std::isnan(v) ? v : impact_pressure_of_cas(std::max(v, 0.0)));
  if (!map.has(Quantity::airspeed))
    for (const double p : impact) speed.push_back(std::isnan(p) ? p : cas_of_impact_pressure(p));
  std::vector<double>& ratio = values(Quantity::probe_ratio);
  if (!map.has(Quantity::probe_ratio)) ratio = values(Quantity::probe_pressure);
  for (std::size_t i = 0; i < ratio.size(); ++i) {
    if (!map.has(Quantity::probe_ratio)) ratio[i] /= std::max(impact[i], kFlying_pa);
    if (impact[i] < kFlying_pa) ratio[i] = 0.0;
  }
}

double flap_deg_at(const ColumnMap& map, const OwnLog& log, double t_s) {
  double deg = kNone;
  for (const FlapChange& change : map.flaps)
    if (!change.from.given() || log_seconds(log, change.from) <= t_s) deg = change.deg;
  return deg;
}

double row_mass_kg(const ColumnMap& map, double airborne_s, double t_s) {
  if (std::isfinite(map.mass_kg)) return map.mass_kg;
  return map.take_off_mass_kg - map.fuel_kgph * std::max(0.0, t_s - airborne_s) / 3600.0;
}

void fill_row(const EvenSamples& even, std::size_t i, const ColumnMap& map, const Lacks& lacks, LogRow& row) {
  const auto value = [&](Quantity q) {
    const std::vector<double>& column = even.values[static_cast<std::size_t>(q)];
    return column.empty() ? 0.0 : column[i];
  };
  row.t_s = even.t_s[i];
  row.impact_pressure_pa = value(Quantity::impact_pressure);
  row.ias_kt = std::max(value(Quantity::airspeed), 0.0) / kKnot;
  row.ratio = value(Quantity::probe_ratio);
  row.pitch_deg = value(Quantity::pitch) / math::kDegree;
  row.bank_deg = std::remainder(value(Quantity::bank) / math::kDegree, 360.0);
  row.pitch_rate_degps = value(Quantity::pitch_rate) / math::kDegree;
  row.altitude_ft = value(Quantity::altitude) / kFoot;
  row.flap_deg = value(Quantity::flap) / math::kDegree;
  row.mass_kg = value(Quantity::mass);
  row.forward_mps2 = value(Quantity::forward);
  row.right_mps2 = value(Quantity::right);
  row.down_mps2 = lacks.acceleration ? -kStandardGravity_mps2 : -value(Quantity::normal);
  if (lacks.acceleration)
    row.forward_mps2 = row.right_mps2 = 0.0;
  else if (!map.has(Quantity::forward))
    row.forward_mps2 = kStandardGravity_mps2 * std::sin(row.pitch_deg * math::kDegree);
  if (map.has(Quantity::stick))
    row.stick_aft = std::clamp(
        2.0 * (value(Quantity::stick) - map.stick_forward) / (map.stick_aft - map.stick_forward) - 1.0, -1.0,
        1.0);
}

/// Pitch rate from pitch over +-0.1 s, without reaching across a gap.
void add_pitch_rate(OwnLog& log) {
  constexpr std::size_t kReach = 5;
  std::vector<double> rate(log.rows.size(), 0.0);
  for (std::size_t i = kReach; i + kReach < log.rows.size(); ++i) {
    const LogRow &before = log.rows[i - kReach], &after = log.rows[i + kReach];
    const double span_s = after.t_s - before.t_s;
    if (span_s < 2.5 * kRowInterval_s * static_cast<double>(kReach))
      rate[i] = (after.pitch_deg - before.pitch_deg) / span_s;
  }
  for (std::size_t i = 0; i < rate.size(); ++i) log.rows[i].pitch_rate_degps = rate[i];
}

void add_constants(const ColumnMap& map, OwnLog& log) {
  const auto airborne = std::find_if(log.rows.begin(), log.rows.end(),
                                     [](const LogRow& row) { return row.ias_kt >= kAirborne_kt; });
  const double airborne_s = map.take_off.given()         ? log_seconds(log, map.take_off)
                            : airborne != log.rows.end() ? airborne->t_s
                                                         : log.rows.front().t_s;
  for (LogRow& row : log.rows) {
    if (!map.has(Quantity::mass) && !log.lacks.mass) row.mass_kg = row_mass_kg(map, airborne_s, row.t_s);
    if (!map.has(Quantity::flap)) row.flap_deg = flap_deg_at(map, log, row.t_s);
  }
  if (std::isfinite(map.take_off_mass_kg) && !map.take_off.given())
    log.warnings.push_back("fuel burn is counted from " + moment_text(log, airborne_s) +
                           ", where the airspeed first comes to " + number_text(kAirborne_kt) + " kt");
  for (const LogRow& row : log.rows)
    if (!log.lacks.mass && !(row.mass_kg >= 50.0))
      throw InputError(map.file +
                       ": constants.fuel_kg_per_h: expected a mass of 50 kg or more at all times, found " +
                       rounded(row.mass_kg, 0.1) + " kg at " + moment_text(log, row.t_s));
}

Lacks lacks_of(const ColumnMap& map) {
  Lacks lacks;
  lacks.acceleration = !map.has(Quantity::normal);
  lacks.chordwise = !lacks.acceleration && !map.has(Quantity::forward) && !map.has(Quantity::pitch);
  lacks.mass = !map.has(Quantity::mass) && std::isnan(map.mass_kg) && std::isnan(map.take_off_mass_kg);
  lacks.pitch = !map.has(Quantity::pitch);
  lacks.stick = !map.has(Quantity::stick);
  lacks.bank = !map.has(Quantity::bank);
  lacks.altitude = !map.has(Quantity::altitude);
  lacks.flap = !map.has(Quantity::flap) && map.flaps.empty();
  return lacks;
}

void say_sampling(const EvenSamples& even, OwnLog& log) {
  const std::string every = "every " + rounded(log.interval_s, 0.001) + " s";
  if (std::abs(log.interval_s - kRowInterval_s) > 1e-4)
    log.warnings.push_back("rows come " + every + " and are put at every 0.02 s in straight lines");
  if (log.interval_s > kSlowestInterval_s)
    log.warnings.push_back("rows come " + every +
                           ": more slowly than once a second a stall cannot be followed");
  if (even.gaps > 0)
    log.warnings.push_back(std::to_string(even.gaps) +
                           (even.gaps == 1 ? " gap, of " : " gaps, the longest of ") +
                           rounded(even.largest_gap_s, 0.01) + " s; no record reaches across one");
}

/// Rows so far apart, or so many hours of them, are a time in another unit; filling them up would take all memory.
void refuse_slow_time(const OwnTime& time, const std::string& name) {
  constexpr double kFarApart_s = 5.0, kLongest_s = 24.0 * 3600.0;
  if (time.interval_s > kFarApart_s)
    throw InputError(name + ": column of time: expected rows at most " + number_text(kFarApart_s) +
                     " s apart, found one every " + rounded(time.interval_s, 0.001) +
                     " s (is the time in another unit?)");
  double sum_s = 0.0;
  for (std::size_t i = 1; i < time.s.size(); ++i)
    sum_s += std::min(time.s[i] - time.s[i - 1], 2.5 * kFarApart_s);
  if (sum_s > kLongest_s)
    throw InputError(name + ": column of time: expected at most 24 h of rows, found " +
                     rounded(sum_s / 3600.0, 0.1) + " h (is the time in another unit?)");
}

}  // namespace

OwnLog parse_own_log(std::string_view text, const std::string& name, const ColumnMap& map) {
  OwnTable table = parse_own_table(text, name, map);
  const OwnTime time = running_time(table.of(Quantity::time), map.clock, name, table.line);
  add_pressures(map, table);
  refuse_slow_time(time, name);
  const EvenSamples even = resampled(table, time);
  if (even.t_s.size() < 2)
    throw InputError(name +
                     ": expected rows in which every mapped column has a number, found none close together");
  OwnLog log;
  log.file = name;
  log.clock = map.clock;
  log.lacks = lacks_of(map);
  log.interval_s = time.interval_s;
  log.warnings = table.warnings;
  log.warnings.insert(log.warnings.end(), time.warnings.begin(), time.warnings.end());
  say_sampling(even, log);
  log.rows.resize(even.t_s.size());
  for (std::size_t i = 0; i < even.t_s.size(); ++i) fill_row(even, i, map, log.lacks, log.rows[i]);
  if (map.has(Quantity::mark)) log.mark = even.values[static_cast<std::size_t>(Quantity::mark)];
  if (map.has(Quantity::pitch) && !map.has(Quantity::pitch_rate)) add_pitch_rate(log);
  add_constants(map, log);
  return log;
}

OwnLog read_own_log(const std::filesystem::path& file, const ColumnMap& map) {
  const std::string name = file.string();
  std::error_code ignored;
  if (std::filesystem::is_directory(file, ignored))
    throw InputError(name + ": expected a log, found a folder");
  if (!std::filesystem::exists(file, ignored))
    throw InputError(name + ": expected a log, found no such file");
  std::ifstream stream(file, std::ios::binary);
  if (!stream) throw InputError(name + ": expected a file that can be read, found that it cannot be opened");
  const std::string content{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
  return parse_own_log(content, name, map);
}

double log_seconds(const OwnLog& log, const MapTime& time) {
  constexpr double kDay_s = 86400.0;
  double s = time.s;
  if (!time.clock || log.rows.empty()) return s;
  // The day that brings it nearest to the log's beginning: a recorder may be switched on after take-off.
  while (s < log.rows.front().t_s - 0.5 * kDay_s) s += kDay_s;
  while (s > log.rows.front().t_s + 0.5 * kDay_s && s > log.rows.back().t_s) s -= kDay_s;
  return s;
}

std::string moment_text(const OwnLog& log, double time_s) {
  const std::string seconds = rounded(time_s, 0.01) + " s";
  return log.clock ? seconds + " (" + clock_text(time_s) + ")" : seconds;
}

std::size_t row_at(const OwnLog& log, double time_s) {
  const auto at = std::lower_bound(log.rows.begin(), log.rows.end(), time_s - 1e-6,
                                   [](const LogRow& row, double t) { return row.t_s < t; });
  return static_cast<std::size_t>(at - log.rows.begin());
}

bool unbroken(const OwnLog& log, std::size_t begin, std::size_t end) {
  for (std::size_t i = begin + 1; i < end; ++i)
    if (log.rows[i].t_s - log.rows[i - 1].t_s > 1.5 * kRowInterval_s) return false;
  return true;
}

}  // namespace stallwright
