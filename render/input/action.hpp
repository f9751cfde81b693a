#pragma once
#include <string>
#include <vector>

namespace stallwright::input {

/// What a key or button can ask for. Axes are apart (hands.hpp).
enum class Action {
  record,         ///< begin the record, or be told why not
  record_anyway,  ///< begin it off condition; the debrief says so
  area_clear,     ///< looked around: skip or end the clearing turns
  knock_it_off,   ///< break the attempt off
  pause,
  faster,
  slower,  ///< rate of time
  look_left,
  look_right,
  look_ahead,
  look_over_nose,
  flaps_down,
  flaps_up,
  trim_nose_up,
  trim_nose_down,
  louder,
  quieter,
  mute,
  help,   ///< show all keys
  hands,  ///< set the devices up
  leave,  ///< end the flight (asks first), close what is open
};

/// Every action once, in the order of the help page.
const std::vector<Action>& all_actions();

/// What the help page and the settings file call it: "record", "record anyway", "look left", ...
std::string action_name(Action action);

}  // namespace stallwright::input
