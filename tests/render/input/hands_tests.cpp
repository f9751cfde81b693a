// Hands fed with keys and pointer, as events, without a window.
#include <algorithm>

#include "render/input/hands.hpp"
#include "tests/render/input/events.hpp"

using namespace stallwright::input;
using namespace stallwright::events;

namespace {

bool pressed(const HandsNow& now, Action action) {
  return std::count(now.pressed.begin(), now.pressed.end(), action) > 0;
}

Settings without_feet() {
  Settings s;
  s.feet_assist = false;
  return s;
}

}  // namespace

TEST_CASE("arrows move the stick and letting go brings it back to the trim", "[hands]") {
  const Sdl sdl;
  Hands hands{Settings{}};
  hands.place(0.12, 0.4, 0.0);
  CHECK(fly(hands, 0.5).stick_aft == Approx(0.12));
  hands.handle(down(SDLK_DOWN));
  hands.handle(down(SDLK_RIGHT));
  CHECK(fly(hands, 0.4).stick_aft > 0.25);
  CHECK(hands.view().now.stick_right > 0.25);
  hands.handle(up(SDLK_DOWN));
  hands.handle(up(SDLK_RIGHT));
  CHECK(fly(hands, 3.0).stick_aft == Approx(0.12));
  CHECK(hands.view().now.stick_right == 0.0);
  CHECK(hands.view().now.throttle == Approx(0.4));
  hands.handle(down(SDLK_UP));
  CHECK(fly(hands, 3.0).stick_aft == Approx(-1.0));
}

TEST_CASE("a tap that begins and ends between two looks still moves the stick", "[hands]") {
  const Sdl sdl;
  Hands hands{Settings{}};
  hands.handle(down(SDLK_DOWN));
  hands.handle(up(SDLK_DOWN));
  CHECK(hands.update(0.02, {}).stick_aft > 0.003);
  CHECK(fly(hands, 3.0).stick_aft == 0.0);
}

TEST_CASE("trim keys move where the stick rests, and the trim runs to a held stick", "[hands]") {
  const Sdl sdl;
  Hands hands{Settings{}};
  hands.handle(down(SDLK_DOWN, KMOD_LSHIFT));
  // Shift is let go first: the trim key goes on trimming and its key-up ends it.
  const double trim = fly(hands, 1.0).pitch_trim;
  CHECK(trim > 0.03);
  hands.handle(up(SDLK_DOWN));
  CHECK(fly(hands, 1.0).pitch_trim == Approx(trim).margin(0.01));
  CHECK(hands.view().now.stick_aft == Approx(hands.view().now.pitch_trim));
  hands.handle(down(SDLK_DOWN));
  const double held = fly(hands, 0.3).stick_aft;
  hands.handle(down(SDLK_t));
  hands.handle(up(SDLK_DOWN));
  CHECK(fly(hands, 2.0).pitch_trim == Approx(held).margin(0.02));
  CHECK(hands.view().now.stick_aft == Approx(held).margin(0.02));
}

TEST_CASE("power goes in fine steps, and to idle and full at once", "[hands]") {
  const Sdl sdl;
  Hands hands{Settings{}};
  hands.place(0.0, 0.5, 0.0);
  hands.handle(down(SDLK_PAGEUP));
  fly(hands, 0.1);
  hands.handle(up(SDLK_PAGEUP));
  CHECK(fly(hands, 1.0).throttle == Approx(0.51));
  hands.handle(down(SDLK_PAGEUP, KMOD_LSHIFT));
  CHECK(fly(hands, 0.1).throttle == 1.0);
  hands.handle(up(SDLK_PAGEUP));
  hands.handle(down(SDLK_i));
  CHECK(fly(hands, 0.1).throttle == 0.0);
}

TEST_CASE("an action comes once for each press and not for the key's repeats", "[hands]") {
  const Sdl sdl;
  Hands hands{Settings{}};
  hands.handle(down(SDLK_r));
  hands.handle(key(SDL_KEYDOWN, SDLK_r, SDL_SCANCODE_R, KMOD_NONE, true));
  CHECK(hands.update(0.02, {}).pressed.count == 1);
  CHECK(pressed(hands.view().now, Action::record));
  CHECK(hands.update(0.02, {}).pressed.count == 0);
  hands.handle(up(SDLK_r));
  hands.handle(down(SDLK_r, KMOD_LSHIFT));
  CHECK(pressed(hands.update(0.02, {}), Action::record_anyway));
}

TEST_CASE("flaps are counted in steps and not listed as well", "[hands]") {
  const Sdl sdl;
  Hands hands{Settings{}};
  for (int k = 0; k < 2; ++k) {
    hands.handle(down(SDLK_f));
    hands.handle(up(SDLK_f));
  }
  CHECK(hands.update(0.02, {}).flap_steps == 2);
  CHECK(hands.view().now.pressed.count == 0);
  hands.handle(down(SDLK_f, KMOD_RSHIFT));
  CHECK(hands.update(0.02, {}).flap_steps == -1);
  CHECK(hands.update(0.02, {}).flap_steps == 0);
}

TEST_CASE("typing does not fly the aeroplane, and keys held before are let go", "[hands]") {
  const Sdl sdl;
  Hands hands{Settings{}};
  hands.handle(down(SDLK_DOWN));
  fly(hands, 0.3);
  hands.give_keys(KeysFor::typing);
  for (const SDL_Keycode code : {SDLK_r, SDLK_f, SDLK_k, SDLK_UP, SDLK_ESCAPE, SDLK_m})
    hands.handle(down(code));
  const HandsNow& now = hands.update(0.02, {});
  CHECK(now.pressed.count == 0);
  CHECK(now.flap_steps == 0);
  CHECK_FALSE(hands.settings().mute);
  CHECK(fly(hands, 3.0).stick_aft == 0.0);
  hands.give_keys(KeysFor::flying);
  CHECK(fly(hands, 1.0).stick_aft == 0.0);
}

TEST_CASE("with a page open only what concerns the program acts", "[hands]") {
  const Sdl sdl;
  Hands hands{Settings{}};
  hands.give_keys(KeysFor::pages);
  for (const SDL_Keycode code : {SDLK_r, SDLK_DOWN, SDLK_f, SDLK_ESCAPE, SDLK_p}) hands.handle(down(code));
  const HandsNow& now = hands.update(0.02, {});
  CHECK(now.pressed.count == 2);
  CHECK(pressed(now, Action::leave));
  CHECK(pressed(now, Action::pause));
  CHECK(now.stick_aft == 0.0);
}

TEST_CASE("a window that loses the focus lets go of every key, since key-ups may never come", "[hands]") {
  const Sdl sdl;
  Hands hands{without_feet()};
  for (const SDL_Keycode code : {SDLK_DOWN, SDLK_RIGHT, SDLK_e, SDLK_PAGEUP}) hands.handle(down(code));
  CHECK(fly(hands, 0.5).stick_aft > 0.1);
  hands.handle(window(SDL_WINDOWEVENT_FOCUS_LOST));
  const double power = fly(hands, 3.0).throttle;
  CHECK(hands.view().now.stick_aft == 0.0);
  CHECK(hands.view().now.stick_right == 0.0);
  CHECK(hands.view().now.pedal_right == 0.0);
  CHECK(fly(hands, 1.0).throttle == power);
  CHECK(hands.view().now.held.none());
}

TEST_CASE("two keys on one action hold it until both are up", "[hands]") {
  const Sdl sdl;
  Hands hands{Settings{}};
  hands.handle(down(SDLK_END));
  hands.handle(down(SDLK_DOWN, KMOD_LSHIFT));
  fly(hands, 0.2);
  hands.handle(up(SDLK_END));
  CHECK(hands.update(0.02, {}).holds(Action::trim_nose_up));
  hands.handle(up(SDLK_DOWN));
  CHECK_FALSE(hands.update(0.02, {}).holds(Action::trim_nose_up));
}

TEST_CASE("the mouse is the stick only when asked, and not when it has left the window", "[hands]") {
  const Sdl sdl;
  Hands hands{Settings{}};
  hands.handle(window(SDL_WINDOWEVENT_SIZE_CHANGED, 1280, 720));
  hands.handle(pointer(640, 600));
  CHECK(fly(hands, 1.0).stick_aft == 0.0);
  hands.handle(down(SDLK_s));
  CHECK(fly(hands, 1.0).stick_aft == 0.0);  // the pointer has not been moved yet
  CHECK(hands.settings().mouse_stick);
  hands.handle(pointer(640, 610));
  CHECK(hands.update(0.02, {}).stick_aft < 0.1);  // it takes its time to get there
  const double there = fly(hands, 1.0).stick_aft;
  CHECK(there == Approx(mouse_stick(640, 610, 1280, 720).aft));
  hands.handle(window(SDL_WINDOWEVENT_LEAVE));
  CHECK(fly(hands, 1.0).stick_aft == 0.0);
}

TEST_CASE("feet follow the ball without pedals, stop for the pilot's own, and say so", "[hands]") {
  const Sdl sdl;
  Hands hands{Settings{}};
  CHECK(fly(hands, 1.0, {0.05, 0.0, true}).pedal_right > 0.05);
  CHECK(hands.view().now.feet_assisted);
  const double before = hands.view().now.pedal_right;
  CHECK(fly(hands, 1.0, {0.05, 0.0, false}).pedal_right == before);  // paused
  hands.handle(down(SDLK_q));
  CHECK(fly(hands, 0.6, {0.3, 0.0, true}).pedal_right < before);
  hands.handle(up(SDLK_q));

  Hands alone{without_feet()};
  CHECK(fly(alone, 1.0, {0.05, 0.0, true}).pedal_right == 0.0);
  CHECK_FALSE(alone.view().now.feet_assisted);
}

TEST_CASE("louder, quieter and mute are settled in the settings", "[hands]") {
  const Sdl sdl;
  Hands hands{Settings{}};
  hands.handle(down(SDLK_m));
  hands.update(0.02, {});
  CHECK(hands.settings().mute);
  hands.handle(down(SDLK_v));
  CHECK(pressed(hands.update(0.02, {}), Action::louder));
  CHECK(hands.settings().volume == Approx(0.8));
  CHECK_FALSE(hands.settings().mute);
  for (int k = 0; k < 12; ++k) hands.handle(down(SDLK_v, KMOD_LSHIFT));
  hands.update(0.02, {});
  CHECK(hands.settings().volume == 0.0);
}

TEST_CASE("a page that waits for a key is shown it, and the key does nothing else", "[hands]") {
  const Sdl sdl;
  Hands hands{Settings{}};
  hands.listen(true);
  hands.handle(down(SDLK_r, KMOD_LSHIFT));
  CHECK(hands.update(0.02, {}).pressed.count == 0);
  REQUIRE(hands.view().key);
  CHECK(key_name(*hands.view().key) == "Shift+R");
  hands.update(0.02, {});
  CHECK_FALSE(hands.view().key);
}

TEST_CASE("a key that was bound anew does what it was given", "[hands]") {
  const Sdl sdl;
  Settings s;
  bind(s.keys, Action::knock_it_off, 0, {SDLK_SPACE, false, false, false});
  Hands hands{s};
  hands.handle(down(SDLK_SPACE));
  hands.handle(down(SDLK_k));
  CHECK(hands.update(0.02, {}).pressed.count == 1);
  CHECK(pressed(hands.view().now, Action::knock_it_off));
}
