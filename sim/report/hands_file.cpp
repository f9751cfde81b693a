#include "sim/report/hands_file.hpp"

#include <array>
#include <cmath>
#include <cstdio>

#include "aircraft/input_error.hpp"
#include "sim/crew/pilot.hpp"

namespace stallwright {
namespace {

std::vector<CsvColumn> columns() {
  return {{"t_s", 2},           {"stick_aft", 4},    {"stick_right", 4},   {"pedal_right", 4},
          {"throttle", 4},      {"flap_setting", 0}, {"feet_assisted", 0}, {"record", 0},
          {"record_anyway", 0}, {"area_clear", 0},   {"knock_it_off", 0}};
}

/// Fails at a row with the line of the file.
[[noreturn]] void fail(const NumericTable& table, std::size_t row, const char* column, const char* expected,
                       double found) {
  char text[64];
  std::snprintf(text, sizeof text, ", found %g", found);
  throw InputError(table.file + ":" + std::to_string(table.line_of_row[row]) + ": column " + column +
                   ": expected " + expected + text);
}

double axis(const NumericTable& table, std::size_t row, const char* name, double low) {
  const double value = table.column(name)[row];
  if (value < low || value > 1.0)
    fail(table, row, name, low < 0.0 ? "a number from -1 to 1" : "a number from 0 to 1", value);
  return value;
}

bool flag(const NumericTable& table, std::size_t row, const char* name) {
  const double value = table.column(name)[row];
  if (value != 0.0 && value != 1.0) fail(table, row, name, "0 or 1", value);
  return value == 1.0;
}

Hands hands_of(const NumericTable& table, std::size_t row, std::size_t flap_settings) {
  Hands hands;
  hands.stick_aft = axis(table, row, "stick_aft", -1.0);
  hands.stick_right = axis(table, row, "stick_right", -1.0);
  hands.pedal_right = axis(table, row, "pedal_right", -1.0);
  hands.throttle = axis(table, row, "throttle", 0.0);
  const double flap = table.column("flap_setting")[row];
  if (flap < 0.0 || flap >= static_cast<double>(flap_settings) || flap != std::floor(flap))
    fail(table, row, "flap_setting", "the index of a flap setting of the type", flap);
  hands.flap_setting = static_cast<std::size_t>(flap);
  hands.feet_assisted = flag(table, row, "feet_assisted");
  hands.presses = {flag(table, row, "record"), flag(table, row, "record_anyway"),
                   flag(table, row, "area_clear"), flag(table, row, "knock_it_off")};
  return as_recorded(hands);
}

}  // namespace

HandsWriter::HandsWriter(const std::filesystem::path& file) : csv_(file, columns()) {}

void HandsWriter::write(double time_s, const Hands& h) {
  const auto flag_of = [](bool b) { return b ? 1.0 : 0.0; };
  const std::array<double, 11> row{time_s,
                                   h.stick_aft,
                                   h.stick_right,
                                   h.pedal_right,
                                   h.throttle,
                                   static_cast<double>(h.flap_setting),
                                   flag_of(h.feet_assisted),
                                   flag_of(h.presses.record),
                                   flag_of(h.presses.record_anyway),
                                   flag_of(h.presses.area_clear),
                                   flag_of(h.presses.knock_it_off)};
  csv_.write_row(row);
}

std::vector<Hands> read_hands(const std::filesystem::path& file, std::size_t flap_settings) {
  CsvRequest request;
  for (const CsvColumn& column : columns()) request.numbers.push_back(column.name);
  const NumericTable table = read_csv(file, request);
  std::vector<Hands> hands;
  hands.reserve(table.rows);
  for (std::size_t row = 0; row < table.rows; ++row) {
    const double due_s = kTick_s * static_cast<double>(row), found_s = table.column("t_s")[row];
    if (std::abs(found_s - due_s) > 0.001)
      fail(table, row, "t_s", ("the time " + std::to_string(due_s) + " of this row").c_str(), found_s);
    hands.push_back(hands_of(table, row, flap_settings));
  }
  return hands;
}

}  // namespace stallwright
