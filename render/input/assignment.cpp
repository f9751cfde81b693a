#include "render/input/assignment.hpp"

#include <algorithm>
#include <array>

namespace stallwright::input {
namespace {

using Devices = std::vector<DeviceInfo>;

struct Usual {
  int button;
  Action action;
};

constexpr std::array<Usual, 14> kPadButtons = {{
    {SDL_CONTROLLER_BUTTON_A, Action::record},
    {SDL_CONTROLLER_BUTTON_B, Action::knock_it_off},
    {SDL_CONTROLLER_BUTTON_X, Action::area_clear},
    {SDL_CONTROLLER_BUTTON_Y, Action::trim_to_stick},
    {SDL_CONTROLLER_BUTTON_BACK, Action::help},
    {SDL_CONTROLLER_BUTTON_START, Action::pause},
    {SDL_CONTROLLER_BUTTON_LEFTSTICK, Action::look_ahead},
    {SDL_CONTROLLER_BUTTON_RIGHTSTICK, Action::look_over_nose},
    {SDL_CONTROLLER_BUTTON_LEFTSHOULDER, Action::flaps_up},
    {SDL_CONTROLLER_BUTTON_RIGHTSHOULDER, Action::flaps_down},
    {SDL_CONTROLLER_BUTTON_DPAD_UP, Action::trim_nose_down},
    {SDL_CONTROLLER_BUTTON_DPAD_DOWN, Action::trim_nose_up},
    {SDL_CONTROLLER_BUTTON_DPAD_LEFT, Action::look_left},
    {SDL_CONTROLLER_BUTTON_DPAD_RIGHT, Action::look_right},
}};

constexpr std::array<Usual, 11> kStickButtons = {{
    {0, Action::record},
    {1, Action::knock_it_off},
    {2, Action::area_clear},
    {3, Action::trim_to_stick},
    {4, Action::flaps_down},
    {5, Action::flaps_up},
    {6, Action::pause},
    {kHatButtons + 0, Action::trim_nose_down},
    {kHatButtons + 1, Action::look_right},
    {kHatButtons + 2, Action::trim_nose_up},
    {kHatButtons + 3, Action::look_left},
}};

std::optional<std::size_t> first_of(const Devices& devices, DeviceKind kind, int least_axes) {
  for (std::size_t k = 0; k < devices.size(); ++k)
    if (devices[k].kind == kind && devices[k].axes >= least_axes) return k;
  return std::nullopt;
}

constexpr AxisShape kStickShape{}, kPadShape{-32768, 0, 32767, false, 0.12, 0.5},
    kLeverShape{-32768, 0, 32767, true, 0.04, 0.0};

std::optional<Assigned> automatic_throttle(const Devices& devices) {
  if (const auto unit = first_of(devices, DeviceKind::lever, 1)) return Assigned{*unit, 0, kLeverShape};
  const auto stick = first_of(devices, DeviceKind::stick, 3);
  if (!stick) return std::nullopt;
  return Assigned{*stick, devices[*stick].axes >= 4 ? 3 : 2, kLeverShape};
}

std::optional<Assigned> automatic(Axis axis, const Devices& devices) {
  if (axis == Axis::throttle) return automatic_throttle(devices);
  const int on_stick = axis == Axis::roll ? 0 : axis == Axis::pitch ? 1 : 2;
  const int least = axis == Axis::pedals ? 4 : 2;
  if (const auto stick = first_of(devices, DeviceKind::stick, least))
    return Assigned{*stick, on_stick, kStickShape};
  // A stick without a twist leaves the pedals to the feet, also where a pad lies beside it.
  if (first_of(devices, DeviceKind::stick, 2)) return std::nullopt;
  const int on_pad = axis == Axis::roll    ? SDL_CONTROLLER_AXIS_LEFTX
                     : axis == Axis::pitch ? SDL_CONTROLLER_AXIS_LEFTY
                                           : SDL_CONTROLLER_AXIS_RIGHTX;
  if (const auto pad = first_of(devices, DeviceKind::pad, 2)) return Assigned{*pad, on_pad, kPadShape};
  return std::nullopt;
}

}  // namespace

std::optional<Assigned> assigned(const Settings& settings, Axis axis, const Devices& devices) {
  const AxisSetting& chosen = settings.axes[place_of(axis)];
  if (chosen.device == kKeyboard) return std::nullopt;
  if (chosen.device == kAutomatic) return automatic(axis, devices);
  for (std::size_t k = 0; k < devices.size(); ++k)
    if (devices[k].guid == chosen.device && chosen.axis < devices[k].axes)
      return Assigned{k, chosen.axis, chosen.shape};
  return std::nullopt;
}

std::optional<Action> usual_action(DeviceKind kind, int button) {
  const auto find = [&](const auto& rows) -> std::optional<Action> {
    for (const Usual& u : rows)
      if (u.button == button) return u.action;
    return std::nullopt;
  };
  return kind == DeviceKind::pad     ? find(kPadButtons)
         : kind == DeviceKind::stick ? find(kStickButtons)
                                     : std::nullopt;
}

std::optional<Action> action_of_button(const Settings& settings, const DeviceInfo& device, int button) {
  bool any = false;
  for (const ButtonBinding& b : settings.buttons) {
    if (b.device != device.guid) continue;
    any = true;
    if (b.button == button) return b.action;
  }
  return any ? std::nullopt : usual_action(device.kind, button);
}

void bind_button(Settings& settings, const DeviceInfo& device, int button, Action action) {
  auto& all = settings.buttons;
  const auto same_device = [&](const ButtonBinding& b) { return b.device == device.guid; };
  if (std::none_of(all.begin(), all.end(), same_device))
    for (int b = 0; b < kHatButtons + 4; ++b)
      if (const auto usual = usual_action(device.kind, b)) all.push_back({device.guid, b, *usual});
  const auto gone = std::remove_if(all.begin(), all.end(), [&](const ButtonBinding& b) {
    return same_device(b) && (b.button == button || b.action == action);
  });
  all.erase(gone, all.end());
  all.push_back({device.guid, button, action});
}

std::string buttons_text(const Settings& settings, const Devices& devices, Action action) {
  std::string text;
  for (const DeviceInfo& device : devices)
    for (int b = 0; b < kHatButtons + 4; ++b)
      if (action_of_button(settings, device, b) == action)
        text += (text.empty() ? "" : ", ") + button_name(device.kind, b);
  return text;
}

std::string button_name(DeviceKind kind, int button) {
  constexpr std::array<const char*, 4> kWays = {"up", "right", "down", "left"};
  if (button >= kHatButtons)
    return std::string("hat ") + kWays[static_cast<std::size_t>((button - kHatButtons) % 4)];
  const char* label =
      kind == DeviceKind::pad
          ? SDL_GameControllerGetStringForButton(static_cast<SDL_GameControllerButton>(button))
          : nullptr;
  return label != nullptr ? std::string("button ") + label : "button " + std::to_string(button + 1);
}

}  // namespace stallwright::input
