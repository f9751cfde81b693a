#include <catch2/catch.hpp>

#include "aircraft/input_error.hpp"
#include "sim/report/fly_again.hpp"
#include "sim/report/hands_file.hpp"
#include "sim/report/sortie_folder.hpp"
#include "sim/sortie/test_card_file.hpp"
#include "tests/sim/cli/run_program.hpp"
#include "tests/sim/sortie/by_hand.hpp"

using namespace stallwright;
namespace fs = std::filesystem;

namespace {

const char* kHeader =
    "t_s,stick_aft,stick_right,pedal_right,throttle,flap_setting,feet_assisted,record,record_anyway,area_"
    "clear,knock_it_off\n";

/// Half a minute flown by hand into a folder, as a cockpit does it.
void fly_into(const fs::path& folder, bool end) {
  FlownSortie flown;
  flown.version = STALLWRIGHT_VERSION;
  flown.air = "light";
  flown.config = by_hand_test::config("marram");
  flown.config.air = study_test::air("light");
  Sortie sortie(flown.config);
  flown.outcome.entered_mass_kg = sortie.outcome().entered_mass_kg;
  SortieFolder out(folder,
                   {find_aircraft_file("marram"), find_card_file("short"),
                    fs::path(STALLWRIGHT_SOURCE_DIR) / "assets/air/light.toml"},
                   flown);
  by_hand_test::Person person(flown.config.type);
  while (sortie.time_s() < 30.0) {
    Hands hands = person.next(sortie);
    hands.presses.area_clear = sortie.time_s() > 5.0 && sortie.time_s() < 5.03;
    out.hands(sortie.time_s(), hands);
    sortie.tick(out, hands);
  }
  if (!end) return;
  SortieOutcome outcome = sortie.outcome();
  outcome.failure = "the pilot ended the flight";
  out.close(outcome);
}

std::string refusal_of(const std::string& text) {
  const cli_test::Folder folder;
  cli_test::put(folder.path() / "hands.csv", text);
  try {
    read_hands(folder.path() / "hands.csv", 3);
  } catch (const InputError& e) {
    return e.what();
  }
  return "accepted";
}

}  // namespace

TEST_CASE("hands come back from their file to the last bit", "[by-hand]") {
  const cli_test::Folder folder;
  std::vector<Hands> kept;
  {
    HandsWriter writer(folder.path() / "hands.csv");
    for (int k = 0; k < 200; ++k) {
      Hands hands;
      hands.stick_aft = std::sin(0.1 * k);
      hands.stick_right = -0.00004 * k;
      hands.pedal_right = std::cos(0.05 * k);
      hands.throttle = 0.005 * k;
      hands.flap_setting = static_cast<std::size_t>(k / 70);
      hands.feet_assisted = k % 3 == 0;
      hands.presses = {k == 7, k == 8, k == 9, k == 10};
      kept.push_back(as_recorded(hands));
      writer.write(0.02 * k, kept.back());
    }
  }
  CHECK(read_hands(folder.path() / "hands.csv", 3) == kept);
}

TEST_CASE("a file of hands that is wrong is refused with its line", "[by-hand]") {
  const std::string good = "0.00,0.1000,0.0000,0.0000,0.5000,0,0,0,0,0,0\n";
  REQUIRE(refusal_of(kHeader + good) == "accepted");
  CHECK_THAT(refusal_of(kHeader + good + good), Catch::Contains("hands.csv:3"));
  CHECK_THAT(refusal_of(kHeader + good + "0.04,0.1,0,0,0.5,0,0,0,0,0,0\n"),
             Catch::Contains("hands.csv:3: column t_s") && Catch::Contains("found 0.04"));
  CHECK_THAT(refusal_of(std::string(kHeader) + "0.00,1.5,0,0,0.5,0,0,0,0,0,0\n"),
             Catch::Contains("hands.csv:2: column stick_aft: expected a number from -1 to 1, found 1.5"));
  CHECK_THAT(refusal_of(std::string(kHeader) + "0.00,0,0,0,-0.5,0,0,0,0,0,0\n"),
             Catch::Contains("column throttle"));
  CHECK_THAT(refusal_of(std::string(kHeader) + "0.00,0,0,0,0.5,3,0,0,0,0,0\n"),
             Catch::Contains("column flap_setting: expected the index of a flap setting"));
  CHECK_THAT(refusal_of(std::string(kHeader) + "0.00,0,0,0,0.5,0,0,2,0,0,0\n"),
             Catch::Contains("column record: expected 0 or 1, found 2"));
}

TEST_CASE(
    "a sortie flown by hand flies again from its folder byte for byte, and a hand moved in the file shows",
    "[by-hand]") {
  const cli_test::Folder folder;
  fly_into(folder.path() / "s", true);
  CHECK(read_sortie(folder.path() / "s").config.by_hand);
  const FlownAgain again = fly_again(folder.path() / "s");
  CHECK(again.same());
  CHECK_FALSE(again.cut_short);
  CHECK(again.flown_s == Approx(30.0));
  // One stick, one tick, one step of a ten-thousandth at 10 s.
  const fs::path file = folder.path() / "s" / "hands.csv";
  std::string text = cli_test::text_of(file);
  const auto at = text.find("\n10.00,");
  REQUIRE(at != std::string::npos);
  const auto comma = text.find(',', text.find(',', at) + 1);
  text[comma - 1] = text[comma - 1] == '5' ? '6' : '5';
  cli_test::put(file, text);
  const FlownAgain other = fly_again(folder.path() / "s");
  REQUIRE(other.truth_differs_s);
  CHECK(*other.truth_differs_s == Approx(10.02));
}

TEST_CASE("a flight by hand that was cut off is compared as far as its files go", "[by-hand]") {
  const cli_test::Folder folder;
  fly_into(folder.path() / "s", false);
  const FlownAgain again = fly_again(folder.path() / "s");
  CHECK(again.cut_short);
  CHECK(again.same());
}

TEST_CASE("`stallwright replay` says whether a sortie comes out the same, by hand or not", "[by-hand][cli]") {
  const cli_test::Folder folder;
  fly_into(folder.path() / "s", true);
  const auto run = cli_test::run(folder, "replay s");
  CHECK(run.status == 0);
  CHECK_THAT(run.out, Catch::Contains("truth.csv: the same, byte for byte, over 30.00 s"));
  std::string truth = cli_test::text_of(folder.path() / "s" / "truth.csv");
  truth[truth.size() / 2] = truth[truth.size() / 2] == '1' ? '2' : '1';
  cli_test::put(folder.path() / "s" / "truth.csv", truth);
  const auto spoilt = cli_test::run(folder, "replay s");
  CHECK(spoilt.status == 1);
  CHECK_THAT(spoilt.out, Catch::Contains("truth.csv: differs from"));
  CHECK(cli_test::run(folder, "replay nowhere").status == 2);
}
