#pragma once
#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "render/input/axis_shape.hpp"
#include "render/input/key_bindings.hpp"

namespace stallwright::input {

enum class Axis { pitch, roll, pedals, throttle };
inline constexpr std::size_t kAxes = 4;
inline constexpr std::size_t place_of(Axis axis) { return static_cast<std::size_t>(axis); }
inline constexpr std::array<const char*, kAxes> kAxisNames = {"pitch", "roll", "pedals", "throttle"};

inline constexpr const char* kAutomatic = "automatic";  ///< whatever is plugged in and fits
inline constexpr const char* kKeyboard = "keyboard";    ///< no device on purpose

/// Where one movement of the hands comes from.
struct AxisSetting {
  std::string device = kAutomatic;  ///< or kKeyboard, or a device's GUID as SDL writes it
  std::string device_name;          ///< for people; empty: none
  int axis = 0;                     ///< number on the device, from 0; of a GUID only
  AxisShape shape;                  ///< of a GUID only; automatic ones use their kind's

  friend bool operator==(const AxisSetting&, const AxisSetting&) = default;
};

/// One button of one device. Directions of a hat count as buttons from kHatButtons on, four each: up, right, down, left.
struct ButtonBinding {
  std::string device;  ///< GUID
  int button = 0;
  Action action = Action::record;

  friend bool operator==(const ButtonBinding&, const ButtonBinding&) = default;
};
inline constexpr int kHatButtons = 100;

/// What a pilot has chosen about hands and ears. A value, kept in one file (settings_file.hpp).
struct Settings {
  std::array<AxisSetting, kAxes> axes;
  KeyBindings keys = default_keys();
  std::vector<ButtonBinding> buttons;  ///< a device without any has those of its kind
  bool mouse_stick = false;
  bool feet_assist = true;  ///< feet follow the ball where no pedals are
  bool rumble = true;
  double volume = 0.7;  ///< 0 .. 1
  bool mute = false;
  double ui_scale = 1.0;  ///< of type and dials, on top of the window's, 0.8 .. 2

  friend bool operator==(const Settings&, const Settings&) = default;
};

}  // namespace stallwright::input
