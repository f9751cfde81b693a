#include "render/input/key_help.hpp"

namespace stallwright::input {
namespace {

/// SDL's names are for files; a mark of punctuation is lost in a sentence, and "Up" is no key by itself.
std::string spoken(const KeyChord& chord) {
  struct Spoken {
    SDL_Keycode key;
    const char* name;
  };
  constexpr Spoken kSpoken[] = {{SDLK_UP, "Up arrow"},         {SDLK_DOWN, "Down arrow"},
                                {SDLK_LEFT, "Left arrow"},     {SDLK_RIGHT, "Right arrow"},
                                {SDLK_PAGEUP, "Page Up"},      {SDLK_PAGEDOWN, "Page Down"},
                                {SDLK_PERIOD, "full stop"},    {SDLK_COMMA, "comma"},
                                {SDLK_SEMICOLON, "semicolon"}, {SDLK_QUOTE, "apostrophe"}};
  const std::string name = key_name(chord);
  for (const Spoken& s : kSpoken)
    if (s.key == chord.key) {
      KeyChord plain;
      plain.key = chord.key;
      return name.substr(0, name.size() - key_name(plain).size()) + s.name;
    }
  return name;
}

}  // namespace

std::string key_to_press(const KeyBindings& bindings, Action action) {
  for (const KeyChord& k : bindings.of(action))
    if (!k.none()) return spoken(k);
  return "no key";
}

std::string keys_to_press(const KeyBindings& bindings, Action action) {
  std::string text;
  for (const KeyChord& k : bindings.of(action))
    if (!k.none()) text += (text.empty() ? "" : " or ") + spoken(k);
  return text.empty() ? "no key" : text;
}

std::vector<KeyHelp> key_help(const KeyBindings& bindings) {
  std::vector<KeyHelp> out;
  for (const Action action : all_actions())
    out.push_back({action, action_group(action), action_name(action), keys_to_press(bindings, action)});
  return out;
}

}  // namespace stallwright::input
