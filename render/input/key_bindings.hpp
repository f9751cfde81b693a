#pragma once
#include <array>
#include <optional>

#include "render/input/action.hpp"
#include "render/input/key_chord.hpp"

namespace stallwright::input {

inline constexpr std::size_t kKeysEach = 2;  ///< keys that one action may have

struct KeyBindings {
  std::array<std::array<KeyChord, kKeysEach>, kActions> keys{};

  const std::array<KeyChord, kKeysEach>& of(Action action) const { return keys[place_of(action)]; }
  friend bool operator==(const KeyBindings&, const KeyBindings&) = default;
};

/// Ours: arrows move the stick, Shift with them trims; the digits turn the head; letters name what they do.
KeyBindings default_keys();

/// The action that has exactly this key.
std::optional<Action> holder_of(const KeyBindings& bindings, const KeyChord& chord);

/// What this key does. One that is bound without Shift alone works with it too where it
/// moves the hands, so that a held Shift does not deafen the stick.
std::optional<Action> action_of(const KeyBindings& bindings, const KeyChord& chord);

/// Gives the action this key in this place, and takes it from whatever had it.
void bind(KeyBindings& bindings, Action action, std::size_t place, const KeyChord& chord);

/// The first action that shares a key with another one.
std::optional<Action> conflict(const KeyBindings& bindings);

/// "Up", "F1 or H", "no key".
std::string keys_text(const KeyBindings& bindings, Action action);

}  // namespace stallwright::input
