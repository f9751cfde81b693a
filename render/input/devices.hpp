#pragma once
#include <SDL_events.h>

#include <string>
#include <vector>

#include "render/input/device.hpp"

namespace stallwright::input {

/// A button of a device went down or up; hats count as buttons (settings.hpp).
struct ButtonEvent {
  std::size_t device = 0;
  int button = 0;
  bool down = false;
};

/// SDL's joystick part, running for the life of this object.
class JoystickSystem {
 public:
  JoystickSystem();
  ~JoystickSystem();
  JoystickSystem(const JoystickSystem&) = delete;
  JoystickSystem& operator=(const JoystickSystem&) = delete;
  JoystickSystem(JoystickSystem&&) = delete;
  JoystickSystem& operator=(JoystickSystem&&) = delete;
  bool ready() const { return ready_; }

 private:
  bool ready_ = false;
};

/// All that is plugged in, coming and going as SDL's events tell.
class Devices {
 public:
  Devices();

  void handle(const SDL_Event& event);

  /// One line a device, in the order of plugging in.
  const std::vector<DeviceInfo>& infos() const { return infos_; }
  int raw(std::size_t device, int axis) const { return devices_[device].raw(axis); }
  void rumble(double strength) const;

  /// Counts up each time that a device comes or goes: places in the list have then changed.
  unsigned changes() const { return changes_; }

  /// Buttons since the last clear, oldest first.
  const std::vector<ButtonEvent>& buttons() const { return buttons_; }
  void clear_buttons() { buttons_.clear(); }

  /// Name of what came or went since the last call, in a sentence; empty: nothing.
  std::string take_notice();

 private:
  void plug_in(int listed_at, bool tell);
  void unplug(SDL_JoystickID instance);
  void hat(std::size_t device, int number, Uint8 value);
  std::size_t find(SDL_JoystickID instance) const;

  JoystickSystem system_;  ///< first, so that it outlives the devices
  std::vector<Device> devices_;
  std::vector<DeviceInfo> infos_;
  std::vector<std::vector<Uint8>> hats_;  ///< last value of each hat, by device
  std::vector<ButtonEvent> buttons_;
  unsigned changes_ = 0;
  std::string notice_;
};

}  // namespace stallwright::input
