#pragma once
#include <SDL_events.h>
#include <SDL_keycode.h>

#include <optional>
#include <string>

namespace stallwright::input {

/// A key with what is held beside it.
struct KeyChord {
  SDL_Keycode key = SDLK_UNKNOWN;  ///< as labelled on this keyboard; unknown: none
  bool shift = false, ctrl = false, alt = false;

  bool none() const { return key == SDLK_UNKNOWN; }
  friend bool operator==(const KeyChord&, const KeyChord&) = default;
};

/// "R", "Shift+R", "Keypad +", "none". The same on every machine, so that it can stand in a file.
std::string key_name(const KeyChord& chord);

/// The chord of such a name; nothing if there is no such key.
std::optional<KeyChord> key_of_name(const std::string& name);

/// What was pressed. On a keyboard without Latin letters, or whose upper row gives signs before digits, the letters and
/// digits lie where an American keyboard has them. A Shift, Ctrl, Alt or system key alone, or anything with the system key:
/// none.
KeyChord key_chord(const SDL_Keysym& pressed);

}  // namespace stallwright::input
