#pragma once
#include <optional>
#include <vector>

#include "render/input/device.hpp"
#include "render/input/settings.hpp"

namespace stallwright::input {

/// The device and axis that one movement comes from now.
struct Assigned {
  std::size_t device = 0;  ///< place in the list of devices
  int axis = 0;
  AxisShape shape;
};

/// Which of these devices serves this axis; none: the keyboard. Pure.
/// A chosen device serves where it is plugged in, and nothing stands in for it while it is not. Automatic: the first stick,
/// else the first pad; a stick's third axis of three is its throttle, of four or more its third is the twist for the pedals
/// and its fourth the throttle (common practice; the page of hands changes it); a throttle unit's first axis.
std::optional<Assigned> assigned(const Settings& settings, Axis axis, const std::vector<DeviceInfo>& devices);

/// What a button does on a device for which none was chosen: pads by their labels, sticks by number.
std::optional<Action> usual_action(DeviceKind kind, int button);

/// What a button of this device does.
std::optional<Action> action_of_button(const Settings& settings, const DeviceInfo& device, int button);

/// Gives a button this action, and takes it from what it did. The other buttons of the device keep what they do by default.
void bind_button(Settings& settings, const DeviceInfo& device, int button, Action action);

/// Every button of these devices that does this: "button 1, hat up"; empty: none.
std::string buttons_text(const Settings& settings, const std::vector<DeviceInfo>& devices, Action action);

/// "button a" of a pad, "button 3" (counted from 1) or "hat up" of a stick.
std::string button_name(DeviceKind kind, int button);

}  // namespace stallwright::input
