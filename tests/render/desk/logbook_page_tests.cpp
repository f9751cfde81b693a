// The logbook on the screen.
#include "render/desk/logbook.hpp"
#include "tests/render/desk/desk_checks.hpp"

using namespace stallwright;
using desk::LogbookIntent;
using desk_test::Desk;

namespace {

view::Logbook flights(std::size_t count) {
  view::Logbook book;
  for (std::size_t k = 0; k < count; ++k) {
    view::LogbookLine line;
    line.name = "flight-" + std::to_string(k);
    line.when = "2026-05-01 10:20";
    line.who = k % 3 == 0 ? "R. Ashdown" : "";
    line.aircraft = "Tarnfell";
    line.card = "Thorough card";
    line.air = "moderate";
    line.outcome = "fly again: fast reference, approach, warning";
    line.hold_looked_up = true;
    line.hold_rms_kt = 0.5 + 0.1 * static_cast<double>(k % 20);
    line.warning_error_kt = -0.1 * static_cast<double>(k % 20);
    book.lines.push_back(line);
  }
  return book;
}

auto drawing(const view::Logbook& book, desk::LogbookState& state) {
  return [&](ui::Registry& registry, const ui::Fonts& fonts, ImVec2 to) {
    return desk::draw_logbook(book, state, registry, fonts, {0.0f, 0.0f}, to);
  };
}

}  // namespace

TEST_CASE("the logbook is legible with no flight, one, and a thousand", "[desk][logbook]") {
  for (const std::size_t count : {0u, 1u, 1000u})
    for (const desk_test::Size& size : desk_test::kSizes) {
      CAPTURE(count, size.width);
      view::Logbook book = flights(count);
      if (count > 1) book.lines[1].problem = "sortie.json: expected what was flown, found something else";
      Desk desk(size);
      desk::LogbookState state;
      for (int k = 0; k < 2; ++k) desk.frame(drawing(book, state));
      desk_test::check_legible(desk.ui);
      CHECK((desk.ui.containing("No flight yet") != nullptr) == (count == 0));
      if (count > 0) CHECK(desk.ui.containing("Speed hold in the records, kt rms") != nullptr);
      CHECK((desk.ui.containing("flight-1: sortie.json: expected") != nullptr) == (count > 1));
    }
}

TEST_CASE("keys go through the list and keep the chosen flight in sight", "[desk][logbook]") {
  const view::Logbook book = flights(1000);
  Desk desk;
  desk::LogbookState state;
  desk.frame(drawing(book, state));
  desk.key(SDL_SCANCODE_DOWN, drawing(book, state));
  CHECK(state.chosen == 1);
  CHECK(state.first == 0);
  desk.key(SDL_SCANCODE_END, drawing(book, state));
  CHECK(state.chosen == 999);
  desk.frame(drawing(book, state));
  REQUIRE(desk.registry.find("flight-999") != nullptr);
  CHECK(desk.registry.find("flight-999")->value == "on");
  CHECK(desk.registry.find("flight-0") == nullptr);
  desk.key(SDL_SCANCODE_PAGEUP, drawing(book, state));
  CHECK(state.chosen < 999);
  desk.frame(drawing(book, state));
  CHECK(desk.registry.find("flight-" + std::to_string(state.chosen)) != nullptr);
}

TEST_CASE("a flight is chosen by name and opened, a broken one is not", "[desk][logbook]") {
  view::Logbook book = flights(5);
  book.lines[3].problem = "broken";
  Desk desk;
  desk::LogbookState state;
  desk.frame(drawing(book, state));
  desk.press("flight-2", drawing(book, state));
  CHECK(state.chosen == 2);
  CHECK(desk.press("Debrief", drawing(book, state)) == LogbookIntent::debrief);
  CHECK(desk.press("Replay", drawing(book, state)) == LogbookIntent::replay);
  CHECK(desk.key(SDL_SCANCODE_RETURN, drawing(book, state)) == LogbookIntent::debrief);
  CHECK(desk.key(SDL_SCANCODE_ESCAPE, drawing(book, state)) == LogbookIntent::start);
  desk.press("flight-3", drawing(book, state));
  desk.frame(drawing(book, state));
  CHECK_FALSE(desk.registry.find("Debrief")->enabled);
  CHECK(desk.key(SDL_SCANCODE_RETURN, drawing(book, state)) == LogbookIntent::none);
}

TEST_CASE("a hold that has not been looked up yet shows as such", "[desk][logbook]") {
  view::Logbook book = flights(1);
  book.lines[0].hold_looked_up = false;
  book.lines[0].hold_rms_kt = kNone;
  Desk desk;
  desk::LogbookState state;
  for (int k = 0; k < 2; ++k) desk.frame(drawing(book, state));
  CHECK(desk.ui.equal_to("\u2026") != nullptr);
}
