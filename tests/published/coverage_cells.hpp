#pragma once
#include <string>
#include <vector>

#include "sim/study/coverage_grid.hpp"

/// The cells of the coverage study, and the two files that tests/coverage writes of them.
namespace stallwright::coverage_test {

inline constexpr int kSorties = 400;
inline constexpr std::uint64_t kFirstSeed = 1;

struct Cell {
  std::string name;  ///< AIR-PILOT
  std::string air, pilot;
};

/// Calm, light, moderate and a summer morning at ten, by sharp, current and rusty hands.
std::vector<Cell> cells();
/// By name; throws std::invalid_argument for none of them.
Cell cell_named(const std::string& name);
/// Marram's short card with standard instruments in the cell's air, by its pilot.
SortieConfig config_of(const Cell& cell);

/// Sorties number `begin` to `end` - 1 of a cell.
std::vector<std::vector<WindowValue>> fly(const Cell& cell, int begin, int end, int threads,
                                          const StudyProgress& progress = {});

/// Hashes of a cell: after its first two sorties, after each quarter of all, and of its rows of the table after that.
struct Hashes {
  std::string cell;
  int sorties = 0;
  std::string after_two;
  std::vector<std::string> after_quarter;
  std::string table;
};

/// One row of the table: cell, air, pilot, point, window_s, sorties, found, covered, share, lower, upper, rms_error_kt,
/// mean_half_width_kt, ground. What is not there is "-".
using Row = std::vector<std::string>;
std::vector<std::string> row_names();
std::vector<Row> rows_of(const Cell& cell, const std::vector<std::vector<WindowValue>>& sorties);
Hashes hashes_of(const Cell& cell, const std::vector<std::vector<WindowValue>>& sorties);
/// Of the rows of a cell, from the hash that its sorties left.
std::string table_hash(const std::string& after_all, const std::vector<Row>& rows);
/// A share and the ends of its binomial interval, as the table prints them.
std::vector<std::string> share_texts(int covered, int found);

std::string hash_names();
std::string line_of(const Row& row);
std::string line_of(const Hashes& hashes);

/// coverage.tsv and coverage_hashes.tsv below tests/published as they stand; no rows where a file is missing.
std::vector<Row> stored_rows();
std::vector<Hashes> stored_hashes();

}  // namespace stallwright::coverage_test
