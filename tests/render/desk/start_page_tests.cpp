// The start page on the screen.
#include "render/desk/start.hpp"
#include "tests/render/desk/desk_checks.hpp"

using namespace stallwright;
using desk::StartIntent;
using desk_test::Desk;
namespace fs = std::filesystem;

namespace {

view::StartView shipped() {
  const fs::path root = STALLWRIGHT_SOURCE_DIR;
  return view::start_view({root / "aircraft" / "types", root / "assets" / "cards", root / "assets" / "air"},
                          {{"/flown/two", "2026-05-02 09:10, Marram, Short card, calm, seed 4", "Marram"},
                           {"/flown/one", "2026-05-01 10:20, Marram, Short card, calm, seed 3", "Marram"}});
}

auto drawing(const view::StartView& view, desk::StartState& state) {
  return [&](ui::Registry& registry, const ui::Fonts& fonts, ImVec2 to) {
    return desk::draw_start(view, state, registry, fonts, {0.0f, 0.0f}, to);
  };
}

}  // namespace

TEST_CASE("the start page holds every choice without a scroll bar, legible", "[desk][start]") {
  const view::StartView view = shipped();
  for (const desk_test::Size& size : desk_test::kSizes)
    for (const view::AircraftOffer& aircraft : view.aircraft)
      for (const char* card : {"short", "thorough", "verify", "own"}) {
        CAPTURE(size.width, aircraft.key, card);
        Desk desk(size);
        desk::StartState state;
        state.choice.aircraft = aircraft.key;
        state.choice.card = card;
        for (int k = 0; k < 3; ++k) desk.frame(drawing(view, state));
        desk_test::check_legible(desk.ui);
        for (const char* words : {"Stalls kill.", "centre of gravity, m aft of the datum"}) {
          CAPTURE(words);
          CHECK(desk.ui.containing(words) != nullptr);
        }
        for (const char* label :
             {"Logbook", "Set up hands", "Quit", "Seed", "Pilot's name", "Time of day", "Fly"}) {
          CAPTURE(label);
          const ui::Shown* shown = desk.registry.find(label);
          // Controls whose label is hidden behind ## are entered under an empty one beside their name.
          if (std::string(label) == "Seed" || std::string(label) == "Pilot's name") {
            CHECK(desk.ui.equal_to(label) != nullptr);
            continue;
          }
          REQUIRE(shown != nullptr);
          CHECK(shown->to.y <= size.height);
        }
      }
}

TEST_CASE("choices are pressed by name and change what is flown", "[desk][start]") {
  const view::StartView view = shipped();
  Desk desk;
  desk::StartState state;
  desk.frame(drawing(view, state));
  desk.press("Sarsen", drawing(view, state));
  desk.press("Thorough card", drawing(view, state));
  desk.press("Moderate", drawing(view, state));
  desk.press("Rusty", drawing(view, state));
  desk.press("Ideal", drawing(view, state));
  desk.press("Another", drawing(view, state));
  desk.press("Guide me through the first flight", drawing(view, state));
  CHECK(state.choice.aircraft == "sarsen");
  CHECK(state.choice.card == "thorough");
  CHECK(state.choice.air == "moderate");
  CHECK(state.choice.flown_by == "rusty");
  CHECK(state.choice.sensors == "ideal");
  CHECK(state.choice.seed == 2);
  CHECK_FALSE(state.choice.guide);
  CHECK(desk.registry.find("Rusty")->value == "on");
  CHECK(desk.registry.find("Sharp")->value == "off");
}

TEST_CASE("Fly flies what the check holds, by button and by Enter", "[desk][start]") {
  const view::StartView view = shipped();
  Desk desk;
  desk::StartState state;
  desk.frame(drawing(view, state));
  CHECK(desk.press("Fly", drawing(view, state)) == StartIntent::fly);
  CHECK(desk.key(SDL_SCANCODE_RETURN, drawing(view, state)) == StartIntent::fly);
  CHECK(state.check.aircraft->key == "marram");
  CHECK(state.check.loading.kg.size() == state.check.aircraft->type.mass.stations.size());
  CHECK(desk.press("Logbook", drawing(view, state)) == StartIntent::logbook);
  CHECK(desk.press("Set up hands", drawing(view, state)) == StartIntent::hands);
  CHECK(desk.press("Quit", drawing(view, state)) == StartIntent::quit);
}

TEST_CASE("what cannot be flown is greyed, says why, and no key flies it", "[desk][start]") {
  const view::StartView view = shipped();
  Desk desk;
  desk::StartState state;
  state.choice.load_kg = {{"front seat", 20.0}, {"rear seat", 110.0}, {"bags", 15.0}};
  desk.frame(drawing(view, state));
  CHECK_FALSE(desk.registry.find("Fly")->enabled);
  CHECK(desk.key(SDL_SCANCODE_RETURN, drawing(view, state)) == StartIntent::none);
  CHECK(desk.ui.containing("OUTSIDE the envelope") != nullptr);
  CHECK(desk.ui.containing("Loading: centre of gravity") != nullptr);
  desk.registry.press("Fly");
  CHECK(desk.frame(drawing(view, state)) == StartIntent::none);
}

TEST_CASE("a verifying card steps through the flights that have set points", "[desk][start]") {
  const view::StartView view = shipped();
  Desk desk;
  desk::StartState state;
  state.choice.card = "verify";
  desk.frame(drawing(view, state));
  CHECK_FALSE(desk.registry.find("Fly")->enabled);
  desk.press("Earlier flight", drawing(view, state));
  CHECK(state.choice.set_points == "/flown/two");
  desk.press("Earlier flight", drawing(view, state));
  CHECK(state.choice.set_points == "/flown/one");
  desk.frame(drawing(view, state));
  CHECK_FALSE(desk.registry.find("Earlier flight")->enabled);
  CHECK(desk.registry.find("Fly")->enabled);
  desk.press("Later flight", drawing(view, state));
  CHECK(state.choice.set_points == "/flown/two");
}

TEST_CASE("another aeroplane brings its own usual load", "[desk][start]") {
  const view::StartView view = shipped();
  Desk desk;
  desk::StartState state;
  state.choice.load_kg = {{"front seat", 60.0}};
  desk.frame(drawing(view, state));
  desk.press("Tarnfell", drawing(view, state));
  desk.frame(drawing(view, state));
  CHECK(state.choice.load_kg.empty());
  CHECK(state.check.inside);
}
