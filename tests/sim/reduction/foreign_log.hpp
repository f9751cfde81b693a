#pragma once
#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <functional>
#include <string>
#include <vector>

#include "sim/reduction/own_reduction.hpp"
#include "sim/reduction/record_finder.hpp"
#include "tests/sim/study/study_setup.hpp"

/// A rehearsed flight, written as somebody else's recorder would have.
namespace stallwright::own_log_test {

struct Flown {
  TestCard card;
  InstrumentGrade instruments;
  std::vector<LogRow> rows;
};

/// The short card in calm air, on marram.
inline Flown fly(const std::string& sensors, std::uint64_t seed) {
  SortieConfig config = study_test::sortie("marram", "current", sensors);
  config.seed = seed;
  MemorySink sink;
  fly_sortie(config, sink);
  return {config.card, config.instruments, sink.log};
}

/// One column of the foreign log: its header, a table of the map, and its text.
struct ForeignColumn {
  std::string header, table;
  std::function<std::string(const LogRow&)> text;
};

inline std::string digits(double value, int decimals) {
  char text[64];
  std::snprintf(text, sizeof text, "%.*f", decimals, value);
  return text;
}

constexpr double kLogBegins_s = 86400.0 - 60.0;  ///< time of day at which the log begins: 23:59

inline std::string clock(double t_s) {
  const long ms = std::lround((kLogBegins_s + t_s) * 1000.0) % 86400000;
  char text[32];
  std::snprintf(text, sizeof text, "%02ld:%02ld:%02ld.%03ld", ms / 3600000, ms / 60000 % 60, ms / 1000 % 60,
                ms % 1000);
  return text;
}

inline std::string table_of(const std::string& key, const std::string& name, const std::string& rest) {
  return "[column." + key + "]\nname = \"" + name + "\"\n" + rest;
}

/// Units and signs unlike ours in every column.
inline std::vector<ForeignColumn> foreign_columns() {
  constexpr double kG = 9.80665;
  return {
      {"UTC", table_of("time", "UTC", "unit = \"clock\"\n"), [](const LogRow& r) { return clock(r.t_s); }},
      {"IAS km/h", table_of("airspeed", "IAS km/h", "unit = \"km/h\"\n"),
       [](const LogRow& r) { return digits(r.ias_kt * 1.852, 4); }},
      {"Pitot", table_of("impact_pressure", "Pitot", "unit = \"inH2O\"\n"),
       [](const LogRow& r) { return digits(r.impact_pressure_pa / 249.08891, 6); }},
      {"AOA dP", table_of("probe_pressure", "AOA dP", "unit = \"psi\"\npositive = \"fast\"\n"),
       [](const LogRow& r) { return digits(-r.ratio * r.impact_pressure_pa / 6894.7573, 8); }},
      {"Nose", table_of("pitch", "Nose", "unit = \"deg\"\npositive = \"down\"\n"),
       [](const LogRow& r) { return digits(-r.pitch_deg, 4); }},
      {"Roll", table_of("bank", "Roll", "unit = \"rad\"\npositive = \"left\"\n"),
       [](const LogRow& r) { return digits(-r.bank_deg * 3.14159265358979 / 180.0, 7); }},
      {"q", table_of("pitch_rate", "q", "unit = \"rad/s\"\n"),
       [](const LogRow& r) { return digits(r.pitch_rate_degps * 3.14159265358979 / 180.0, 7); }},
      {"Az", table_of("normal", "Az", "unit = \"g\"\npositive = \"up\"\n"),
       [](const LogRow& r) { return digits(-r.down_mps2 / kG, 6); }},
      {"Ax", table_of("forward", "Ax", "unit = \"g\"\npositive = \"aft\"\n"),
       [](const LogRow& r) { return digits(-r.forward_mps2 / kG, 6); }},
      {"Ay", table_of("right", "Ay", "unit = \"g\"\n"),
       [](const LogRow& r) { return digits(r.right_mps2 / kG, 6); }},
      {"Height", table_of("altitude", "Height", "unit = \"m\"\n"),
       [](const LogRow& r) { return digits(r.altitude_ft * 0.3048, 3); }},
      {"Elevator", table_of("stick", "Elevator", "forward_stop = 20\naft_stop = -25\n"),
       [](const LogRow& r) { return digits(-2.5 - 22.5 * r.stick_aft, 4); }},
      {"Weight", table_of("mass", "Weight", "unit = \"lb\"\n"),
       [](const LogRow& r) { return digits(r.mass_kg / 0.45359237, 4); }},
  };
}

inline std::vector<ForeignColumn> without(std::vector<ForeignColumn> columns,
                                          const std::vector<std::string>& headers) {
  std::erase_if(columns, [&](const ForeignColumn& column) {
    return std::find(headers.begin(), headers.end(), column.header) != headers.end();
  });
  return columns;
}

/// Those rows that a recorder of so many rows a second takes: the first at or after each of its ticks.
inline std::vector<LogRow> thinned(const std::vector<LogRow>& rows, double per_second) {
  std::vector<LogRow> out;
  double next_s = rows.front().t_s;
  for (const LogRow& row : rows) {
    if (row.t_s < next_s - 1e-6) continue;
    out.push_back(row);
    next_s += 1.0 / per_second;
  }
  return out;
}

inline std::string joined(const std::vector<std::string>& fields) {
  std::string line;
  for (const std::string& field : fields) line += (line.empty() ? "" : ",") + field;
  return line;
}

/// Three lines of junk, one of them with a quote left open; then the header, then the rows.
inline std::string foreign_text(const std::vector<LogRow>& rows, const std::vector<ForeignColumn>& columns) {
  std::string text = "Recorder \"seven, no. 12\nflown by nobody,,,\n\n";
  std::vector<std::string> fields;
  for (const ForeignColumn& column : columns) fields.push_back(column.header);
  text += joined(fields) + "\n";
  for (const LogRow& row : rows) {
    for (std::size_t k = 0; k < columns.size(); ++k) fields[k] = columns[k].text(row);
    text += joined(fields) + "\n";
  }
  return text;
}

inline std::string map_text(const std::vector<ForeignColumn>& columns) {
  std::string text = "format = \"stallwright-columns-1\"\n[log]\nheader_line = 4\n";
  for (const ForeignColumn& column : columns) text += column.table;
  return text;
}

/// The targets that the pilot flew to, as they were at this mass.
inline std::string target_text(const Flown& flown, bool with_mass) {
  std::string text;
  for (const Record& record : find_records(flown.rows)) {
    const LogRow& row = flown.rows[record.begin];
    if (!flown.card.points[record.point].is_steady()) continue;
    text += "[[target]]\npoint = \"" + flown.card.points[record.point].name +
            "\"\nspeed_kt = " + digits(row.target_kt, 3) + "\n";
    if (with_mass) text += "mass_kg = " + digits(row.mass_kg, 1) + "\n";
  }
  return text;
}

/// The records as they were, by time of day.
inline std::string record_text(const Flown& flown) {
  std::string text;
  for (const Record& record : find_records(flown.rows))
    text += "[[record]]\npoint = \"" + flown.card.points[record.point].name + "\"\nbegin = \"" +
            clock(flown.rows[record.begin].t_s) + "\"\nend = \"" + clock(flown.rows[record.end - 1].t_s) +
            "\"\n";
  return text;
}

/// A map from text.
inline ColumnMap map_of(const std::string& text, const TestCard& card) {
  const std::filesystem::path file =
      std::filesystem::temp_directory_path() / ("stallwright-map-" + std::to_string(::getpid()) + ".toml");
  std::ofstream(file, std::ios::binary) << text;
  struct Gone {
    std::filesystem::path file;
    ~Gone() { std::filesystem::remove(file); }
  } gone{file};
  return load_column_map(file, card);
}

/// Reduced through the map with its own records.
inline SetPoints reduce_foreign(const Flown& flown, const std::string& log, const std::string& map_words) {
  const ColumnMap map = map_of(map_words, flown.card);
  const OwnLog own = parse_own_log(log, "flight.csv", map);
  return reduce_own_log(own, given_records(map, flown.card, own), map, flown.card, flown.instruments);
}

}  // namespace stallwright::own_log_test
