// `reduce` on the log of a real flight, by the real program.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/sim/cli/refused.hpp"
#include "tests/sim/reduction/foreign_log.hpp"

namespace stallwright::cli_test {
namespace {

using namespace own_log_test;

/// A folder with the log and the map of one flight.
void put_flight(const Folder& folder, bool with_records) {
  const Flown flown = fly("standard", 3);
  const auto columns = foreign_columns();
  put(folder / "flight.csv", foreign_text(thinned(flown.rows, 20.0), columns));
  put(folder / "map.toml",
      map_text(columns) + target_text(flown, true) + (with_records ? record_text(flown) : ""));
}

}  // namespace

TEST_CASE("windows that the program found are shown and written, and used only when they are accepted",
          "[cli]") {
  const Folder folder;
  put_flight(folder, false);
  const std::string reduce = "reduce flight.csv --columns map.toml --card short ";
  const Result shown = run(folder, reduce + "--out points.json --windows found.toml");
  INFO(shown.out << shown.err);
  CHECK(shown.status == 1);
  for (const char* word : {"to be approved", "fast reference", "stall", "Nothing is reduced yet.", "--accept",
                           "--windows", "flight manual", "qualified person"})
    CHECK(shown.out.find(word) != std::string::npos);
  CHECK_FALSE(fs::exists(folder / "points.json"));

  const Result accepted = run(folder, reduce + "--out points.json --accept");
  INFO(accepted.out << accepted.err);
  CHECK(accepted.status == 0);
  CHECK(accepted.out.find("Nothing here may be set") != std::string::npos);
  const auto points = nlohmann::json::parse(text_of(folder / "points.json"));
  CHECK(points.at("warnings").at(0).get<std::string>().find("Nothing here may be set") != std::string::npos);
  CHECK(points.at("sets").at(0).at("points").size() == 4);

  // The list that was written, put at the end of the map, gives the same points without --accept.
  put(folder / "map.toml", text_of(folder / "map.toml") + text_of(folder / "found.toml"));
  const Result listed = run(folder, reduce + "--json");
  INFO(listed.err);
  CHECK(listed.status == 0);
  const auto again = nlohmann::json::parse(listed.out);
  for (std::size_t k = 0; k < 4; ++k) {
    const auto &a = points.at("sets").at(0).at("points").at(k),
               &b = again.at("sets").at(0).at("points").at(k);
    CHECK_THAT(a.at("ratio").get<double>(), Catch::WithinAbs(b.at("ratio").get<double>(), 1e-3));
  }
}

TEST_CASE("records by time are reduced at once", "[cli]") {
  const Folder folder;
  put_flight(folder, true);
  const Result result = run(folder, "reduce flight.csv --columns map.toml --card short");
  INFO(result.err);
  CHECK(result.status == 0);
  CHECK(result.out.find("approach") != std::string::npos);
  CHECK(result.out.find("Caution:") != std::string::npos);
}

TEST_CASE("a wrong log, map or option for a real flight is refused in one line and nothing is written",
          "[cli]") {
  const Folder folder;
  put_flight(folder, true);
  const std::string log = text_of(folder / "flight.csv"), map = text_of(folder / "map.toml");
  const std::string reduce =
      "reduce flight.csv --columns map.toml --out points.json --windows w.toml --accept ";
  refused(folder, reduce, {"--card"});
  refused(folder, "reduce flight.csv --card short --accept", {"--accept", "--columns"});
  refused(folder, "reduce flight.csv --card short --windows w.toml", {"--windows", "--columns"});
  refused(folder, "reduce missing.csv --columns map.toml --card short", {"missing.csv"});
  refused(folder, "reduce flight.csv --columns missing.toml --card short", {"missing.toml"});
  refused(folder, reduce + "--card short --sensors good", {"ideal", "standard"});
  // Nothing that is read is written over, and no file is written twice.
  const std::string fine = "reduce flight.csv --columns map.toml --card short --accept ";
  refused(folder, fine + "--windows map.toml", {"--windows", "map.toml"});
  refused(folder, fine + "--out ./flight.csv", {"--out", "flight.csv"});
  refused(folder, fine + "--out same.json --windows same.json", {"--windows", "same.json"});
  refused(folder, fine + "--out nowhere/points.json", {"--out", "nowhere"});
  CHECK(text_of(folder / "map.toml") == map);
  fs::create_directory(folder / "folder");
  refused(folder, "reduce folder --columns map.toml --card short", {"folder"});
  refused(folder, "reduce flight.csv --columns map.toml --card short --out folder", {"--out", "folder"});

  std::string spoilt = log;
  const std::size_t line = spoilt.find('\n', spoilt.size() / 2) + 1;
  spoilt.replace(spoilt.find(',', line) + 1, 3, "abc");
  put(folder / "flight.csv", spoilt);
  refused(folder, reduce + "--card short", {"flight.csv:", "column IAS km/h: expected a number", "abc"});
  put(folder / "flight.csv", std::string(1 << 20, '\0'));
  refused(folder, reduce + "--card short", {"flight.csv", "NUL"});
  put(folder / "flight.csv", log);
  put(folder / "map.toml", map.substr(0, map.size() / 2) + "\n[");
  refused(folder, reduce + "--card short", {"map.toml:"});
  std::string wrong = map;
  wrong.replace(wrong.find("\"Nose\""), 6, "\"Nase\"");
  put(folder / "map.toml", wrong);
  refused(folder, reduce + "--card short", {"flight.csv:4: column Nase", "'Nose'"});
}

TEST_CASE("the help of reduce explains the options for a real flight", "[cli]") {
  const Folder folder;
  const Result help = run(folder, "reduce --help");
  CHECK(help.status == 0);
  for (const char* word : {"--columns MAP", "--accept", "--windows FILE", "assets/columns/README.md"})
    CHECK(help.out.find(word) != std::string::npos);
}

}  // namespace stallwright::cli_test
