#pragma once
#include <string>
#include <vector>

#include "render/input/key_bindings.hpp"

namespace stallwright::input {

/// One line of the help page.
struct KeyHelp {
  Action action;
  std::string group, name, keys;
};

/// Every action with the keys that it has now, grouped as the page lists them.
std::vector<KeyHelp> key_help(const KeyBindings& bindings);

/// The first key of an action as a sentence names it: "Down arrow", "Page Up", "Shift+I", "full stop"; "no key" where none is
/// bound.
std::string key_to_press(const KeyBindings& bindings, Action action);

/// All its keys the same way: "Page Up or Keypad +".
std::string keys_to_press(const KeyBindings& bindings, Action action);

}  // namespace stallwright::input
