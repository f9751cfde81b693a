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

}  // namespace stallwright::input
