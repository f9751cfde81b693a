#pragma once
#include <SDL_scancode.h>

#include <array>
#include <bitset>
#include <cstdint>
#include <vector>

#include "render/input/action.hpp"

namespace stallwright::input {

using ActionSet = std::bitset<kActions>;

/// What was pressed since the last look, oldest first. When full, later ones are dropped.
struct Pressed {
  static constexpr std::size_t kMost = 16;
  std::array<Action, kMost> actions{};
  std::size_t count = 0;

  const Action* begin() const { return actions.data(); }
  const Action* end() const { return actions.data() + count; }
};

/// Which actions keys and buttons hold down now. A key remembers what it began, so that it lets go of the same, whatever
/// has happened to Shift meanwhile; two keys on one action hold it until both are up.
class HeldActions {
 public:
  void key_down(SDL_Scancode key, Action action);
  void key_up(SDL_Scancode key);
  void button_down(std::size_t device, int button, Action action);
  void button_up(std::size_t device, int button);
  /// Of keys: the window lost the focus, or the keys are wanted elsewhere. Key-ups may never come.
  void release_keys();
  /// Of buttons: a device was unplugged.
  void release_buttons();

  bool holds(Action action) const { return holders_[place_of(action)] > 0 || tapped_[place_of(action)]; }
  ActionSet held() const;
  const Pressed& pressed() const { return pressed_; }
  /// Forgets what was pressed, and taps that were shorter than the time between two looks.
  void next_look();

 private:
  struct HeldButton {
    std::size_t device;
    int button;
    Action action;
  };
  void begin(Action action);
  void end(Action action) { --holders_[place_of(action)]; }

  std::array<std::int8_t, SDL_NUM_SCANCODES> by_key_{};  ///< place of the action + 1; 0: not held
  std::vector<HeldButton> by_button_;
  std::array<int, kActions> holders_{};
  ActionSet tapped_;
  Pressed pressed_;
};

}  // namespace stallwright::input
