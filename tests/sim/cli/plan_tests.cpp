#include <catch2/catch.hpp>
#include <cmath>
#include <nlohmann/json.hpp>
#include <sstream>

#include "sim/cli/plan_floor.hpp"
#include "tests/sim/cli/run_program.hpp"

namespace stallwright::cli_test {
namespace {

using Json = nlohmann::json;

Json plan(const std::string& arguments) {
  const Folder folder;
  const Result result = run(folder, "plan --json " + arguments);
  INFO(arguments << "\n" << result.err);
  REQUIRE(result.err.empty());
  return Json::parse(result.out);
}

std::string library_file(const std::string& name) { return text_of(fs::path(STALLWRIGHT_SOURCE_DIR) / name); }

std::string with(std::string text, const std::string& old, const std::string& now) {
  const std::size_t at = text.find(old);
  REQUIRE(at != std::string::npos);
  return text.replace(at, old.size(), now);
}

/// The plan of the short card, or of an aeroplane, with one line of it changed.
Json plan_of(const std::string& option, const std::string& text, const std::string& more = "") {
  const Folder folder;
  put(folder / "changed.toml", text);
  return plan(option + " '" + (folder / "changed.toml").string() + "' " + more);
}

double number(const Json& json, const char* path) { return json.at(Json::json_pointer(path)).get<double>(); }

bool no_go_says(const Json& plan, const std::string& words) {
  for (const Json& item : plan.at("items"))
    if (!item.at("ok").get<bool>() && item.at("text").get<std::string>().find(words) != std::string::npos)
      return true;
  return false;
}

}  // namespace

TEST_CASE("a forward centre of gravity asks for more stick, stalls faster and is more stable",
          "[cli][plan]") {
  for (const std::string type : {"marram", "sarsen", "tarnfell"}) {
    CAPTURE(type);
    const Json b = plan("--aircraft " + type).at("balance");
    const auto at = [&](int row, const char* key) { return b.at("at").at(row).at(key).get<double>(); };
    for (const int row : {0, 1}) {
      CHECK(at(row, "cg_aft_m") < at(row + 1, "cg_aft_m"));
      CHECK(at(row, "stick_aft_level") > at(row + 1, "stick_aft_level"));
      CHECK(at(row, "stick_aft_stall") > at(row + 1, "stick_aft_stall"));
      CHECK(at(row, "stall_kt") > at(row + 1, "stall_kt"));
      CHECK(at(row, "static_margin") > at(row + 1, "static_margin"));
    }
    // Every type is stable within its envelope; the aft limit is ahead of the neutral point.
    CHECK(number(b, "/neutral_point_m") > at(2, "cg_aft_m"));
  }
}

TEST_CASE("climb falls with height and heat, and flaps cost some of it", "[cli][plan]") {
  const std::string card = library_file("assets/cards/thorough.toml");
  const Json low = plan("--card thorough"), hot = plan("--card thorough --temperature-offset 25");
  const Json high = plan_of("--card", with(card, "terrain_ft = 0.0", "terrain_ft = 9000.0"));
  CHECK(number(low, "/climb/0/rate_fpm") > number(low, "/climb/1/rate_fpm"));
  CHECK(number(hot, "/climb/0/rate_fpm") < number(low, "/climb/0/rate_fpm") - 20.0);
  CHECK(number(high, "/climb/0/rate_fpm") < number(hot, "/climb/0/rate_fpm"));
  CHECK(number(high, "/density_altitude_ft") == Approx(13000.0).margin(15.0));
}

TEST_CASE("a plan at a height where no climb is left is a no", "[cli][plan]") {
  const std::string card = library_file("assets/cards/short.toml");
  const Json high =
      plan_of("--card", with(card, "terrain_ft = 0.0", "terrain_ft = 14000.0"), "--temperature-offset 30");
  CHECK(number(high, "/climb/0/rate_fpm") < 200.0);
  CHECK(high.at("go") == false);
  CHECK(no_go_says(high, "climb left"));
}

TEST_CASE("indicated speeds follow the position error of the type", "[cli][plan]") {
  const std::string type = library_file("aircraft/types/marram.toml");
  const auto errors = [&](const char* zero, const char* slope) {
    return with(with(type, "error_at_zero_alpha = 0.01", std::string("error_at_zero_alpha = ") + zero),
                "error_per_rad = -0.12", std::string("error_per_rad = ") + slope);
  };
  const auto ias = [](const Json& p, int i) { return p.at("points").at(i).at("ias_kt").get<double>(); };
  const auto cas = [](const Json& p, int i) { return p.at("points").at(i).at("target_kt").get<double>(); };
  // A share e of the impact pressure in the static line takes sqrt(1 - e) of a slow speed: 0.96 leaves 0.9798. To the
  // first order in compressibility, which is 1e-3 of q_c here, so 1e-4 is the tolerance.
  const Json reads_low = plan_of("--aircraft", errors("0.04", "0.0"));
  for (const int i : {0, 1, 2})
    CHECK(ias(reads_low, i) == Approx(cas(reads_low, i) * std::sqrt(0.96)).epsilon(1e-4));
  // With a slope the slow point, at more angle, reads higher against its CAS than the fast one.
  const Json sloped = plan("");
  CHECK(ias(sloped, 0) / cas(sloped, 0) < ias(sloped, 2) / cas(sloped, 2) - 1e-3);
  const Json none = plan_of("--aircraft", errors("0.0", "0.0"));
  CHECK(none.at("position_error_known") == false);
  CHECK(ias(none, 2) == Approx(cas(none, 2)).epsilon(1e-9));
  const Folder folder;
  put(folder / "none.toml", errors("0.0", "0.0"));
  CHECK(run(folder, "plan --aircraft none.toml").out.find("IAS = CAS assumed") != std::string::npos);
  CHECK(run(folder, "plan").out.find("IAS = CAS assumed") == std::string::npos);
}

TEST_CASE("the floor knows what the simulated pilot loses, and common practice", "[cli][plan]") {
  const Json p = plan("--aircraft tarnfell");
  const Json& floor = p.at("floor");
  const double lost = number(floor, "/recovery_ft");
  CHECK(lost > 20.0);
  CHECK(lost < 800.0);
  CHECK(number(floor, "/stalls/0/flown") == 2);
  CHECK(number(floor, "/needed_ft") == Approx(std::fmax(1500.0, 2.0 * lost + 500.0)));
  CHECK(number(floor, "/lowest_entry_ft") >=
        number(floor, "/card_ft") + number(floor, "/stalls/0/from_entry_ft"));
  CHECK(plan("--aircraft tarnfell").at("floor") == floor);
}

TEST_CASE("a card with too low a floor is a no", "[cli][plan]") {
  const std::string card = library_file("assets/cards/short.toml");
  const Json low = plan_of("--card", with(card, "floor_ft = 1500.0", "floor_ft = 1200.0"));
  CHECK(low.at("go") == false);
  CHECK(no_go_says(low, "floor, 1200 ft above ground"));
  CHECK(plan("").at("go") == true);
}

TEST_CASE("an aeroplane that loses much height needs a higher floor and more room", "[cli][plan]") {
  TestCard card;
  card.working_height_ft = 3000.0;
  card.floor_ft = 1500.0;
  cli::StallFlown stall;
  const auto floor = [&](double recovery_ft, double from_entry_ft) {
    stall.recovery_ft = recovery_ft;
    stall.from_entry_ft = from_entry_ft;
    return cli::plan_floor(card, Day{}, {stall});
  };
  // Twice the recovery and 500 ft: 500 ft of it come to the 1,500 ft of common practice, 650 to 1,800.
  CHECK(floor(400.0, 600.0).needed_ft == 1500.0);
  CHECK(floor(650.0, 800.0).needed_ft == 1800.0);
  CHECK(floor(500.0, 600.0).floor_ok(card));
  CHECK_FALSE(floor(501.0, 600.0).floor_ok(card));
  CHECK(floor(500.0, 1500.0).room_ok(card));
  CHECK_FALSE(floor(500.0, 1501.0).room_ok(card));
  CHECK_FALSE(floor(1501.0, 600.0).room_ok(card));
  // A stall that nobody could fly gives no room at all.
  CHECK_FALSE(floor(kUnset, kUnset).room_ok(card));
}

TEST_CASE("in cold air the floor is kept higher on the altimeter, in warm air not lower", "[cli][plan]") {
  const std::string card =
      with(library_file("assets/cards/short.toml"), "terrain_ft = 0.0", "terrain_ft = 2000.0");
  const auto floor = [&](const std::string& day) {
    return number(plan_of("--card", card, day), "/floor/indicated_ft");
  };
  CHECK(floor("") == 3500.0);
  CHECK(floor("--temperature-offset 20") == 3500.0);
  // Height is overread by about the offset over the temperature: 1500 ft at 30 in 253 K are 1,500 x 30/253 = 178 ft more.
  CHECK(floor("--temperature-offset -30") == Approx(3500.0 + 178.0).margin(15.0));
}

TEST_CASE("manoeuvring speed falls with the root of the mass, and the type says if it may stall",
          "[cli][plan]") {
  const Json full = plan(""), light = plan("--load 'rear seat=0'");
  const auto speed = [](const Json& p) { return number(p, "/limits/v_a_kt"); };
  CHECK(speed(full) / speed(light) ==
        Approx(std::sqrt(number(full, "/mass_kg") / number(light, "/mass_kg"))).epsilon(1e-9));
  CHECK(speed(full) == Approx(84.0 * std::sqrt(number(full, "/mass_kg") / 600.0)).epsilon(1e-9));
  const Json barred = plan_of("--aircraft", with(library_file("aircraft/types/marram.toml"),
                                                 "stalls_permitted = true", "stalls_permitted = false"));
  CHECK(number(barred, "/limits/v_ne_kt") == Approx(125.0));
  CHECK(barred.at("limits").at("stalls_permitted") == false);
  CHECK(no_go_says(barred, "does not permit intentional stalls"));
}

TEST_CASE("the air to wait for follows the card", "[cli][plan]") {
  const auto wanted = [](const Json& p, const std::string& what) -> std::string {
    for (const Json& item : p.at("air"))
      if (item.at("what") == what) return item.at("wanted");
    return "missing";
  };
  const Json low = plan(""), high = plan("--card thorough");
  CHECK(wanted(low, "cloud base") == "4000 ft above ground");
  CHECK(wanted(high, "cloud base") == "5000 ft above ground");
  CHECK(wanted(low, "gust spread") == "6.0 kt or less");   // bands of 2 kt
  CHECK(wanted(high, "gust spread") == "4.5 kt or less");  // of 1.5 kt
  CHECK(wanted(low, "colder at working height by") == "6 \u00b0C at most");
  for (const Json& item : low.at("air")) {
    CAPTURE(item.at("what"));
    CHECK_FALSE(item.at("reason").get<std::string>().empty());
    CHECK_FALSE(item.at("basis").get<std::string>().empty());
  }
}

TEST_CASE("the text has every part, blanks to write in, and no line of more than 100 letters",
          "[cli][plan]") {
  const Folder folder;
  for (const std::string card : {"short", "thorough"}) {
    const Result page = run(folder, "plan --aircraft tarnfell --card " + card);
    CAPTURE(card, page.err);
    for (const char* part : {"Mass and balance\n", "Height, density and climb\n", "The air to wait for\n",
                             "Floor\n", "Speeds to fly\n", "Limits\n", "Checks and recovery\n",
                             "Knock it off\n", "Written down in the air\n", "Signed\n", "observed ____",
                             "Caution: ", "Pilot ____", "spin recovery", "  stall recovery"}) {
      INFO("missing: " << part);
      CHECK(page.out.find(part) != std::string::npos);
    }
    std::istringstream lines(page.out);
    for (std::string line; std::getline(lines, line);) {
      INFO(line);
      CHECK(std::count_if(line.begin(), line.end(), [](char c) { return (c & 0xC0) != 0x80; }) <= 100);
    }
  }
}

}  // namespace stallwright::cli_test
