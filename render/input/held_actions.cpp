#include "render/input/held_actions.hpp"

#include <algorithm>

namespace stallwright::input {

void HeldActions::begin(Action action) {
  ++holders_[place_of(action)];
  tapped_.set(place_of(action));
  if (pressed_.count < Pressed::kMost) pressed_.actions[pressed_.count++] = action;
}

void HeldActions::key_down(SDL_Scancode key, Action action) {
  if (key < 0 || key >= SDL_NUM_SCANCODES) return;
  key_up(key);
  by_key_[key] = static_cast<std::int8_t>(place_of(action) + 1);
  begin(action);
}

void HeldActions::key_up(SDL_Scancode key) {
  if (key < 0 || key >= SDL_NUM_SCANCODES || by_key_[key] == 0) return;
  end(static_cast<Action>(by_key_[key] - 1));
  by_key_[key] = 0;
}

void HeldActions::button_down(std::size_t device, int button, Action action) {
  button_up(device, button);
  by_button_.push_back({device, button, action});
  begin(action);
}

void HeldActions::button_up(std::size_t device, int button) {
  const auto same = [&](const HeldButton& b) { return b.device == device && b.button == button; };
  const auto at = std::find_if(by_button_.begin(), by_button_.end(), same);
  if (at == by_button_.end()) return;
  end(at->action);
  by_button_.erase(at);
}

void HeldActions::release_keys() {
  for (int key = 0; key < SDL_NUM_SCANCODES; ++key) key_up(static_cast<SDL_Scancode>(key));
  tapped_.reset();
}

void HeldActions::release_buttons() {
  for (const HeldButton& b : by_button_) end(b.action);
  by_button_.clear();
}

ActionSet HeldActions::held() const {
  ActionSet out = tapped_;
  for (std::size_t k = 0; k < kActions; ++k)
    if (holders_[k] > 0) out.set(k);
  return out;
}

void HeldActions::next_look() {
  tapped_.reset();
  pressed_.count = 0;
}

}  // namespace stallwright::input
