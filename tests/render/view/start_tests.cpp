// The start page's choice: its file, what it comes to, and why it cannot be flown.
#include <catch2/catch.hpp>
#include <fstream>
#include <iterator>

#include "aircraft/input_error.hpp"
#include "render/view/start_view.hpp"
#include "render/view/sun.hpp"
#include "tests/sim/sortie/card_text.hpp"

using namespace stallwright;
using namespace stallwright::view;
namespace fs = std::filesystem;

namespace {

const fs::path kRoot = STALLWRIGHT_SOURCE_DIR;

StartView shipped(std::vector<TaughtOffer> taught = {}) {
  return start_view({kRoot / "aircraft" / "types", kRoot / "assets" / "cards", kRoot / "assets" / "air"},
                    std::move(taught));
}

std::string message_of(const fs::path& file) {
  try {
    read_start_choice(file);
  } catch (const InputError& e) {
    return e.what();
  }
  return "";
}

}  // namespace

TEST_CASE("a choice survives its file, whatever stands in the texts", "[view][start]") {
  const card_text::Folder folder;
  StartChoice choice;
  choice.aircraft = "tarnfell";
  choice.load_kg = {{"front left seat", 71.0}, {"bags \"aft\"", 3.5}};
  choice.card = "own";
  choice.own_card = "cards\\mine.toml";
  choice.air = "day";
  choice.hour = 14.25;
  choice.seed = 18446744073709551615ull;
  choice.flown_by = "rusty";
  choice.pilot = "\u00c5sa \u00d6berg";
  choice.guide = false;
  const fs::path file = folder.path() / "new" / "start.toml";
  write_start_choice(file, choice);
  CHECK(read_start_choice(file) == choice);
}

TEST_CASE("a file that does not exist gives the usual choice", "[view][start]") {
  CHECK(read_start_choice("/nowhere/start.toml") == StartChoice{});
}

TEST_CASE("a bad file is one line that names file, line and field", "[view][start]") {
  const card_text::Folder folder;
  const std::string head = "format = \"stallwright-start-1\"\n";
  for (const auto& [text, expected] : std::vector<std::pair<std::string, std::string>>{
           {head + "hour = 25\n", "start.toml:2: hour: expected a number from 5 to 20 h"},
           {head + "seed = \"7x\"\n", "seed: expected a whole number"},
           {head + "seed = \"18446744073709551616\"\n", "seed: expected a whole number"},
           {head + "flown_by = \"nobody\"\n", "flown_by"},
           {head + "piolt = \"A\"\n", "piolt"},
           {"hour = 7\n", "format"},
           {"\"", "start.toml"}}) {
    CAPTURE(text);
    const std::string message = message_of(folder.write(text, "start.toml"));
    CAPTURE(message);
    CHECK(message.find(expected) != std::string::npos);
    CHECK(message.find('\n') == std::string::npos);
  }
}

TEST_CASE("what comes with the program can be flown as it stands", "[view][start]") {
  const StartView view = shipped();
  REQUIRE(view.aircraft.size() >= 3);
  CHECK(view.air.front().key == "calm");
  CHECK(view.air.back().key == "day");
  for (const AircraftOffer& aircraft : view.aircraft) {
    StartChoice choice;
    choice.aircraft = aircraft.key;
    const StartCheck check = start_check(view, choice);
    CAPTURE(aircraft.key, check.problems);
    CHECK(check.can_fly());
    CHECK(check.inside);
    CHECK(check.balance.find("inside the envelope") != std::string::npos);
  }
}

TEST_CASE("a load outside the envelope grounds the flight and says by how much", "[view][start]") {
  const StartView view = shipped();
  StartChoice choice;
  choice.load_kg = {{"front seat", 20.0}, {"rear seat", 110.0}, {"bags", 15.0}};
  const StartCheck check = start_check(view, choice);
  CHECK_FALSE(check.inside);
  CHECK_FALSE(check.can_fly());
  CHECK(check.balance.find("OUTSIDE") != std::string::npos);
  REQUIRE_FALSE(check.problems.empty());
  CHECK(check.problems[0].find("aft limit") != std::string::npos);
}

TEST_CASE("verifying needs set points of the same aeroplane", "[view][start]") {
  StartChoice choice;
  choice.card = "verify";
  CHECK(start_check(shipped(), choice).problems.at(0).find("fly the short or the thorough card first") !=
        std::string::npos);
  const StartView view = shipped({{"/flown/one", "yesterday", "Sarsen"}, {"/flown/two", "today", "Marram"}});
  CHECK(start_check(view, choice).problems.at(0).find("choose the flight") != std::string::npos);
  choice.set_points = "/flown/one";
  CHECK(start_check(view, choice).problems.at(0) == "Those set points belong to Sarsen, not to Marram.");
  choice.set_points = "/flown/two";
  CHECK(start_check(view, choice).can_fly());
}

TEST_CASE(
    "the folder of taught set points may be spelt in another way, and is named where it is none of them",
    "[view][start]") {
  const card_text::Folder folder;
  const StartView view = shipped({{folder.path(), "today", "Marram"}});
  StartChoice choice;
  choice.card = "verify";
  choice.set_points = (folder.path() / ".." / folder.path().filename()).string();
  CHECK(start_check(view, choice).can_fly());
  choice.set_points = "/elsewhere";
  CHECK(start_check(view, choice).problems.at(0) ==
        "No set points of a flight in /elsewhere, among the sorties of the logbook.");
}

TEST_CASE("an own card is read, and what is wrong with it is said", "[view][start]") {
  const card_text::Folder folder;
  const StartView view = shipped();
  StartChoice choice;
  choice.card = "own";
  CHECK(start_check(view, choice).problems.at(0) == "Name the file of your own card.");
  choice.own_card = folder.write("nothing").string();
  CHECK(start_check(view, choice).problems.at(0).find("card.toml") != std::string::npos);
  choice.own_card = (kRoot / "assets" / "cards" / "short.toml").string();
  CHECK(start_check(view, choice).can_fly());
  CHECK(start_check(view, choice).flown_card.points.size() == 4);
}

TEST_CASE("a card that the aeroplane cannot fly tells why", "[view][start]") {
  const card_text::Folder folder;
  std::string text;
  {
    std::ifstream in(kRoot / "assets" / "cards" / "short.toml");
    text.assign(std::istreambuf_iterator<char>(in), {});
  }
  StartChoice choice;
  choice.card = "own";
  choice.own_card = folder.write(card_text::with("below_v_fe_kt = 5.0", "speed_kt = 240", text)).string();
  const StartCheck check = start_check(shipped(), choice);
  REQUIRE_FALSE(check.can_fly());
  CHECK(check.problems[0].find("The card does not fit this aeroplane") == 0);
  CHECK(check.problems[0].find("V_NO") != std::string::npos);
}

TEST_CASE("names that no file has, and broken files, are problems and not crashes", "[view][start]") {
  const card_text::Folder folder;
  folder.write("format = 1", "wreck.toml");
  const StartView view = start_view({folder.path(), folder.path(), folder.path()}, {});
  REQUIRE(view.aircraft.size() == 1);
  StartChoice choice;
  choice.aircraft = "wreck";
  const StartCheck check = start_check(view, choice);
  CHECK(check.problems.at(0).find("wreck.toml") != std::string::npos);
  CHECK(check.problems.at(1) == "There is no card called short here.");
  CHECK(start_view({"/nowhere", "/nowhere", "/nowhere"}, {}).aircraft.empty());
}

TEST_CASE("a pilot's name that cannot stand in the logbook grounds the flight", "[view][start]") {
  StartChoice choice;
  choice.pilot = "A\tB";
  CHECK(start_check(shipped(), choice).problems.at(0).find("Pilot's name: expected") == 0);
}

TEST_CASE("the sun stands in the south at noon and as high as the latitude allows", "[view][start]") {
  const SunPosition noon = sun_over_the_place(12.0);
  CHECK(noon.azimuth_deg == Approx(180.0));
  CHECK(noon.elevation_deg == Approx(90.0 - 48.0 + 21.6).margin(0.2));  // declination of 30 May, from memory
  CHECK(sun_over_the_place(8.0).azimuth_deg < 180.0);
  CHECK(sun_over_the_place(8.0).elevation_deg == Approx(sun_over_the_place(16.0).elevation_deg));
  CHECK(sun_over_the_place(0.0).elevation_deg < 0.0);
  CHECK(hour_text(7.5) == "07:30");
}
