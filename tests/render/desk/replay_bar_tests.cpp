// The replay bar, and the clock that it moves.
#include "render/desk/replay_bar.hpp"
#include "tests/render/desk/desk_checks.hpp"
#include "tests/render/view/flown_sortie.hpp"

using namespace stallwright;
using desk::ReplayIntent;
using desk::ReplayState;
using desk_test::Desk;

namespace {

auto drawing(const view::ReplayTrack& track, ReplayState& state) {
  return [&](ui::Registry& registry, const ui::Fonts& fonts, ImVec2 to) {
    const float top = to.y - desk::kReplayBarHeight_px * fonts.scale;
    return desk::draw_replay_bar(track, state, registry, fonts, {0.0f, top}, to);
  };
}

}  // namespace

TEST_CASE("the replay bar is legible and stays in its height", "[desk][replay]") {
  const view_test::Flown flown;
  const view::ReplayTrack track(flown.sortie);
  REQUIRE_FALSE(track.records().empty());
  for (const desk_test::Size& size : desk_test::kSizes) {
    CAPTURE(size.width);
    Desk desk(size);
    ReplayState state;
    state.time_s = track.records()[0].begin_s + 0.1;
    for (int k = 0; k < 2; ++k) desk.frame(drawing(track, state));
    desk_test::check_legible(desk.ui);
    CHECK(desk.ui.equal_to("recording fast reference") != nullptr);
  }
}

TEST_CASE("time runs at its rate and stops at the end", "[desk][replay]") {
  const view_test::Flown flown;
  const view::ReplayTrack track(flown.sortie);
  ReplayState state;
  state.rate = 2.0;
  desk::advance(track, state, 0.5);
  CHECK(state.time_s == Approx(1.0));
  state.playing = false;
  desk::advance(track, state, 0.5);
  CHECK(state.time_s == Approx(1.0));
  state.playing = true;
  desk::advance(track, state, 1e6);
  CHECK(state.time_s == track.end_s());
  CHECK_FALSE(state.playing);
}

TEST_CASE("keys and buttons play, step, change the rate and leave", "[desk][replay]") {
  const view_test::Flown flown;
  const view::ReplayTrack track(flown.sortie);
  Desk desk;
  ReplayState state;
  const auto draw = drawing(track, state);
  desk.frame(draw);
  desk.key(SDL_SCANCODE_SPACE, draw);
  CHECK_FALSE(state.playing);
  desk.press("Play", draw);
  CHECK(state.playing);
  desk.key(SDL_SCANCODE_RIGHT, draw);
  CHECK(state.time_s == Approx(1.0));
  CHECK_FALSE(state.playing);
  desk.press("Step back", draw);
  CHECK(state.time_s == 0.0);
  desk.press("Step back", draw);
  CHECK(state.time_s == 0.0);
  desk.press("Faster", draw);
  CHECK(state.rate == 2.0);
  for (int k = 0; k < 9; ++k) desk.key(SDL_SCANCODE_MINUS, draw);
  CHECK(state.rate == 0.25);
  CHECK(desk.press("Leave the replay", draw) == ReplayIntent::leave);
  CHECK(desk.key(SDL_SCANCODE_ESCAPE, draw) == ReplayIntent::leave);
}
