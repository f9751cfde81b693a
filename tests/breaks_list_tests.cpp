// The list of equations that tests/breaks breaks, and what it found, must stay true of the source as it stands.
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;
using Cells = std::vector<std::string>;

const fs::path kRoot = STALLWRIGHT_SOURCE_DIR;

/// Rows of a tab-separated file below tests/published without comments and header.
std::vector<Cells> tsv_rows(const char* name) {
  std::ifstream in(kRoot / "tests/published" / name);
  std::vector<Cells> rows;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    Cells& row = rows.emplace_back();
    std::istringstream cells(line);
    for (std::string cell; std::getline(cells, cell, '\t');) row.push_back(cell);
  }
  if (!rows.empty()) rows.erase(rows.begin());
  return rows;
}

int times_in(const std::string& text, const std::string& part) {
  int times = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size())) ++times;
  return times;
}

}  // namespace

TEST_CASE("each equation to be broken stands exactly once where the list of breaks says", "[repository]") {
  const std::vector<Cells> breaks = tsv_rows("breaks.tsv");
  REQUIRE(breaks.size() == 10);
  std::set<std::string> names;
  for (const Cells& row : breaks) {
    REQUIRE(row.size() == 5);
    INFO(row[0] << ": " << row[2] << " in " << row[1]);
    CHECK(names.insert(row[0]).second);
    std::ifstream in(kRoot / row[1]);
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    CHECK(times_in(text, row[2]) == 1);
    CHECK(row[2] != row[3]);
    CHECK_FALSE(row[4].empty());
  }
}

TEST_CASE("what was found when an equation was broken is of that list, and a break turns something red",
          "[repository]") {
  const std::vector<Cells> breaks = tsv_rows("breaks.tsv");
  for (const Cells& row : tsv_rows("breaks_found.tsv")) {
    REQUIRE(row.size() >= 8);
    INFO(row[0] << " was another break when tests/breaks ran; run it again");
    bool listed = false;
    for (const Cells& known : breaks) listed = listed || Cells(row.begin(), row.begin() + 5) == known;
    CHECK(listed);
    CHECK((std::stoi(row[5]) > 0 || std::stoi(row[6]) > 0));
  }
}
