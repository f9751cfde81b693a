#include <algorithm>
#include <catch2/catch.hpp>

#include "sim/reduction/reduce.hpp"
#include "tests/sim/sortie/by_hand.hpp"

using namespace stallwright;
using by_hand_test::Person;

namespace {

/// Flies until `stop` says so or the sortie ends; gives back how the card stands.
template <class Stop>
void fly(Sortie& sortie, Person& person, MemorySink& rows, const Stop& stop, double longest_s = 2400.0) {
  while (sortie.time_s() < longest_s && !stop() && sortie.tick(rows, person.next(sortie))) {
  }
}

bool has_event(const Sortie& sortie, const std::string& kind) {
  const auto& events = sortie.director().events();
  return std::any_of(events.begin(), events.end(), [&](const Event& e) { return e.kind == kind; });
}

Hands with(const Sortie& sortie, Person& person, Presses presses) {
  Hands hands = person.next(sortie);
  hands.presses = presses;
  return hands;
}

}  // namespace

TEST_CASE("the short card can be flown by hand from start to end, and gives four set points in order",
          "[by-hand]") {
  const std::string type = GENERATE("marram", "tarnfell", "sarsen");
  const SortieConfig config = by_hand_test::config(type);
  Sortie sortie(config);
  Person person(config.type);
  MemorySink rows;
  fly(sortie, person, rows, [] { return false; });
  INFO(type << ": " << sortie.outcome().failure << " at " << sortie.time_s() << " s");
  REQUIRE(sortie.outcome().finished);
  CHECK(has_event(sortie, "break"));
  const SetPoints found = reduce(rows.log, config.card, config.instruments);
  REQUIRE(found.sets.size() == 1);
  CHECK(found.sets[0].order_ok);
  for (const SetPoint& point : found.sets[0].points) CHECK(point.found());
}

TEST_CASE("a sortie flown again by the same hands is the same to the last bit", "[by-hand]") {
  SortieConfig config = by_hand_test::config("marram");
  config.air = study_test::air("light");
  Sortie first(config);
  Person person(config.type);
  MemorySink rows, again;
  std::vector<Hands> kept;
  while (first.time_s() < 60.0) {
    kept.push_back(person.next(first));
    REQUIRE(first.tick(rows, kept.back()));
  }
  Sortie second(config);
  for (const Hands& hands : kept) REQUIRE(second.tick(again, hands));
  REQUIRE(rows.truth.size() == again.truth.size());
  CHECK(second.state() == first.state());
  CHECK(truth_fields(rows.truth.back()) == truth_fields(again.truth.back()));
  // The control: one hand moved by one step once, and the flight is another.
  kept[100].stick_aft += 0.01;
  Sortie third(config);
  MemorySink other;
  for (const Hands& hands : kept) third.tick(other, hands);
  CHECK_FALSE(third.state() == first.state());
}

TEST_CASE("a record asked for off condition is refused with the reason, and forced only on demand",
          "[by-hand]") {
  SortieConfig config = by_hand_test::config("marram");
  config.card.clearing_turns = false;
  Sortie sortie(config);
  Person person(config.type);
  MemorySink rows;
  const auto standing = [&] { return sortie.director().standing(sortie.time_s(), sortie.seen().readings); };
  // Not settled yet: the bands are met, the clock is not.
  sortie.tick(rows, with(sortie, person, {}));
  sortie.tick(rows, with(sortie, person, {.record = true}));
  CHECK_THAT(standing().refusal, Catch::Contains("settling"));
  CHECK_FALSE(sortie.director().marks().recording);
  // Power off, the nose up: slow, and the reason says so.
  for (int k = 0; k < 600; ++k) {
    Hands hands = with(sortie, person, {});
    hands.throttle = 0.0;
    sortie.tick(rows, as_recorded(hands));
  }
  CHECK(standing().refusal.empty());  // what was off twelve seconds ago is no news
  const std::vector<std::string> off = standing().out_of_band;
  REQUIRE_FALSE(off.empty());
  sortie.tick(rows, with(sortie, person, {.record = true}));
  CHECK_THAT(standing().refusal,
             Catch::Contains("not on condition") && Catch::Contains(off.front().substr(2)));
  CHECK_FALSE(sortie.director().marks().recording);
  sortie.tick(rows, with(sortie, person, {.record_anyway = true}));
  CHECK(sortie.director().marks().recording);
  CHECK(sortie.director().marks().forced);
  CHECK(standing().refusal.empty());
  CHECK(has_event(sortie, "forced record"));
  CHECK(sortie.outcome().tallies.at(0).forced == 1);
}

TEST_CASE("clearing turns may be flown either way round, or cut short with a note", "[by-hand]") {
  SortieConfig config = by_hand_test::config("marram");
  Sortie sortie(config);
  Person person(config.type);
  MemorySink rows;
  REQUIRE(sortie.director().marks().phase == Phase::clearing);
  sortie.tick(rows, with(sortie, person, {.record = true}));
  sortie.tick(rows, with(sortie, person, {}));
  CHECK_THAT(sortie.director().standing(sortie.time_s(), sortie.seen().readings).refusal,
             Catch::Contains("look around first"));
  SECTION("flown") {
    fly(
        sortie, person, rows, [&] { return sortie.director().marks().phase != Phase::clearing; }, 90.0);
    CHECK(sortie.director().marks().phase == Phase::transit);
    CHECK_FALSE(has_event(sortie, "area called clear"));
    CHECK(sortie.time_s() > 15.0);
  }
  SECTION("called clear") {
    sortie.tick(rows, with(sortie, person, {.area_clear = true}));
    sortie.tick(rows, with(sortie, person, {}));
    CHECK(sortie.director().marks().phase != Phase::clearing);
    CHECK(has_event(sortie, "area called clear"));
  }
}

TEST_CASE("a person may knock an attempt off, and comes back to the same point", "[by-hand]") {
  SortieConfig config = by_hand_test::config("marram");
  config.card.clearing_turns = false;
  Sortie sortie(config);
  Person person(config.type);
  MemorySink rows;
  fly(
      sortie, person, rows, [&] { return sortie.director().marks().recording; }, 120.0);
  REQUIRE(sortie.director().marks().recording);
  sortie.tick(rows, with(sortie, person, {.knock_it_off = true}));
  CHECK_FALSE(sortie.director().marks().recording);
  CHECK(sortie.director().marks().phase == Phase::recover);
  CHECK(has_event(sortie, "knock it off"));
  fly(
      sortie, person, rows, [&] { return sortie.director().marks().recording; }, 300.0);
  CHECK(sortie.director().marks().recording);
  CHECK(sortie.director().marks().point == 1);
  CHECK(sortie.director().marks().attempt == 2);
}

TEST_CASE("feet that the program moved are noted once, as soon as a record is made with them", "[by-hand]") {
  SortieConfig config = by_hand_test::config("marram");
  config.card.clearing_turns = false;
  Sortie sortie(config);
  Person person(config.type);
  MemorySink rows;
  const bool assisted = GENERATE(true, false);
  while (sortie.time_s() < 120.0 && sortie.director().marks().point < 2) {
    Hands hands = person.next(sortie);
    hands.feet_assisted = assisted;
    REQUIRE(sortie.tick(rows, hands));
    if (!sortie.director().marks().recording)
      CHECK(has_event(sortie, "feet assisted") == (assisted && sortie.director().marks().point == 2));
  }
  const auto& events = sortie.director().events();
  const auto count =
      std::count_if(events.begin(), events.end(), [](const Event& e) { return e.kind == "feet assisted"; });
  CHECK(count == (assisted ? 1 : 0));
}

TEST_CASE("hands are kept within their stops and in steps of a ten-thousandth", "[by-hand]") {
  Hands wild;
  wild.stick_aft = 3.0;
  wild.stick_right = -1.23456;
  wild.pedal_right = 0.123449;
  wild.throttle = std::nan("");
  const Hands kept = as_recorded(wild);
  CHECK(kept.stick_aft == 1.0);
  CHECK(kept.stick_right == -1.0);
  CHECK(kept.pedal_right == 0.1234);
  CHECK(kept.throttle == 0.0);
  CHECK(as_recorded(kept) == kept);
}
