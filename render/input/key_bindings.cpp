#include "render/input/key_bindings.hpp"

namespace stallwright::input {
namespace {

struct Default {
  Action action;
  KeyChord first, second;
};

constexpr KeyChord key(SDL_Keycode code) { return {code, false, false, false}; }
constexpr KeyChord shift(SDL_Keycode code) { return {code, true, false, false}; }

constexpr Default kDefaults[] = {
    {Action::stick_back, key(SDLK_DOWN), {}},
    {Action::stick_forward, key(SDLK_UP), {}},
    {Action::stick_left, key(SDLK_LEFT), {}},
    {Action::stick_right, key(SDLK_RIGHT), {}},
    {Action::pedal_left, key(SDLK_q), {}},
    {Action::pedal_right, key(SDLK_e), {}},
    {Action::more_power, key(SDLK_PAGEUP), key(SDLK_KP_PLUS)},
    {Action::less_power, key(SDLK_PAGEDOWN), key(SDLK_KP_MINUS)},
    {Action::power_idle, key(SDLK_i), shift(SDLK_PAGEDOWN)},
    {Action::power_full, shift(SDLK_i), shift(SDLK_PAGEUP)},
    {Action::trim_nose_up, shift(SDLK_DOWN), key(SDLK_END)},
    {Action::trim_nose_down, shift(SDLK_UP), key(SDLK_HOME)},
    {Action::trim_to_stick, key(SDLK_t), {}},
    {Action::flaps_down, key(SDLK_f), {}},
    {Action::flaps_up, shift(SDLK_f), {}},
    {Action::mouse_stick, key(SDLK_s), {}},
    {Action::look_left, key(SDLK_1), {}},
    {Action::look_ahead, key(SDLK_2), {}},
    {Action::look_right, key(SDLK_3), {}},
    {Action::look_over_nose, key(SDLK_4), {}},
    {Action::record, key(SDLK_r), {}},
    {Action::record_anyway, shift(SDLK_r), {}},
    {Action::area_clear, key(SDLK_c), {}},
    {Action::knock_it_off, key(SDLK_k), {}},
    {Action::pause, key(SDLK_p), key(SDLK_PAUSE)},
    {Action::faster, key(SDLK_PERIOD), {}},
    {Action::slower, key(SDLK_COMMA), {}},
    {Action::louder, key(SDLK_v), {}},
    {Action::quieter, shift(SDLK_v), {}},
    {Action::mute, key(SDLK_m), {}},
    {Action::help, key(SDLK_h), key(SDLK_F1)},
    {Action::hands, key(SDLK_d), key(SDLK_F2)},
    {Action::leave, key(SDLK_ESCAPE), {}},
};

}  // namespace

KeyBindings default_keys() {
  KeyBindings out;
  for (const Default& d : kDefaults) out.keys[place_of(d.action)] = {d.first, d.second};
  return out;
}

std::optional<Action> holder_of(const KeyBindings& bindings, const KeyChord& chord) {
  if (chord.none()) return std::nullopt;
  for (const Action action : all_actions())
    for (const KeyChord& k : bindings.of(action))
      if (k == chord) return action;
  return std::nullopt;
}

std::optional<Action> action_of(const KeyBindings& bindings, const KeyChord& chord) {
  if (const auto found = holder_of(bindings, chord)) return found;
  KeyChord plain = chord;
  plain.shift = false;
  const auto found = holder_of(bindings, plain);
  return found && is_held(*found) ? found : std::nullopt;
}

void bind(KeyBindings& bindings, Action action, std::size_t place, const KeyChord& chord) {
  if (!chord.none())
    for (auto& keys : bindings.keys)
      for (KeyChord& k : keys)
        if (k == chord) k = {};
  bindings.keys[place_of(action)][place] = chord;
}

std::optional<Action> conflict(const KeyBindings& bindings) {
  for (const Action action : all_actions())
    for (std::size_t place = 0; place < kKeysEach; ++place) {
      const KeyChord& k = bindings.of(action)[place];
      int holders = 0;
      for (const auto& keys : bindings.keys)
        for (const KeyChord& other : keys) holders += !k.none() && other == k ? 1 : 0;
      if (holders > 1) return action;
    }
  return std::nullopt;
}

std::string keys_text(const KeyBindings& bindings, Action action) {
  std::string text;
  for (const KeyChord& k : bindings.of(action))
    if (!k.none()) text += (text.empty() ? "" : " or ") + key_name(k);
  return text.empty() ? "no key" : text;
}

}  // namespace stallwright::input
