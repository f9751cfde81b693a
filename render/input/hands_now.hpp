#pragma once
#include <array>
#include <optional>

#include "render/input/assignment.hpp"
#include "render/input/held_actions.hpp"

namespace stallwright::input {

/// What the hands ask for now.
struct HandsNow {
  double stick_aft = 0.0, stick_right = 0.0, pedal_right = 0.0;  ///< -1 .. 1, as Controls has them
  double throttle = 0.0;                                         ///< 0 .. 1
  double pitch_trim = 0.0;     ///< where the stick stands when let go, -1 .. 1; stick_aft has it in it
  int flap_steps = 0;          ///< settings down (negative: up) asked for since the last look
  bool feet_assisted = false;  ///< the feet of nobody are following the ball: the debrief should say so
  Pressed pressed;             ///< since the last look; flaps are counted above and not in here
  ActionSet held;              ///< now: for the head's turning

  bool holds(Action action) const { return held[place_of(action)]; }
};

/// What the hands feel.
struct Felt {
  double slip_g = 0.0;    ///< of the ball, right positive: -right_mps2 / 9.80665 of the readings
  double buffet_g = 0.0;  ///< rms at the seat
  bool flying = true;     ///< false: paused, or no flight; feet stand still and nothing shakes
};

/// Live values for the page of hands.
struct AxisSeen {
  std::optional<Assigned> source;
  int raw = 0;            ///< of the device
  double straight = 0.0;  ///< calibrated only, -1 .. 1 (throttle 0 .. 1)
  double out = 0.0;       ///< what is asked for, from whatever source
};

struct ButtonSeen {
  std::size_t device = 0;
  int button = 0;
};

struct HandsView {
  static constexpr std::size_t kRaw = 16;            ///< axes of a device that are shown
  const std::vector<DeviceInfo>* devices = nullptr;  ///< never null
  std::vector<std::array<int, kRaw>> raw;            ///< by device
  std::array<AxisSeen, kAxes> axes;
  std::optional<KeyChord> key;  ///< pressed since the last look, whatever it does
  std::optional<ButtonSeen> button;
  HandsNow now;
};

}  // namespace stallwright::input
