#include "sim/reduction/flight_log.hpp"

#include <cmath>

#include "aircraft/input_error.hpp"
#include "aircraft/math/elementary.hpp"
#include "sim/reduction/csv.hpp"

namespace stallwright {
namespace {

/// Numbers that a log must hold to be reduced, the range in which each makes sense, and where it goes.
struct Wanted {
  const char* name;
  double low, high;
  double LogRow::*value;
};
const Wanted kWanted[] = {
    {"target_kt", 0, 400, &LogRow::target_kt},
    {"mass_kg", 50, 20000, &LogRow::mass_kg},
    {"flap_deg", -10, 90, &LogRow::flap_deg},
    {"impact_pressure_pa", -2000, 40000, &LogRow::impact_pressure_pa},
    {"ias_kt", 0, 500, &LogRow::ias_kt},
    {"altitude_ft", -2000, 60000, &LogRow::altitude_ft},
    {"ratio", -100, 100, &LogRow::ratio},
    {"pitch_deg", -90, 90, &LogRow::pitch_deg},
    {"bank_deg", -180, 180, &LogRow::bank_deg},
    {"pitch_rate_degps", -720, 720, &LogRow::pitch_rate_degps},
    {"forward_mps2", -200, 200, &LogRow::forward_mps2},
    {"right_mps2", -200, 200, &LogRow::right_mps2},
    {"down_mps2", -200, 200, &LogRow::down_mps2},
    {"stick_aft", -1, 1, &LogRow::stick_aft},
};

[[noreturn]] void refuse(const NumericTable& table, std::size_t row, const std::string& column,
                         const std::string& expected, double found) {
  std::string value = std::to_string(found);
  throw InputError(table.file + ":" + std::to_string(table.line_of_row[row]) + ": column " + column +
                   ": expected " + expected + ", found " + value);
}

int whole(const NumericTable& table, const std::string& column, std::size_t row, int low, int high) {
  const double value = table.column(column)[row];
  if (value < low || value > high || value != std::floor(value))
    refuse(table, row, column, "a whole number from " + std::to_string(low) + " to " + std::to_string(high),
           value);
  return static_cast<int>(value);
}

}  // namespace

FlightLog read_flight_log(const std::filesystem::path& file, const TestCard& card) {
  CsvRequest request;
  request.numbers = {"t_s", "point", "repeat", "attempt", "recording", "forced", "in_band"};
  for (const Wanted& wanted : kWanted) request.numbers.emplace_back(wanted.name);
  request.least_rows = 2;
  const NumericTable table = read_csv(file, request);

  FlightLog log;
  log.warnings = table.warnings;
  log.rows.resize(table.rows);
  for (std::size_t i = 0; i < table.rows; ++i) {
    LogRow& row = log.rows[i];
    row.t_s = table.column("t_s")[i];
    row.point = whole(table, "point", i, 0, static_cast<int>(card.points.size()));
    row.repeat = whole(table, "repeat", i, 0, 1000);
    row.attempt = whole(table, "attempt", i, 0, 1000);
    row.recording = whole(table, "recording", i, 0, 1);
    row.forced = whole(table, "forced", i, 0, 1);
    row.in_band = whole(table, "in_band", i, 0, 1);
  }
  for (const Wanted& wanted : kWanted) {
    const std::vector<double>& column = table.column(wanted.name);
    for (std::size_t i = 0; i < table.rows; ++i) {
      if (column[i] < wanted.low || column[i] > wanted.high)
        refuse(table, i, wanted.name,
               "a number from " + std::to_string(static_cast<long>(wanted.low)) + " to " +
                   std::to_string(static_cast<long>(wanted.high)),
               column[i]);
      log.rows[i].*wanted.value = column[i];
    }
  }
  return log;
}

void read_tones(const std::filesystem::path& file, std::vector<LogRow>& rows) {
  CsvRequest request;
  request.numbers = {"tone"};
  const NumericTable table = read_csv(file, request);
  for (std::size_t i = 0; i < rows.size() && i < table.rows; ++i)
    rows[i].tone = whole(table, "tone", i, 0, 1);
}

std::vector<Record> find_records(const std::vector<LogRow>& rows, std::size_t least_rows) {
  std::vector<Record> records;
  for (std::size_t i = 0; i < rows.size();) {
    if (rows[i].recording == 0 || rows[i].point == 0) {
      ++i;
      continue;
    }
    std::size_t j = i;
    const auto same = [&](const LogRow& r) {
      return r.recording != 0 && r.point == rows[i].point && r.repeat == rows[i].repeat &&
             r.attempt == rows[i].attempt;
    };
    while (j < rows.size() && same(rows[j])) ++j;
    const Record found{i, j, static_cast<std::size_t>(rows[i].point - 1), rows[i].repeat, rows[i].attempt};
    if (j - i >= least_rows) {
      std::erase_if(records,
                    [&](const Record& r) { return r.point == found.point && r.repeat == found.repeat; });
      records.push_back(found);
    }
    i = j;
  }
  return records;
}

double lift_area_m2(const LogRow& row) {
  const double force = math::sqrt(row.forward_mps2 * row.forward_mps2 + row.right_mps2 * row.right_mps2 +
                                  row.down_mps2 * row.down_mps2);
  return force * row.mass_kg / std::max(row.impact_pressure_pa, 20.0);
}

}  // namespace stallwright
