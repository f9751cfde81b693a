#include "render/input/devices.hpp"

#include <SDL.h>

#include <array>
#include <utility>

#include "render/input/settings.hpp"

namespace stallwright::input {
namespace {

constexpr Uint32 kParts = SDL_INIT_JOYSTICK | SDL_INIT_GAMECONTROLLER;
constexpr std::array<Uint8, 4> kWays = {SDL_HAT_UP, SDL_HAT_RIGHT, SDL_HAT_DOWN, SDL_HAT_LEFT};

}  // namespace

JoystickSystem::JoystickSystem() {
  // A stick goes on flying while an instructor's page has the focus.
  SDL_SetHint(SDL_HINT_JOYSTICK_ALLOW_BACKGROUND_EVENTS, "1");
  ready_ = SDL_InitSubSystem(kParts) == 0;
}

JoystickSystem::~JoystickSystem() {
  if (ready_) SDL_QuitSubSystem(kParts);
}

Devices::Devices() {
  if (!system_.ready()) {
    notice_ = "joysticks cannot be used (" + std::string(SDL_GetError()) + "): the keyboard flies";
    return;
  }
  for (int k = 0; k < SDL_NumJoysticks(); ++k) plug_in(k, false);
}

std::size_t Devices::find(SDL_JoystickID instance) const {
  std::size_t k = 0;
  while (k < devices_.size() && devices_[k].instance() != instance) ++k;
  return k;
}

void Devices::plug_in(int listed_at, bool tell) {
  // Those that were there at the start are announced by an event as well.
  if (find(SDL_JoystickGetDeviceInstanceID(listed_at)) < devices_.size()) return;
  Device device(listed_at);
  if (!device.open()) {
    notice_ = "a device could not be opened: " + std::string(SDL_GetError());
    return;
  }
  if (tell) notice_ = device.info().name + " was plugged in";
  infos_.push_back(device.info());
  hats_.emplace_back(4, SDL_HAT_CENTERED);
  devices_.push_back(std::move(device));
  ++changes_;
}

void Devices::unplug(SDL_JoystickID instance) {
  const std::size_t k = find(instance);
  if (k == devices_.size()) return;
  notice_ = infos_[k].name + " was unplugged: what it moved stands still, and the keyboard flies";
  const auto at = static_cast<std::ptrdiff_t>(k);
  devices_.erase(devices_.begin() + at);
  infos_.erase(infos_.begin() + at);
  hats_.erase(hats_.begin() + at);
  buttons_.clear();  // their places are no longer those of the list
  ++changes_;
}

void Devices::hat(std::size_t device, int number, Uint8 value) {
  if (number < 0 || number >= static_cast<int>(hats_[device].size())) return;
  Uint8& before = hats_[device][static_cast<std::size_t>(number)];
  for (std::size_t way = 0; way < kWays.size(); ++way) {
    const bool was = (before & kWays[way]) != 0, is = (value & kWays[way]) != 0;
    if (was != is) buttons_.push_back({device, kHatButtons + 4 * number + static_cast<int>(way), is});
  }
  before = value;
}

void Devices::handle(const SDL_Event& event) {
  const auto pressed = [&](SDL_JoystickID instance, int button, bool down, bool by_pad_event) {
    const std::size_t k = find(instance);
    // A pad reports each button twice, once as a joystick: only the labelled report counts.
    if (k < devices_.size() && (infos_[k].kind == DeviceKind::pad) == by_pad_event)
      buttons_.push_back({k, button, down});
  };
  switch (event.type) {
    case SDL_JOYDEVICEADDED:
      return plug_in(event.jdevice.which, true);
    case SDL_JOYDEVICEREMOVED:
      return unplug(event.jdevice.which);
    case SDL_JOYBUTTONDOWN:
    case SDL_JOYBUTTONUP:
      return pressed(event.jbutton.which, event.jbutton.button, event.type == SDL_JOYBUTTONDOWN, false);
    case SDL_CONTROLLERBUTTONDOWN:
    case SDL_CONTROLLERBUTTONUP:
      return pressed(event.cbutton.which, event.cbutton.button, event.type == SDL_CONTROLLERBUTTONDOWN, true);
    case SDL_JOYHATMOTION: {
      const std::size_t k = find(event.jhat.which);
      if (k < devices_.size() && infos_[k].kind != DeviceKind::pad) hat(k, event.jhat.hat, event.jhat.value);
      return;
    }
    default:
      return;
  }
}

void Devices::rumble(double strength) const {
  for (const Device& d : devices_)
    if (d.info().rumbles) d.rumble(strength);
}

std::string Devices::take_notice() { return std::exchange(notice_, std::string()); }

}  // namespace stallwright::input
