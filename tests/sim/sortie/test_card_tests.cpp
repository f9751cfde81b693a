// Test cards as files: what a good one says, and that each mistake is told at its own line.
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <sstream>

#include "aircraft/input_error.hpp"
#include "sim/sortie/test_card_file.hpp"
#include "tests/sim/sortie/card_text.hpp"

using namespace stallwright;
using card_text::kGood;
using card_text::with;

namespace {

/// What the loader says of a text, after the folder's name; "" if nothing.
std::string complaint(const std::string& text) {
  const card_text::Folder folder;
  const auto file = folder.write(text);
  try {
    load_test_card(file);
  } catch (const InputError& error) {
    const std::string all = error.what();
    REQUIRE(all.find('\n') == std::string::npos);
    REQUIRE(all.rfind(file.string(), 0) == 0);
    return all.substr(folder.path().string().size() + 1);
  }
  return "";
}

std::string path_complaint(const std::filesystem::path& path) {
  try {
    load_test_card(path);
  } catch (const InputError& error) {
    return error.what();
  }
  return "";
}

struct Row {
  std::string unit, range, fallback;
};

/// Rows of the tables of the page: field -> unit, range, default.
std::map<std::string, Row> rows_of_page() {
  std::ifstream in(std::string(STALLWRIGHT_SOURCE_DIR) + "/assets/cards/README.md");
  std::map<std::string, Row> rows;
  for (std::string line; std::getline(in, line);) {
    if (line.rfind("| `", 0) != 0) continue;
    std::istringstream cells(line.substr(2));
    std::string field, cell;
    Row row;
    std::getline(cells, field, '|');
    for (auto* part : {&row.unit, &row.range, &row.fallback}) {
      std::getline(cells, cell, '|');
      *part = cell.substr(1, cell.size() - 2);
    }
    rows[field.substr(1, field.rfind('`') - 1)] = row;
  }
  return rows;
}

/// A card in which the loader comes past every field.
const std::string kFull = with("[[point]]\nname = \"stall\"", R"([[point]]
name = "run"
flap_setting = 0
power = "descent"
descent_fpm = 300
slow_through_ktps = 1
from_above_stall_kt = 20
to_above_stall_kt = 8
[[point]]
name = "stall")");

}  // namespace

TEST_CASE("a card's values arrive in its own units, and what it leaves out is the default",
          "[sortie][card]") {
  const card_text::Folder folder;
  const TestCard card = load_test_card(folder.write(kFull, "mine.toml"));
  CHECK(card.key == "mine");
  CHECK(card.name == "Test");
  CHECK(card.working_height_ft == 3000.0);
  CHECK(card.floor_ft == 1500.0);
  CHECK(card.clearing_turns);
  REQUIRE(card.points.size() == 4);
  const TestPoint &approach = card.points[0], &warning = card.points[1], &run = card.points[2],
                  &stall = card.points[3];
  CHECK(approach.target == TargetKind::stall_multiple);
  CHECK(approach.target_value == 1.3);
  CHECK(approach.record_s == 12.5);
  CHECK(approach.bands.speed_low_kt == Bands{}.speed_low_kt);
  CHECK(approach.past_limit == PastLimit::record_flagged);
  CHECK(warning.target == TargetKind::stall_margin);
  CHECK(warning.target_value == 7.0);
  CHECK(warning.bands.speed_low_kt == 2.0);
  CHECK(warning.bands.speed_high_kt == Bands{}.speed_high_kt);
  CHECK(warning.past_limit == PastLimit::give_up);
  CHECK(run.power == PowerRule::descent);
  CHECK(run.descent_fpm == 300.0);
  CHECK(run.target == TargetKind::slow_through);
  CHECK(run.from_above_stall_kt == 20.0);
  CHECK(run.to_above_stall_kt == 8.0);
  CHECK(stall.is_stall());
  CHECK(stall.power == PowerRule::idle);
  CHECK(stall.entry_rate_ktps == 1.0);
  CHECK(std::isnan(stall.target_value));
  CHECK(stall.repeats == 2);
}

TEST_CASE("each mistake in a card is told in one line with its place, what was expected and what was found",
          "[sortie][card]") {
  REQUIRE(complaint(kGood) == "");
  REQUIRE(complaint(kFull) == "");
  const auto [text, expected] = GENERATE(table<std::string, std::string>({
      {with("12.5", "-3"), "card.toml:12: point[1].record_s: expected a number from 1 to 120 s, found -3"},
      {with("12.5", "nan"), "card.toml:12: point[1].record_s: expected a number from 1 to 120 s, found nan"},
      {with("12.5", "inf"), "card.toml:12: point[1].record_s: expected a number from 1 to 120 s, found inf"},
      {with("12.5", "\"ten\""),
       "card.toml:12: point[1].record_s: expected a number from 1 to 120 s, found \"ten\""},
      {with("12.5", "true"),
       "card.toml:12: point[1].record_s: expected a number from 1 to 120 s, found true"},
      {with("record_s", "recrod_s"),
       "card.toml:12: point[1].recrod_s: unknown key, expected perhaps record_s"},
      {with("stall_multiple", "stall_mutliple"),
       "card.toml:11: point[1].stall_mutliple: unknown key, expected perhaps stall_multiple"},
      {with("speed_low_kt", "sped_low_kt"),
       "card.toml:20: point[2].bands.sped_low_kt: unknown key, expected perhaps speed_low_kt"},
      {with("stallwright-card-1", "stallwright-card-9"),
       "card.toml:1: format: expected stallwright-card-1, found \"stallwright-card-9\""},
      {with("\"Test\"", "7"),
       "card.toml:3: card.name: expected text of 1 to 60 characters on one line, found 7"},
      {with("floor_ft = 1500", "floor_ft = 2600"),
       "card.toml:6: card.floor_ft: expected at most 2500 ft, 500 ft below the working height, found 2600"},
      {with("flap_setting = 0", "flap_setting = 0.5"),
       "card.toml:9: point[1].flap_setting: expected a whole number, found 0.5"},
      {with("flap_setting = 0", "flap_setting = 6"),
       "card.toml:9: point[1].flap_setting: expected a number from 0 to 5, found 6"},
      {with("repeats = 2", "repeats = 1.5"),
       "card.toml:26: point[3].repeats: expected a whole number, found 1.5"},
      {with("power = \"level\"", "power = \"full\""),
       "card.toml:10: point[1].power: expected one of level, descent, idle, found \"full\""},
      {with("power = \"level\"\n", ""),
       "card.toml:7: point[1].power: expected one of level, descent, idle, found nothing"},
      {with("\"give up\"", "\"void\""),
       "card.toml:18: point[2].past_limit: expected one of record flagged, give up, found \"void\""},
  }));
  CHECK(complaint(text) == expected);
}

TEST_CASE("each thing that does not fit together in a card is told in one line with its place",
          "[sortie][card]") {
  const std::string six =
      "speed_kt, stall_multiple, above_stall_kt, below_v_fe_kt, slow_to_break_ktps, slow_through_ktps";
  const auto [text, expected] = GENERATE_COPY(table<std::string, std::string>({
      {with("stall_multiple = 1.3\n", ""),
       "card.toml:7: point[1].target: expected one of " + six + ", found none of them"},
      {with("record_s", "speed_kt = 60\nrecord_s"),
       "card.toml:11: point[1].stall_multiple: expected only one of " + six + ", found it beside speed_kt"},
      {with("power = \"level\"", "power = \"descent\""),
       "card.toml:7: point[1].descent_fpm: expected a rate of descent in ft/min with power = \"descent\", "
       "found "
       "nothing"},
      {with("record_s = 12.5", "descent_fpm = 300"),
       "card.toml:12: point[1].descent_fpm: expected no such key, since only power = \"descent\" holds a "
       "rate of "
       "descent, found it"},
      {with("record_s = 12.5", "to_above_stall_kt = 5"),
       "card.toml:12: point[1].to_above_stall_kt: expected no such key, since only slow_through_ktps runs "
       "from "
       "one speed to another, found it"},
      {with("record_s = 12.5", "turn_bank_deg = 30"),
       "card.toml:12: point[1].turn_bank_deg: expected no such key, since only slow_through_ktps runs from "
       "one speed "
       "to another, found it"},
      {with("floor_ft = 1500", "floor_ft = 1500\ntone_band_kt = 3"),
       "card.toml:7: card.tone_band_kt: expected no such key, since only purpose = \"verify\" listens for a "
       "tone, "
       "found it"},
      {with("floor_ft = 1500", "floor_ft = 1500\npurpose = \"verify\""),
       "card.toml:26: point[3].slow_to_break_ktps: expected no stall on a card that verifies, found one"},
      {with("repeats", "record_s"),
       "card.toml:26: point[3].record_s: expected no such key, since a run that slows down is recorded from "
       "end "
       "to end, found it"},
      {with("power = \"idle\"", "power = \"level\""),
       "card.toml:24: point[3].power: expected \"idle\" for a stall, or the reason in power_reason, found "
       "\"level\""},
      {with("slow_to_break_ktps = 1", "slow_to_break_ktps = 0.4"),
       "card.toml:21: point[3].bands.entry_rate_ktps: expected a band below the rate itself, 0.4 kt/s, found "
       "0.5"},
      {with("from_above_stall_kt = 20\n", "", kFull),
       "card.toml:21: point[3].from_above_stall_kt: expected a number from 4 to 100 kt, found nothing"},
      {with("to_above_stall_kt = 8", "to_above_stall_kt = 25", kFull),
       "card.toml:28: point[3].to_above_stall_kt: expected a number below from_above_stall_kt, 20 kt, found "
       "25"},
      {with("record_s = 12.5", "settle_s = 30\ntimeout_s = 30"),
       "card.toml:13: point[1].timeout_s: expected a number above settle_s, 30 s, found 30"},
      {with("name = \"warning\"", "name = \"approach\""),
       "card.toml:14: point[2].name: expected a name that no other point of flap setting 0 has, found "
       "\"approach\" as in point[1]"},
      {with("name = \"warning\"", "name = \"fast reference\""),
       "card.toml:14: point[2].name: expected fast reference, approach, warning, stall in this order, found "
       "\"fast reference\" after \"approach\""},
      {with("flap_setting = 0", "flap_setting = 1"),
       "card.toml:7: point: expected three to eight set points at flap setting 0 (slow_through_ktps makes "
       "none), "
       "found 2"},
  }));
  CHECK(complaint(text) == expected);
}

TEST_CASE("a stall may be flown with power when the card says why", "[sortie][card]") {
  CHECK(complaint(with("power = \"idle\"", "power = \"level\"\npower_reason = \"go-around\"")) == "");
}

TEST_CASE("a slow run does not count among the set points of its set", "[sortie][card]") {
  const std::string two = with("power = \"level\"\nstall_multiple = 1.3\nrecord_s = 12.5",
                               "power = \"idle\"\nslow_through_ktps = 1\nfrom_above_stall_kt = 20\n"
                               "to_above_stall_kt = 8");
  CHECK(complaint(two).find("three to eight set points at flap setting 0") != std::string::npos);
}

TEST_CASE("a set has at most eight set points and a card at most forty points", "[sortie][card]") {
  const auto points = [](int count, int per_set) {
    std::string text = "format = \"stallwright-card-1\"\n[card]\nname = \"n\"\nsummary = \"s\"\n";
    for (int i = 0; i < count; ++i) {
      text += "[[point]]\nname = \"p" + std::to_string(i) +
              "\"\nflap_setting = " + std::to_string(i / per_set) + "\npower = \"level\"\nspeed_kt = 60\n";
    }
    return text;
  };
  CHECK(complaint(points(8, 8)) == "");
  CHECK(complaint(points(9, 9)).find("at flap setting 0 (slow_through_ktps makes none), found 9") !=
        std::string::npos);
  CHECK(complaint(points(40, 8)) == "");
  CHECK(complaint(points(41, 8)) ==
        "card.toml:5: point: expected 1 to 40 tables [[point]], found a list of 41");
}

TEST_CASE("a card that is no text, too large, cut off, empty, a folder or missing gets one line",
          "[sortie][card]") {
  const card_text::Folder folder;
  const std::string at = folder.path().string();
  CHECK(complaint(std::string(3'000'000, '\0')) ==
        "card.toml: expected a TOML file of at most 1 MB, found 3000000 bytes");
  CHECK(complaint(std::string(3000, '\0')) ==
        "card.toml: expected a TOML file, found binary data (a zero byte)");
  CHECK(path_complaint(folder.path()) == at + ": expected a TOML file, found a folder");
  CHECK(path_complaint(folder.path() / "none.toml") ==
        at + "/none.toml: expected a TOML file, found no such file");
  CHECK(complaint("").rfind("card.toml:1: format: expected stallwright-card-1, found nothing", 0) == 0);
  CHECK(complaint(with("\"give up\"", "\"give")).rfind("card.toml:18: not TOML: ", 0) == 0);
  // Cut anywhere, a card is refused, unless what is left happens to be whole.
  const std::size_t whole = kGood.find("\nrepeats");
  for (std::size_t length = 0; length < whole; length += 7) {
    INFO("first " << length << " characters");
    CHECK(complaint(kGood.substr(0, length)) != "");
  }
}

TEST_CASE("the page on cards and the loader agree on each field, its unit and its range", "[sortie][card]") {
  const card_text::Folder folder;
  std::vector<KnownField> known;
  const std::string full =
      with("floor_ft = 1500", "floor_ft = 1500\npurpose = \"teach\"",
           with("slow_through_ktps = 1", "slow_through_ktps = 1\nturn_bank_deg = 30", kFull));
  load_test_card(folder.write(full), known);
  auto rows = rows_of_page();
  REQUIRE(known.size() > 30);
  for (const auto& field : known) {
    INFO(field.path);
    REQUIRE(rows.count(field.path) == 1);
    CHECK(rows[field.path].unit == (field.unit.empty() ? "-" : field.unit));
    if (field.path != "point") CHECK(rows[field.path].range == field.range);
    rows.erase(field.path);
  }
  for (const auto& [field, row] : rows) FAIL_CHECK("the page tells of " << field << ", which is not read");
}

TEST_CASE("the defaults that the page on cards prints are those of the struct", "[sortie][card]") {
  auto rows = rows_of_page();
  const auto printed = [&](const std::string& field) { return std::stod(rows.at(field).fallback); };
  const TestCard card;
  CHECK(printed("card.working_height_ft") == card.working_height_ft);
  CHECK(printed("card.terrain_ft") == card.terrain_ft);
  CHECK(printed("card.floor_ft") == card.floor_ft);
  CHECK(printed("card.order_gap") == card.order_gap);
  CHECK(printed("card.wanted_margin_kt") == card.wanted_margin_kt);
  CHECK(printed("card.tone_band_kt") == card.tone_band_kt);
  CHECK(printed("card.protected_bank_deg") == card.protected_bank_deg);
  CHECK(printed("card.wanted_uncertainty_kt") == card.wanted_uncertainty_kt);
  const TestPoint point;
  CHECK(printed("point[].settle_s") == point.settle_s);
  CHECK(printed("point[].record_s") == point.record_s);
  CHECK(printed("point[].repeats") == point.repeats);
  CHECK(printed("point[].attempts") == point.attempts);
  CHECK(printed("point[].timeout_s") == point.timeout_s);
  CHECK(printed("point[].bands.speed_low_kt") == point.bands.speed_low_kt);
  CHECK(printed("point[].bands.speed_high_kt") == point.bands.speed_high_kt);
  CHECK(printed("point[].bands.altitude_ft") == point.bands.altitude_ft);
  CHECK(printed("point[].bands.vertical_speed_fpm") == point.bands.vertical_speed_fpm);
  CHECK(printed("point[].bands.bank_deg") == point.bands.bank_deg);
  CHECK(printed("point[].bands.slip_g") == point.bands.slip_g);
  CHECK(printed("point[].bands.entry_rate_ktps") == point.bands.entry_rate_ktps);
}

TEST_CASE("the example on the page on cards is a card", "[sortie][card]") {
  std::ifstream in(std::string(STALLWRIGHT_SOURCE_DIR) + "/assets/cards/README.md");
  std::ostringstream page;
  page << in.rdbuf();
  const std::string text = page.str();
  const auto begin = text.find("```toml\n");
  REQUIRE(begin != std::string::npos);
  CHECK(complaint(text.substr(begin + 8, text.find("```", begin + 8) - begin - 8)) == "");
}

TEST_CASE("cards are found by name or path, and an unknown name lists the known ones", "[sortie][card]") {
  CHECK(list_cards() == std::vector<std::string>{"short", "thorough", "verify"});
  CHECK(find_card_file("short") == std::string(STALLWRIGHT_SOURCE_DIR) + "/assets/cards/short.toml");
  CHECK(find_card_file("some/where") == "some/where");
  CHECK(find_card_file("mine.toml") == "mine.toml");
  CHECK_THROWS_WITH(
      find_card_file("shrot"),
      "card: expected one of short, thorough, verify or a path to a .toml file, found \"shrot\"");
}
