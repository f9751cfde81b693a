#include "render/input/device.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stallwright::input {
namespace {

std::string guid_text(SDL_Joystick* joystick) {
  char text[33];
  SDL_JoystickGetGUIDString(SDL_JoystickGetGUID(joystick), text, sizeof text);
  return text;
}

}  // namespace

Device::Device(int listed_at) {
  if (SDL_IsGameController(listed_at) == SDL_TRUE) pad_ = SDL_GameControllerOpen(listed_at);
  joystick_ = pad_ != nullptr ? SDL_GameControllerGetJoystick(pad_) : SDL_JoystickOpen(listed_at);
  if (joystick_ == nullptr) return;
  instance_ = SDL_JoystickInstanceID(joystick_);
  const char* name = SDL_JoystickName(joystick_);
  info_.guid = guid_text(joystick_);
  info_.name = name != nullptr && *name != '\0' ? name : "a device without a name";
  info_.kind = pad_ != nullptr                                                ? DeviceKind::pad
               : SDL_JoystickGetType(joystick_) == SDL_JOYSTICK_TYPE_THROTTLE ? DeviceKind::lever
                                                                              : DeviceKind::stick;
  info_.axes = pad_ != nullptr ? SDL_CONTROLLER_AXIS_MAX : SDL_JoystickNumAxes(joystick_);
  info_.rumbles = SDL_JoystickHasRumble(joystick_) == SDL_TRUE;
}

Device::~Device() { close(); }

Device::Device(Device&& other) noexcept
    : joystick_(std::exchange(other.joystick_, nullptr)),
      pad_(std::exchange(other.pad_, nullptr)),
      instance_(std::exchange(other.instance_, -1)),
      info_(std::move(other.info_)) {}

Device& Device::operator=(Device&& other) noexcept {
  if (this == &other) return *this;
  close();
  joystick_ = std::exchange(other.joystick_, nullptr);
  pad_ = std::exchange(other.pad_, nullptr);
  instance_ = std::exchange(other.instance_, -1);
  info_ = std::move(other.info_);
  return *this;
}

void Device::close() {
  // Once SDL has left (at the end of the program) it has closed all of them itself.
  if (joystick_ == nullptr || SDL_WasInit(SDL_INIT_JOYSTICK) == 0) return;
  if (pad_ != nullptr)
    SDL_GameControllerClose(pad_);
  else
    SDL_JoystickClose(joystick_);
}

int Device::raw(int axis) const {
  if (axis < 0 || axis >= info_.axes) return 0;
  if (pad_ != nullptr) return SDL_GameControllerGetAxis(pad_, static_cast<SDL_GameControllerAxis>(axis));
  return SDL_JoystickGetAxis(joystick_, axis);
}

void Device::rumble(double strength) const {
  const auto motor = static_cast<Uint16>(std::lround(65535.0 * std::clamp(strength, 0.0, 1.0)));
  SDL_JoystickRumble(joystick_, motor, static_cast<Uint16>(motor / 2), 200);
}

double rumble_strength(double buffet_g) {
  return std::isfinite(buffet_g) ? std::clamp((buffet_g - 0.02) / 0.38, 0.0, 1.0) : 0.0;
}

}  // namespace stallwright::input
