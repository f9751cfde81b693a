#include <catch2/catch.hpp>
#include <set>
#include <string>

#include "render/input/key_bindings.hpp"
#include "render/input/key_help.hpp"

using namespace stallwright::input;

namespace {

SDL_Keysym pressed(SDL_Keycode key, SDL_Scancode where, int held = KMOD_NONE) {
  SDL_Keysym k{};
  k.sym = key;
  k.scancode = where;
  k.mod = static_cast<Uint16>(held);
  return k;
}

KeyChord chord(const std::string& name) {
  const auto found = key_of_name(name);
  REQUIRE(found);
  return *found;
}

}  // namespace

TEST_CASE("no two actions share a usual key, and every action has one", "[hands]") {
  const KeyBindings keys = default_keys();
  CHECK_FALSE(conflict(keys));
  for (const Action action : all_actions()) {
    INFO(action_name(action));
    CHECK(keys_text(keys, action) != "no key");
  }
}

TEST_CASE("a shared key is found out", "[hands]") {
  KeyBindings keys = default_keys();
  keys.keys[place_of(Action::mute)][1] = chord("R");
  CHECK(conflict(keys).has_value());
}

TEST_CASE("actions have names of their own", "[hands]") {
  std::set<std::string> names;
  for (const Action action : all_actions()) names.insert(action_name(action));
  CHECK(names.size() == kActions);
  CHECK(all_actions().size() == kActions);
}

TEST_CASE("names of keys read back as the same keys", "[hands]") {
  const KeyBindings keys = default_keys();
  for (const auto& both : keys.keys)
    for (const KeyChord& k : both) {
      INFO(key_name(k));
      const auto again = key_of_name(key_name(k));
      REQUIRE(again);
      CHECK(*again == k);
    }
  CHECK(key_name({SDLK_r, true, true, true}) == "Ctrl+Alt+Shift+R");
  CHECK(chord("Ctrl+Alt+Shift+R") == KeyChord{SDLK_r, true, true, true});
  CHECK(chord("Keypad +").key == SDLK_KP_PLUS);
  CHECK_FALSE(key_of_name("Shift+"));
  CHECK_FALSE(key_of_name("the any key"));
  CHECK_FALSE(key_of_name(""));
}

TEST_CASE("letters go by their label, digits by their place, and foreign letters by their place", "[hands]") {
  CHECK(key_chord(pressed(SDLK_q, SDL_SCANCODE_A)).key == SDLK_q);          // a French keyboard
  CHECK(key_chord(pressed(SDLK_AMPERSAND, SDL_SCANCODE_1)).key == SDLK_1);  // its upper row
  CHECK(key_chord(pressed(0x43a, SDL_SCANCODE_R)).key == SDLK_r);           // Cyrillic ka on the key of R
  CHECK(key_chord(pressed(SDLK_LSHIFT, SDL_SCANCODE_LSHIFT, KMOD_LSHIFT)).none());
  CHECK(key_chord(pressed(SDLK_r, SDL_SCANCODE_R, KMOD_LGUI)).none());
  CHECK(key_chord(pressed(SDLK_r, SDL_SCANCODE_R, KMOD_RSHIFT)) == chord("Shift+R"));
}

TEST_CASE("record and record anyway differ by Shift, and Shift does not deafen the pedals", "[hands]") {
  const KeyBindings keys = default_keys();
  CHECK(action_of(keys, chord("R")) == Action::record);
  CHECK(action_of(keys, chord("Shift+R")) == Action::record_anyway);
  CHECK(action_of(keys, chord("Shift+Q")) == Action::pedal_left);
  CHECK(action_of(keys, chord("Shift+Down")) == Action::trim_nose_up);
  CHECK_FALSE(action_of(keys, chord("Shift+K")));  // what acts once wants its own key
  CHECK_FALSE(action_of(keys, chord("Ctrl+R")));
  CHECK_FALSE(action_of(keys, {}));
}

TEST_CASE("a key given to one action is taken from another", "[hands]") {
  KeyBindings keys = default_keys();
  bind(keys, Action::mute, 1, chord("R"));
  CHECK(action_of(keys, chord("R")) == Action::mute);
  CHECK(keys_text(keys, Action::record) == "no key");
  CHECK_FALSE(conflict(keys));
  bind(keys, Action::mute, 1, {});
  CHECK(keys_text(keys, Action::mute) == "M");
}

TEST_CASE("the help lists each action with the keys that it has now", "[hands]") {
  KeyBindings keys = default_keys();
  bind(keys, Action::record, 1, chord("F5"));
  const auto help = key_help(keys);
  REQUIRE(help.size() == kActions);
  const auto line =
      std::find_if(help.begin(), help.end(), [](const KeyHelp& h) { return h.action == Action::record; });
  CHECK(line->keys == "R or F5");
  CHECK(line->name == "record");
  CHECK(line->group == "card");
}

TEST_CASE("a sentence names a key as it is spoken of, an empty place aside", "[keys]") {
  KeyBindings keys = default_keys();
  CHECK(key_to_press(keys, Action::stick_back) == "Down arrow");
  CHECK(key_to_press(keys, Action::trim_nose_up) == "Shift+Down arrow");
  CHECK(key_to_press(keys, Action::more_power) == "Page Up");
  CHECK(keys_to_press(keys, Action::more_power) == "Page Up or Keypad +");
  CHECK(key_to_press(keys, Action::faster) == "full stop");
  CHECK(key_to_press(keys, Action::record_anyway) == "Shift+R");
  bind(keys, Action::more_power, 0, {});
  CHECK(key_to_press(keys, Action::more_power) == "Keypad +");
  bind(keys, Action::more_power, 1, {});
  CHECK(key_to_press(keys, Action::more_power) == "no key");
}
