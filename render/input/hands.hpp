#pragma once
#include <string>

#include "render/input/devices.hpp"
#include "render/input/feet.hpp"
#include "render/input/hands_now.hpp"
#include "render/input/key_axis.hpp"
#include "render/input/lever_takeover.hpp"
#include "render/input/mouse_stick.hpp"

namespace stallwright::input {

/// Who has the keys.
enum class KeysFor {
  flying,  ///< all of them act
  pages,   ///< a page lies over the flight: only what acts_in_pages() does
  typing,  ///< a text field: none
};

/// Keyboard, mouse, sticks, pedals, levers and pads, made into what the hands ask for. Fed with every SDL event; looked at
/// once a frame. Devices add to keys: a stick holds, and a key still helps.
class Hands {
 public:
  explicit Hands(const Settings& settings);

  void handle(const SDL_Event& event);

  /// The hands dt_s after the last look.
  const HandsNow& update(double dt_s, const Felt& felt);

  /// The start of a flight: stick let go at this trim, lever and feet as they are in it. A throttle lever of the pilot's
  /// counts again once it has been moved.
  void place(double pitch_trim, double throttle, double pedal_right);

  void give_keys(KeysFor use);
  /// While true no key and no button acts: the page of hands waits for one.
  void listen(bool on);

  const Settings& settings() const { return settings_; }
  void set(const Settings& settings) { settings_ = settings; }

  const HandsView& view() const { return view_; }
  /// Sentences for the user, one at a time; empty: no more.
  std::string take_notice() { return devices_.take_notice(); }

 private:
  void key(const SDL_KeyboardEvent& event);
  void pointer(const SDL_MouseMotionEvent& event);
  void buttons();
  void settle_actions();
  int direction(Action less, Action more) const;
  double device_share(Axis axis);
  double deflection(Axis axis, const KeyAxis& keys, double by_mouse);
  void move_mouse_stick(double dt_s);
  void move_trim(double dt_s);
  void move_throttle(double dt_s);
  double trigger_rate() const;
  double pedals(double dt_s, const Felt& felt);
  void shake(double dt_s, const Felt& felt);
  void look();

  Settings settings_;
  Devices devices_;
  unsigned device_changes_ = 0;
  HeldActions actions_;
  KeysFor keys_for_ = KeysFor::flying;
  bool listening_ = false;

  KeyAxis pitch_keys_, roll_keys_, pedal_keys_;
  KeyLever trim_, power_;
  double trim_target_ = 0.0;
  bool trim_running_ = false;
  Feet feet_;
  MouseStick mouse_, mouse_target_;  ///< as it stands, and where the pointer wants it
  double window_width_ = 0.0, window_height_ = 0.0;
  LeverTakeover lever_;
  double since_shake_s_ = 1.0;
  bool shaking_ = false;
  std::optional<KeyChord> key_;  ///< pressed since the last look
  HandsView view_;
};

}  // namespace stallwright::input
