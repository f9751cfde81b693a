#include "tests/published/coverage_cells.hpp"

#include <charconv>
#include <cstdio>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include "aircraft/type_file.hpp"
#include "sim/sortie/test_card_file.hpp"

namespace stallwright::coverage_test {
namespace {

AirPreset air_of(const std::string& name) {
  std::optional<double> hour;
  if (name == "day") hour = 10.0;
  return read_air_preset(std::string(STALLWRIGHT_SOURCE_DIR) + "/assets/air/" + name + ".toml", hour);
}

std::string text(double value, int decimals) {
  char out[40];
  std::snprintf(out, sizeof out, "%.*f", decimals, value);
  return std::isnan(value) ? "-" : out;
}

std::string joined(const std::vector<std::string>& cells) {
  std::string line;
  for (const std::string& cell : cells) line += (line.empty() ? "" : "\t") + cell;
  return line;
}

/// Without comments and header.
std::vector<Row> tsv_rows(const std::string& name) {
  std::ifstream in(std::string(STALLWRIGHT_SOURCE_DIR) + "/tests/published/" + name);
  std::vector<Row> rows;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#' || line.rfind("cell\t", 0) == 0) continue;
    Row& row = rows.emplace_back();
    std::istringstream cells(line);
    for (std::string cell; std::getline(cells, cell, '\t');) row.push_back(cell);
  }
  return rows;
}

}  // namespace

std::vector<Cell> cells() {
  std::vector<Cell> all;
  for (const char* air : {"calm", "light", "moderate", "day"})
    for (const char* pilot : {"sharp", "current", "rusty"})
      all.push_back({std::string(air) + "-" + pilot, air, pilot});
  return all;
}

Cell cell_named(const std::string& name) {
  for (const Cell& cell : cells())
    if (cell.name == name) return cell;
  throw std::invalid_argument("no cell is named " + name);
}

SortieConfig config_of(const Cell& cell) {
  SortieConfig config;
  config.type = load_aircraft_type(find_aircraft_file("marram"));
  config.loading = default_loading(config.type);
  config.card = load_test_card(find_card_file("short"));
  config.air = air_of(cell.air);
  config.pilot = pilot_grade(cell.pilot);
  config.instruments = instrument_grade("standard");
  return config;
}

std::vector<std::vector<WindowValue>> fly(const Cell& cell, int begin, int end, int threads,
                                          const StudyProgress& progress) {
  const SortieConfig config = config_of(cell);
  const Aircraft aircraft = make_aircraft(config.type, config.loading, config.airframe_seed);
  const std::vector<TrueSet> truth =
      find_truth(aircraft, config.card, working_air(config.card, config.air.day));
  return fly_window_sorties(config, truth, kFirstSeed + static_cast<std::uint64_t>(begin), end - begin,
                            threads, progress);
}

std::vector<std::string> row_names() {
  return {"cell",  "air",   "pilot", "point",        "window_s",           "sorties", "found", "covered",
          "share", "lower", "upper", "rms_error_kt", "mean_half_width_kt", "ground"};
}

std::vector<std::string> share_texts(int covered, int found) {
  if (found == 0) return {"-", "-", "-"};
  const Interval interval = clopper_pearson(covered, found);
  return {text(static_cast<double>(covered) / found, 4), text(interval.lower, 4), text(interval.upper, 4)};
}

std::vector<Row> rows_of(const Cell& cell, const std::vector<std::vector<WindowValue>>& sorties) {
  const SortieConfig config = config_of(cell);
  const std::vector<WindowLine> lines = window_lines(config.card);
  std::vector<Row> rows;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    CoverageTally tally;
    for (const std::vector<WindowValue>& values : sorties) tally.add(values.at(i));
    Row row{cell.name,
            cell.air,
            cell.pilot,
            lines[i].name,
            text(lines[i].window_s, 2),
            std::to_string(sorties.size()),
            std::to_string(tally.found),
            std::to_string(tally.covered)};
    for (const std::string& share : share_texts(tally.covered, tally.found)) row.push_back(share);
    row.push_back(text(tally.rms_error_kt(), 3));
    row.push_back(text(tally.mean_half_width_kt(), 3));
    row.push_back(ground_word(coverage_ground(lines[i], config.air)));
    rows.push_back(row);
  }
  return rows;
}

std::string table_hash(const std::string& after_all, const std::vector<Row>& rows) {
  std::uint64_t hash = hash_bytes(kHashSeed, after_all);
  for (const Row& row : rows) hash = hash_bytes(hash, line_of(row) + "\n");
  return hash_text(hash);
}

Hashes hashes_of(const Cell& cell, const std::vector<std::vector<WindowValue>>& sorties) {
  Hashes out;
  out.cell = cell.name;
  out.sorties = static_cast<int>(sorties.size());
  std::uint64_t hash = kHashSeed;
  for (std::size_t k = 0; k < sorties.size(); ++k) {
    hash = hash_values(hash, sorties[k]);
    if (k == 1) out.after_two = hash_text(hash);
    const std::size_t done = 4 * (k + 1), of = sorties.size();
    if (done / of > 4 * k / of) out.after_quarter.push_back(hash_text(hash));
  }
  out.after_quarter.resize(4, hash_text(hash));
  out.table = table_hash(out.after_quarter.back(), rows_of(cell, sorties));
  return out;
}

std::string hash_names() {
  return joined({"cell", "sorties", "after_two", "after_quarter", "after_half", "after_three_quarters",
                 "after_all", "table"});
}

std::string line_of(const Row& row) { return joined(row); }

std::string line_of(const Hashes& hashes) {
  return joined({hashes.cell, std::to_string(hashes.sorties), hashes.after_two, hashes.after_quarter.at(0),
                 hashes.after_quarter.at(1), hashes.after_quarter.at(2), hashes.after_quarter.at(3),
                 hashes.table});
}

std::vector<Row> stored_rows() { return tsv_rows("coverage.tsv"); }

std::vector<Hashes> stored_hashes() {
  std::vector<Hashes> all;
  for (const Row& row : tsv_rows("coverage_hashes.tsv")) {
    if (row.size() != 8)
      throw std::runtime_error("coverage_hashes.tsv: expected 8 columns; run tests/coverage");
    all.push_back({row[0], std::stoi(row[1]), row[2], {row.begin() + 3, row.begin() + 7}, row[7]});
  }
  return all;
}

}  // namespace stallwright::coverage_test
