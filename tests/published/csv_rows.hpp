#pragma once
#include <fstream>
#include <limits>
#include <sstream>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace stallwright::published {

/// Cells of a file in tests/published/data as they stand: lines that start with # and the header row are left out.
inline std::vector<std::vector<std::string>> csv_cells(const std::string& name) {
  std::ifstream file(std::string(STALLWRIGHT_TESTS_DIR) + "/published/data/" + name);
  if (!file) throw std::runtime_error("cannot read " + name);
  std::vector<std::vector<std::string>> rows;
  bool header_seen = false;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line[0] == '#') continue;
    if (!std::exchange(header_seen, true)) continue;
    std::vector<std::string> row;
    std::istringstream cells(line + ",");
    for (std::string cell; std::getline(cells, cell, ',');) row.push_back(cell);
    rows.push_back(row);
  }
  return rows;
}

/// The number that a cell begins with; NaN if it begins with none.
inline double csv_number(const std::string& cell) {
  std::istringstream number(cell);
  double value = 0.0;
  return number >> value ? value : std::numeric_limits<double>::quiet_NaN();
}

/// Number rows of such a file; an empty or non-numeric cell is a NaN.
inline std::vector<std::vector<double>> csv_rows(const std::string& name) {
  std::vector<std::vector<double>> rows;
  for (const auto& cells : csv_cells(name)) {
    std::vector<double>& row = rows.emplace_back();
    for (const std::string& cell : cells) row.push_back(csv_number(cell));
  }
  return rows;
}

}  // namespace stallwright::published
