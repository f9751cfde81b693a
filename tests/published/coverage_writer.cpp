// What tests/coverage runs, one cell at a time; hidden, since a cell is minutes of flying.
#include <unistd.h>

#include <catch2/catch.hpp>
#include <cstdlib>
#include <fstream>
#include <iostream>

#include "tests/published/coverage_cells.hpp"

using namespace stallwright;

namespace {

std::string wanted(const char* name) {
  const char* value = std::getenv(name);
  INFO("tests/coverage runs this, and sets " << name);
  REQUIRE(value != nullptr);
  return value;
}

/// On a terminal only.
StudyProgress progress_line(const std::string& cell) {
  if (::isatty(STDERR_FILENO) != 1) return {};
  return [cell](int done, int of) {
    std::cerr << "\r\033[K";
    if (done < of) std::cerr << cell << ": " << done << " of " << of << " sorties";
    std::cerr << std::flush;
  };
}

}  // namespace

TEST_CASE("names of the cells of the coverage study", "[.coverage-names]") {
  for (const coverage_test::Cell& cell : coverage_test::cells()) std::cout << cell.name << '\n';
  CHECK(coverage_test::cells().size() == 12);
}

TEST_CASE("one cell of the coverage study is flown and written down", "[.coverage]") {
  const coverage_test::Cell cell = coverage_test::cell_named(wanted("STALLWRIGHT_COVERAGE_CELL"));
  const int sorties = std::stoi(wanted("STALLWRIGHT_COVERAGE_SORTIES"));
  const std::string folder = wanted("STALLWRIGHT_COVERAGE_FOLDER");
  REQUIRE(sorties >= 2);
  const auto flown = coverage_test::fly(cell, 0, sorties, 0, progress_line(cell.name));
  std::ofstream rows(folder + "/rows"), hashes(folder + "/hashes");
  for (const coverage_test::Row& row : coverage_test::rows_of(cell, flown))
    rows << coverage_test::line_of(row) << '\n';
  hashes << coverage_test::line_of(coverage_test::hashes_of(cell, flown)) << '\n';
  rows.close(), hashes.close();
  CHECK((rows.good() && hashes.good()));
}
