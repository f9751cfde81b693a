#include "render/input/key_chord.hpp"

#include <SDL_keyboard.h>

namespace stallwright::input {
namespace {

constexpr struct {
  const char* name;
  bool KeyChord::*held;
} kBeside[] = {{"Ctrl+", &KeyChord::ctrl}, {"Alt+", &KeyChord::alt}, {"Shift+", &KeyChord::shift}};

bool is_latin_or_named(SDL_Keycode key) { return (key & SDLK_SCANCODE_MASK) != 0 || (key > 0 && key < 0x80); }

SDL_Keycode as_labelled(const SDL_Keysym& pressed) {
  const SDL_Scancode where = pressed.scancode;
  const bool letter_place = where >= SDL_SCANCODE_A && where <= SDL_SCANCODE_Z;
  const bool digit_place = where >= SDL_SCANCODE_1 && where <= SDL_SCANCODE_0;
  if (letter_place && !is_latin_or_named(pressed.sym)) return SDLK_a + (where - SDL_SCANCODE_A);
  if (digit_place) return where == SDL_SCANCODE_0 ? SDLK_0 : SDLK_1 + (where - SDL_SCANCODE_1);
  return pressed.sym;
}

}  // namespace

std::string key_name(const KeyChord& chord) {
  if (chord.none()) return "none";
  std::string name;
  for (const auto& beside : kBeside)
    if (chord.*beside.held) name += beside.name;
  return name + SDL_GetKeyName(chord.key);
}

std::optional<KeyChord> key_of_name(const std::string& name) {
  KeyChord chord;
  if (name == "none") return chord;
  std::string rest = name;
  for (const auto& beside : kBeside)
    if (rest.rfind(beside.name, 0) == 0) {
      chord.*beside.held = true;
      rest.erase(0, std::string(beside.name).size());
    }
  chord.key = SDL_GetKeyFromName(rest.c_str());
  if (chord.none() || key_name(chord) != name) return std::nullopt;
  return chord;
}

KeyChord key_chord(const SDL_Keysym& pressed) {
  const bool modifier = pressed.sym >= SDLK_LCTRL && pressed.sym <= SDLK_RGUI;
  if (modifier || (pressed.mod & KMOD_GUI) != 0) return {};
  return {as_labelled(pressed), (pressed.mod & KMOD_SHIFT) != 0, (pressed.mod & KMOD_CTRL) != 0,
          (pressed.mod & KMOD_ALT) != 0};
}

}  // namespace stallwright::input
