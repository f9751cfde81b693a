// The debrief on the screen, read back as text.
#include "render/desk/debrief.hpp"
#include "tests/render/desk/desk_checks.hpp"
#include "tests/sim/report/judged_sample.hpp"

using namespace stallwright;
using desk::DebriefIntent;
using desk_test::Desk;

namespace {

/// A warning, 1.3 kt late by the hold, in each of so many sets.
view::DebriefView late(std::size_t sets = 1) {
  Debrief debrief;
  debrief.page = sample::debrief();
  debrief.page.summary.counts = {{"approach", 0.0, 1, 1, 2, 1, 1, 0, 0, 1, 0},
                                 {"stall", 0.0, 1, 1, 1, 0, 0, 0, 0, 0, 0}};
  debrief.flown.config.card.points.resize(4);
  JudgedSet set = debrief.page.judgement.sets[0];
  const double ratios[] = {-0.45, -0.1, 0.12, 0.8};
  const char* names[] = {"fast reference", "approach", "warning", "stall"};
  set.points.clear();
  for (std::size_t k = 0; k < 4; ++k) {
    JudgedPoint p = sample::judged(sample::set_point(names[k], k == 3, ratios[k]));
    p.true_ratio = ratios[k] + 0.02;
    p.margin_kt = 30.0 - 7.0 * static_cast<double>(k);
    p.true_margin_kt = p.margin_kt + 1.3;
    p.error_kt = -1.3;
    p.split = k == 3 ? ErrorSplit{-0.1, -0.1, 0.0, -1.0, -0.1} : ErrorSplit{-0.1, -0.1, -1.0, 0.0, -0.1};
    set.points.push_back(p);
  }
  debrief.page.judgement.sets.assign(sets, set);
  for (std::size_t k = 0; k < sets; ++k)
    debrief.page.judgement.sets[k].flap_deg = 15.0 * static_cast<double>(k);
  return view::debrief_view(debrief, {});
}

auto drawing(const view::DebriefView& view, desk::DebriefState& state) {
  return [&](ui::Registry& registry, const ui::Fonts& fonts, ImVec2 to) {
    return desk::draw_debrief(view, state, registry, fonts, {0.0f, 0.0f}, to);
  };
}

}  // namespace

TEST_CASE("every page of the debrief is legible at every size, for one set and for three",
          "[desk][debrief]") {
  for (const std::size_t sets : {1u, 3u}) {
    const view::DebriefView view = late(sets);
    for (const desk_test::Size& size : desk_test::kSizes)
      for (std::size_t page = 0; page < 5; ++page) {
        CAPTURE(sets, size.width, page);
        Desk desk(size);
        desk::DebriefState state;
        state.page = page;
        for (int k = 0; k < 2; ++k) desk.frame(drawing(view, state));
        desk_test::check_legible(desk.ui);
        CHECK(desk.ui.containing("Stalls kill.") != nullptr);
        CHECK(desk.ui.containing("Seed 4711, light air") != nullptr);
      }
  }
}

TEST_CASE("the first line is the answer, in the largest type", "[desk][debrief]") {
  const view::DebriefView view = late();
  Desk desk;
  desk::DebriefState state;
  for (int k = 0; k < 2; ++k) desk.frame(drawing(view, state));
  const ui_test::ShownText* line = desk.ui.equal_to("Your warning is 1.3 kt late.");
  REQUIRE(line != nullptr);
  CHECK(line->size_px == Approx(ui::kHuge_px));
  CHECK(desk.ui.containing("Most of it from the hold.") != nullptr);
  CHECK(desk.ui.equal_to("1.3 kt late") != nullptr);
  CHECK(desk.ui.equal_to("most of it from the entry rate") != nullptr);
}

TEST_CASE("number keys and names open the pages", "[desk][debrief]") {
  const view::DebriefView view = late();
  Desk desk;
  desk::DebriefState state;
  desk.frame(drawing(view, state));
  desk.key(SDL_SCANCODE_3, drawing(view, state));
  CHECK(state.page == 2);
  CHECK(desk.ui.equal_to("Entry rate") != nullptr);
  desk.press("2  Set points and truth", drawing(view, state));
  CHECK(state.page == 1);
  desk.frame(drawing(view, state));
  CHECK(desk.ui.equal_to("probe ratio (no unit)") != nullptr);
  CHECK(desk.ui.containing("95 % interval") != nullptr);
}

TEST_CASE("the ways out are intents", "[desk][debrief]") {
  const view::DebriefView view = late();
  Desk desk;
  desk::DebriefState state;
  CHECK(desk.frame(drawing(view, state)) == DebriefIntent::none);
  CHECK(desk.press("Fly it again", drawing(view, state)) == DebriefIntent::again);
  CHECK(desk.press("Replay", drawing(view, state)) == DebriefIntent::replay);
  CHECK(desk.press("Logbook", drawing(view, state)) == DebriefIntent::logbook);
  CHECK(desk.press("Back to the start", drawing(view, state)) == DebriefIntent::start);
  CHECK(desk.key(SDL_SCANCODE_ESCAPE, drawing(view, state)) == DebriefIntent::start);
}

TEST_CASE("the parts on the screen add up to the error beside them", "[desk][debrief]") {
  const view::DebriefView view = late();
  Desk desk;
  desk::DebriefState state;
  state.page = 2;
  for (int k = 0; k < 2; ++k) desk.frame(drawing(view, state));
  // -0.1 -0.1 -1.0 -0.1 = -1.3, four rows of them.
  int errors = 0;
  for (const auto& text : desk.ui.texts()) errors += text.text == "\u22121.3" ? 1 : 0;
  CHECK(errors == 4);
}

TEST_CASE("keys zoom about the middle, pan to the ends and show all again", "[desk][debrief][time_plots]") {
  const view::DebriefView view = late();
  Desk desk;
  desk::DebriefState state;
  state.page = 3;
  desk.frame(drawing(view, state));
  CHECK(state.plots.begin_s == 0.0);
  CHECK(state.plots.end_s == Approx(60.0));
  desk.key(SDL_SCANCODE_EQUALS, drawing(view, state));
  CHECK(state.plots.end_s - state.plots.begin_s == Approx(42.0));
  CHECK(0.5 * (state.plots.begin_s + state.plots.end_s) == Approx(30.0));
  for (int k = 0; k < 20; ++k) desk.key(SDL_SCANCODE_RIGHT, drawing(view, state));
  CHECK(state.plots.end_s == Approx(60.0));
  CHECK(state.plots.end_s - state.plots.begin_s == Approx(42.0));
  desk.key(SDL_SCANCODE_HOME, drawing(view, state));
  CHECK(state.plots.end_s - state.plots.begin_s == Approx(60.0));
  desk.key(SDL_SCANCODE_PAGEDOWN, drawing(view, state));
  CHECK(state.plots.begin_s == Approx(17.5));
  CHECK(state.plots.end_s == Approx(32.5));
}

TEST_CASE("zoom keeps the moment under the pointer and never goes below two seconds", "[desk][time_plots]") {
  const view::DebriefView view = late();
  desk::TimePlotsState state;
  state.begin_s = 0.0;
  state.end_s = 60.0;
  desk::zoom(view.flight, state, 0.5, 15.0);
  CHECK((15.0 - state.begin_s) / (state.end_s - state.begin_s) == Approx(0.25));
  for (int k = 0; k < 50; ++k) desk::zoom(view.flight, state, 0.5, 15.0);
  CHECK(state.end_s - state.begin_s == Approx(2.0));
  for (int k = 0; k < 50; ++k) desk::zoom(view.flight, state, 2.0, 15.0);
  CHECK(state.begin_s == 0.0);
  CHECK(state.end_s == Approx(60.0));
}

TEST_CASE("the cursor reads the values off every picture", "[desk][time_plots]") {
  const view::DebriefView view = late();
  Desk desk;
  desk::DebriefState state;
  state.page = 3;
  state.plots.cursor_s = 20.0;
  for (int k = 0; k < 2; ++k) desk.frame(drawing(view, state));
  CHECK(desk.ui.equal_to("at 20.0 s") != nullptr);
  CHECK(desk.ui.equal_to("indicated 56.0") != nullptr);  // 62 - 0.3 x 20
  CHECK(desk.ui.equal_to("as measured 0.50") != nullptr);
  CHECK(desk.ui.equal_to("Airspeed, kt") != nullptr);
  CHECK(desk.ui.containing("time, s") != nullptr);
}

TEST_CASE("curves are cut once for a view that stands still", "[desk][time_plots]") {
  const view::DebriefView view = late();
  Desk desk;
  desk::DebriefState state;
  state.page = 3;
  for (int k = 0; k < 2; ++k) desk.frame(drawing(view, state));
  const auto* before = state.plots.cuts[0].traces[0].data();
  state.plots.cuts[0].traces[0][0].y = 61.5;  // would be put right by a second cut
  desk.frame(drawing(view, state));
  CHECK(state.plots.cuts[0].traces[0].data() == before);
  CHECK(state.plots.cuts[0].traces[0][0].y == 61.5);
  desk::zoom(view.flight, state.plots, 0.5, 30.0);
  desk.frame(drawing(view, state));
  CHECK(state.plots.cuts[0].traces[0][0].y != 61.5);
}
