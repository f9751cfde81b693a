#include "render/input/key_help.hpp"

namespace stallwright::input {

std::vector<KeyHelp> key_help(const KeyBindings& bindings) {
  std::vector<KeyHelp> out;
  for (const Action action : all_actions())
    out.push_back({action, action_group(action), action_name(action), keys_text(bindings, action)});
  return out;
}

}  // namespace stallwright::input
