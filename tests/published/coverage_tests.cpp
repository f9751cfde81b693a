// The table of coverage as it was written down: is it whole, is it what would be flown now, and do the intervals keep
// their word where what they take for granted is so? source: JCGM-100
#include <catch2/catch.hpp>

#include "tests/published/coverage_cells.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;
using namespace stallwright::coverage_test;

namespace {

/// The cell that is flown whole: the quickest of the twelve.
const char* const kWholeCell = "calm-sharp";

const char* const kGone = "tests/published/coverage.tsv is missing or not whole: run tests/coverage";

Hashes stored(const Cell& cell) {
  for (const Hashes& hashes : stored_hashes())
    if (hashes.cell == cell.name && hashes.sorties == kSorties) return hashes;
  FAIL(kGone);
  return {};
}

void check_first_two(const std::string& air) {
  for (const Cell& cell : cells()) {
    if (cell.air != air) continue;
    const std::string before = stored(cell).after_two;
    INFO(cell.name << " is not what tests/published/coverage.tsv was made of: run tests/coverage");
    CHECK(hashes_of(cell, fly(cell, 0, 2, 1)).after_two == before);
  }
}

/// A quarter of the whole cell, from the hash that the one before it left.
void check_quarter(int quarter) {
  const Cell cell = cell_named(kWholeCell);
  const Hashes before = stored(cell);
  const auto at = static_cast<std::size_t>(quarter);
  std::uint64_t hash = quarter == 0 ? kHashSeed : std::stoull(before.after_quarter.at(at - 1), nullptr, 16);
  for (const auto& values : fly(cell, quarter * kSorties / 4, (quarter + 1) * kSorties / 4, 1))
    hash = hash_values(hash, values);
  INFO(cell.name << " is not what tests/published/coverage.tsv was made of: run tests/coverage");
  CHECK(hash_text(hash) == before.after_quarter.at(at));
}

std::vector<Row> rows_of_cell(const std::string& name) {
  std::vector<Row> rows;
  for (const Row& row : stored_rows())
    if (row.at(0) == name) rows.push_back(row);
  return rows;
}

}  // namespace

TEST_CASE("the table of coverage has twelve cells of 400 sorties and is what the hashes were taken of",
          "[coverage][repository]") {
  for (const Cell& cell : cells()) {
    INFO(cell.name);
    const Hashes hashes = stored(cell);
    const std::vector<Row> rows = rows_of_cell(cell.name);
    CHECK(table_hash(hashes.after_quarter.back(), rows) == hashes.table);
    const SortieConfig config = config_of(cell);
    const std::vector<WindowLine> lines = window_lines(config.card);
    REQUIRE(rows.size() == lines.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
      REQUIRE(rows[i].size() == row_names().size());
      CHECK(rows[i][3] == lines[i].name);
      CHECK(rows[i][5] == std::to_string(kSorties));
      CHECK(std::vector<std::string>(rows[i].begin() + 8, rows[i].begin() + 11) ==
            share_texts(std::stoi(rows[i][7]), std::stoi(rows[i][6])));
      CHECK(rows[i][13] == ground_word(coverage_ground(lines[i], config.air)));
    }
  }
}

TEST_CASE("the first two sorties of the calm cells are those of the table of coverage", "[coverage]") {
  check_first_two("calm");
}

TEST_CASE("the first two sorties of the cells in light air are those of the table of coverage",
          "[coverage]") {
  check_first_two("light");
}

TEST_CASE("the first two sorties of the cells in moderate air are those of the table of coverage",
          "[coverage]") {
  check_first_two("moderate");
}

TEST_CASE("the first two sorties of the cells of a summer morning are those of the table of coverage",
          "[coverage]") {
  check_first_two("day");
}

// Four parts, so that they fly side by side.
TEST_CASE("the first hundred sorties of one cell are those of the table of coverage",
          "[coverage][whole-cell]") {
  check_quarter(0);
}

TEST_CASE("the second hundred sorties of one cell are those of the table of coverage",
          "[coverage][whole-cell]") {
  check_quarter(1);
}

TEST_CASE("the third hundred sorties of one cell are those of the table of coverage",
          "[coverage][whole-cell]") {
  check_quarter(2);
}

TEST_CASE("the fourth hundred sorties of one cell are those of the table of coverage",
          "[coverage][whole-cell]") {
  check_quarter(3);
}

TEST_CASE("95 % intervals hold the truth in 93 to 97 % of sorties where what they take for granted is so",
          "[coverage][published]") {
  const evidence::Published source{"JCGM-100", "6.2.2 and 6.3.3, level of confidence of an interval",
                                   "from memory"};
  int held = 0;
  for (const Row& row : stored_rows()) {
    if (row.at(13) != "holds") continue;
    const int found = std::stoi(row.at(6));
    REQUIRE(found > 0);
    const Interval asked = shares_within(found);
    evidence::sense(source,
                    "marram in " + row[1] + " air, " + row[2] + " hands, " + row[3] +
                        ": share of sorties whose 95 % interval holds the truth",
                    static_cast<double>(std::stoi(row.at(7))) / found,
                    evidence::between(asked.lower, asked.upper), "1",
                    "the bounds are ours: outside them the binomial interval of " + std::to_string(found) +
                        " sorties does not meet 0.93 to 0.97");
    ++held;
  }
  INFO(kGone);
  CHECK(held == 18);  // two airs, three pilots, three points
}
