#pragma once
#include <cstddef>
#include <string>
#include <vector>

namespace stallwright::input {

/// What a key or button can ask for. Those of the first group move the hands as long as they are held; the others act once
/// when pressed.
enum class Action {
  stick_back,
  stick_forward,
  stick_left,
  stick_right,
  pedal_left,
  pedal_right,
  more_power,
  less_power,
  trim_nose_up,
  trim_nose_down,
  trim_to_stick,  ///< run the trim to where the stick is held
  look_left,
  look_right,
  look_ahead,
  look_over_nose,

  power_idle,
  power_full,
  flaps_down,
  flaps_up,
  record,         ///< begin the record, or be told why not
  record_anyway,  ///< begin it off condition; the debrief says so
  area_clear,     ///< looked around: skip or end the clearing turns
  knock_it_off,   ///< break the attempt off
  pause,
  faster,
  slower,  ///< rate of time
  louder,
  quieter,
  mute,
  mouse_stick,  ///< the pointer becomes the stick, and no longer
  help,         ///< show all keys
  hands,        ///< set the devices up
  leave,        ///< end the flight (asks first), close what is open
};

inline constexpr std::size_t kActions = static_cast<std::size_t>(Action::leave) + 1;

inline constexpr std::size_t place_of(Action action) { return static_cast<std::size_t>(action); }

/// Moves or looks as long as it is held.
inline constexpr bool is_held(Action action) { return action <= Action::look_over_nose; }

/// Acts while a page is open over the flight, where keys walk through the page instead of flying.
bool acts_in_pages(Action action);

/// Every action once, in the order of the help page.
const std::vector<Action>& all_actions();

/// What the help page and the settings file call it: "record", "record anyway", "look left", ...
std::string action_name(Action action);

/// Heading under which the help page lists it: "fly", "look", "card", "program".
const char* action_group(Action action);

}  // namespace stallwright::input
