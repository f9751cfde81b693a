#pragma once
#include <fstream>
#include <limits>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace stallwright::published {

/// Number rows of a file in tests/published/data: lines that start with # and the header row are left out,
/// and an empty or non-numeric cell is a NaN.
inline std::vector<std::vector<double>> csv_rows(const std::string& name) {
  std::ifstream file(std::string(STALLWRIGHT_TESTS_DIR) + "/published/data/" + name);
  if (!file) throw std::runtime_error("cannot read " + name);
  std::vector<std::vector<double>> rows;
  bool header_seen = false;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line[0] == '#') continue;
    if (!header_seen) {
      header_seen = true;
      continue;
    }
    std::vector<double> row;
    std::istringstream cells(line + ",");
    for (std::string cell; std::getline(cells, cell, ',');) {
      std::istringstream number(cell);
      double value = 0.0;
      row.push_back(number >> value ? value : std::numeric_limits<double>::quiet_NaN());
    }
    rows.push_back(row);
  }
  return rows;
}

}  // namespace stallwright::published
