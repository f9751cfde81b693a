#pragma once
#include <SDL.h>

#include <cstddef>
#include <string>

namespace stallwright::input {

/// Two sorts, because only of a pad is it known what each axis and button is for.
enum class DeviceKind { pad, stick, lever };

/// What can be said of a device without asking it.
struct DeviceInfo {
  std::string guid, name;
  DeviceKind kind = DeviceKind::stick;
  int axes = 0;
  bool rumbles = false;
};

/// One plugged-in joystick, throttle, pedals or game pad, opened for the life of this object.
class Device {
 public:
  /// Opens what SDL lists at this place; `open()` says whether it worked.
  explicit Device(int listed_at);
  ~Device();
  Device(Device&& other) noexcept;
  Device& operator=(Device&& other) noexcept;
  Device(const Device&) = delete;
  Device& operator=(const Device&) = delete;

  bool open() const { return joystick_ != nullptr; }
  SDL_JoystickID instance() const { return instance_; }
  const DeviceInfo& info() const { return info_; }

  /// Raw value of an axis, -32768 .. 32767 (a pad's triggers 0 .. 32767); 0 for one that it has not.
  int raw(int axis) const;

  /// Shakes for a fifth of a second, 0 .. 1; ask again before that for longer.
  void rumble(double strength) const;

 private:
  void close();

  SDL_Joystick* joystick_ = nullptr;
  SDL_GameController* pad_ = nullptr;  ///< owns joystick_ where it is one
  SDL_JoystickID instance_ = -1;
  DeviceInfo info_;
};

/// How hard a device shakes for this buffet: nothing below 0.02 g, all it has from 0.4 g.
double rumble_strength(double buffet_g);

}  // namespace stallwright::input
