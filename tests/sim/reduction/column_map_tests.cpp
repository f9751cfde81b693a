// The map of a recorder's columns: what it says, and how a wrong one is refused.
#include <catch2/catch.hpp>

#include "aircraft/input_error.hpp"
#include "sim/sortie/test_card_file.hpp"
#include "tests/sim/reduction/foreign_log.hpp"

using namespace stallwright;
using namespace stallwright::own_log_test;

namespace {

const std::filesystem::path kExample = std::string(STALLWRIGHT_SOURCE_DIR) + "/assets/columns/example.toml";

std::string example() {
  std::ifstream in(kExample, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::string replaced(std::string text, const std::string& what, const std::string& with) {
  REQUIRE(text.find(what) != std::string::npos);
  return text.replace(text.find(what), what.size(), with);
}

void refused(const std::string& what, const std::string& with, const std::vector<std::string>& words) {
  try {
    map_of(replaced(example(), what, with), load_test_card(find_card_file("short")));
    FAIL("taken: " << with);
  } catch (const InputError& error) {
    const std::string message = error.what();
    INFO(message);
    CHECK(message.find('\n') == std::string::npos);
    CHECK(message.find(".toml:") != std::string::npos);
    for (const std::string& word : words) {
      INFO("expected to read: " << word);
      CHECK(message.find(word) != std::string::npos);
    }
  }
}

}  // namespace

TEST_CASE("the example map reads as it says", "[reduction][own-log]") {
  const ColumnMap map = load_column_map(kExample, load_test_card(find_card_file("short")));
  CHECK(map.header_line == 4);
  CHECK(map.data_line == 5);
  CHECK(map.clock);
  CHECK(map.column(Quantity::airspeed)->name == "IAS");
  CHECK(map.column(Quantity::probe_pressure)->factor == 100.0);
  CHECK_FALSE(map.has(Quantity::mass));
  CHECK(map.take_off_mass_kg == 612.0);
  CHECK(map.take_off.s == 9 * 3600 + 41 * 60 + 30);
  REQUIRE(map.targets.size() == 3);
  CHECK(std::isnan(map.targets[0].mass_kg));
  CHECK(map.targets[2].point == 2);
  REQUIRE(map.records.size() == 4);
  CHECK(map.records[3].point == 3);
  CHECK(map.records[2].begin.s == 10 * 3600 + 8 * 60 + 2.5);
}

TEST_CASE("units, signs, scales and offsets of a map come out in SI", "[reduction][own-log]") {
  const TestCard card = load_test_card(find_card_file("short"));
  const std::string text =
      replaced(example(), "positive = \"slow\" ", "positive = \"fast\"\nscale = 2\noffset = 3 ");
  const MappedColumn column = *map_of(text, card).column(Quantity::probe_pressure);
  CHECK(column.factor == -200.0);
  CHECK(column.offset == -300.0);
  // Definitions: pound 0.45359237 kg, inch 25.4 mm, g0 9.80665 m/s2, mile 1609.344 m; water of 1000 kg/m3.
  const auto si = [](Quantity quantity, const std::string& name) {
    for (const LogUnit& unit : kind_of(quantity).units)
      if (unit.name == name) return unit.si;
    return 0.0;
  };
  constexpr double kInch = 0.0254, kG = 9.80665;
  CHECK_THAT(si(Quantity::probe_pressure, "psi"), Catch::WithinRel(0.45359237 * kG / (kInch * kInch), 1e-8));
  CHECK_THAT(si(Quantity::probe_pressure, "inH2O"), Catch::WithinRel(1000.0 * kG * kInch, 1e-7));
  CHECK_THAT(si(Quantity::airspeed, "mph"), Catch::WithinRel(1609.344 / 3600.0, 1e-12));
  CHECK_THAT(si(Quantity::airspeed, "km/h"), Catch::WithinRel(1.0 / 3.6, 1e-12));
  CHECK_THAT(si(Quantity::mass, "lb"), Catch::WithinRel(0.45359237, 1e-12));
}

TEST_CASE("a wrong map is refused in one line that names the nearest", "[reduction][own-log]") {
  refused("stallwright-columns-1", "stallwright-columns-2", {"format"});
  refused("[column.pitch]", "[column.pich]", {"column.pich", "pitch"});
  refused("separator =", "seperator =", {"seperator", "separator"});
  refused("unit = \"hPa\"", "unit = \"hpa\"",
          {"column.probe_pressure.unit", "hPa", "\"hpa\"; perhaps \"hPa\""});
  refused("unit = \"kt\"", "unit = \"knots\"", {"column.airspeed.unit", "kt, m/s, km/h, mph"});
  refused("positive = \"slow\"", "positive = \"sloww\"", {"slow, fast", "perhaps \"slow\""});
  refused("point = \"approach\"", "point = \"aproach\"",
          {"fast reference, approach", "perhaps \"approach\""});
  refused("[column.airspeed]", "[column.altitude2]", {"column"});
  refused("name = \"UTC\"", "", {"column.time.name"});
  refused("aft_stop = -24.0", "aft_stop = 21.5", {"aft_stop", "another number than forward_stop"});
  refused("begin = \"10:02:10\"", "begin = \"ten\"", {"begin", "hh:mm:ss", "ten"});
  refused("end = \"10:02:25\"", "", {"end_s", "expected"});
  refused("point = \"warning\"\nspeed_kt", "point = \"stall\"\nspeed_kt",
          {"target[3].point", "a steady point"});
  refused("point = \"warning\"\nspeed_kt", "point = \"approach\"\nspeed_kt", {"one target for each point"});
  refused("take_off_mass_kg = 612.0", "take_off_mass_kg = 612.0\nmass_kg = 600",
          {"one of mass_kg and take_off"});
  refused("speed_kt = 68.0", "speed_kt = nan", {"target[1].speed_kt"});
  refused("separator = \"comma\"", "decimal_comma = true", {"decimal_comma", "comma"});
  refused("header_line = 4", "header_line = 4.5", {"header_line", "whole"});
}

TEST_CASE("a point without a speed and a record outside the log are refused", "[reduction][own-log]") {
  const Flown flown = fly("ideal", 1);
  const auto columns = foreign_columns();
  const std::string log = foreign_text(thinned(flown.rows, 5.0), columns);
  const std::string targets = target_text(flown, true), map = map_text(columns);
  CHECK_THROWS_WITH(reduce_foreign(flown, log, map + record_text(flown)),
                    Catch::Contains("[[target]]") && Catch::Contains("fast reference"));
  CHECK_THROWS_WITH(
      reduce_foreign(
          flown, log,
          map + targets + "[[record]]\npoint = \"stall\"\nbegin = \"07:00:00\"\nend = \"07:00:20\"\n"),
      Catch::Contains("record[1] (stall)") && Catch::Contains("within the log"));
  const std::string twice = "[[record]]\npoint = \"approach\"\nbegin_s = 86400\nend_s = 86420\n";
  CHECK_THROWS_WITH(reduce_foreign(flown, log, map + targets + twice + twice), Catch::Contains("overlaps"));
}

TEST_CASE("the fuel that burns off lowers mass and target speed together", "[reduction][own-log]") {
  const Flown flown = fly("ideal", 1);
  const auto columns = without(foreign_columns(), {"Weight"});
  const std::string constants =
      "[constants]\ntake_off_mass_kg = 620\nfuel_kg_per_h = 900\ntake_off = \"23:59:00\"\n";
  const ColumnMap map = map_of(map_text(columns) + constants + target_text(flown, true), flown.card);
  const OwnLog log = parse_own_log(foreign_text(flown.rows, columns), "flight.csv", map);
  // A quarter of a kilogram a second.
  CHECK_THAT(log.rows[row_at(log, kLogBegins_s + 30.0)].mass_kg, Catch::WithinAbs(612.5, 1e-3));
  const GivenTarget& target = map.targets[1];
  CHECK_THAT(own_target_kt(map, flown.card, 1, 0.81 * target.mass_kg),
             Catch::WithinRel(0.9 * target.speed_kt, 1e-12));
}
