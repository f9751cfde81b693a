#pragma once
#include <SDL.h>

#include <catch2/catch.hpp>
#include <string>

#include "render/input/hands.hpp"

/// Events as SDL would send them, and devices that exist only in SDL.
namespace stallwright::events {

inline SDL_Event key(Uint32 type, SDL_Keycode code, SDL_Scancode where, int held = KMOD_NONE,
                     bool repeat = false) {
  SDL_Event e{};
  e.type = type;
  e.key.repeat = repeat ? 1 : 0;
  e.key.keysym.sym = code;
  e.key.keysym.scancode = where;
  e.key.keysym.mod = static_cast<Uint16>(held);
  return e;
}

inline SDL_Event down(SDL_Keycode code, int held = KMOD_NONE) {
  return key(SDL_KEYDOWN, code, SDL_GetScancodeFromKey(code), held);
}
inline SDL_Event up(SDL_Keycode code, int held = KMOD_NONE) {
  return key(SDL_KEYUP, code, SDL_GetScancodeFromKey(code), held);
}

inline SDL_Event window(Uint8 what, int data1 = 0, int data2 = 0) {
  SDL_Event e{};
  e.type = SDL_WINDOWEVENT;
  e.window.event = what;
  e.window.data1 = data1;
  e.window.data2 = data2;
  return e;
}

inline SDL_Event pointer(int x, int y) {
  SDL_Event e{};
  e.type = SDL_MOUSEMOTION;
  e.motion.x = x;
  e.motion.y = y;
  return e;
}

/// Looks once a fiftieth of a second for this long.
inline const input::HandsNow& fly(input::Hands& hands, double seconds, const input::Felt& felt = {}) {
  for (int k = 1; k < static_cast<int>(seconds * 50.0 + 0.5); ++k) hands.update(0.02, felt);
  return hands.update(0.02, felt);
}

/// SDL's waiting events, to the hands.
inline void pump(input::Hands& hands) {
  SDL_JoystickUpdate();
  SDL_Event e;
  while (SDL_PollEvent(&e) != 0) hands.handle(e);
}

/// SDL with its keyboard map and joysticks, without a window.
class Sdl {
 public:
  Sdl() {
    SDL_SetHint(SDL_HINT_JOYSTICK_ALLOW_BACKGROUND_EVENTS, "1");
    SDL_SetHint(SDL_HINT_VIDEODRIVER, "dummy");
    REQUIRE(SDL_Init(SDL_INIT_VIDEO | SDL_INIT_JOYSTICK | SDL_INIT_GAMECONTROLLER) == 0);
  }
  ~Sdl() { SDL_Quit(); }
  Sdl(const Sdl&) = delete;
  Sdl& operator=(const Sdl&) = delete;
};

/// A device that is plugged in by its construction. Works its own handle on the joystick, as hardware would.
class Virtual {
 public:
  Virtual(SDL_JoystickType type, int axes, int buttons, int hats, const char* name, Uint16 product = 1) {
    SDL_VirtualJoystickDesc d{};
    d.version = SDL_VIRTUAL_JOYSTICK_DESC_VERSION;
    d.type = static_cast<Uint16>(type);
    d.naxes = static_cast<Uint16>(axes);
    d.nbuttons = static_cast<Uint16>(buttons);
    d.nhats = static_cast<Uint16>(hats);
    d.vendor_id = 0x5157;
    d.product_id = product;
    d.name = name;
    d.userdata = this;
    d.Rumble = [](void* self, Uint16 low, Uint16) {
      static_cast<Virtual*>(self)->rumble = low;
      return 0;
    };
    index_ = SDL_JoystickAttachVirtualEx(&d);
    REQUIRE(index_ >= 0);
    joystick_ = SDL_JoystickOpen(index_);
    REQUIRE(joystick_ != nullptr);
  }
  ~Virtual() { unplug(); }
  Virtual(const Virtual&) = delete;
  Virtual& operator=(const Virtual&) = delete;

  void axis(int number, int raw) { SDL_JoystickSetVirtualAxis(joystick_, number, static_cast<Sint16>(raw)); }
  void button(int number, bool pressed) { SDL_JoystickSetVirtualButton(joystick_, number, pressed ? 1 : 0); }
  void hat(Uint8 value) { SDL_JoystickSetVirtualHat(joystick_, 0, value); }
  std::string guid() const {
    char text[33];
    SDL_JoystickGetGUIDString(SDL_JoystickGetGUID(joystick_), text, sizeof text);
    return text;
  }
  void unplug() {
    if (joystick_ == nullptr) return;
    const SDL_JoystickID id = SDL_JoystickInstanceID(joystick_);
    for (int k = 0; k < SDL_NumJoysticks(); ++k)
      if (SDL_JoystickGetDeviceInstanceID(k) == id) {
        SDL_JoystickDetachVirtual(k);
        break;
      }
    SDL_JoystickClose(joystick_);
    joystick_ = nullptr;
  }

  int rumble = -1;

 private:
  int index_ = -1;
  SDL_Joystick* joystick_ = nullptr;
};

}  // namespace stallwright::events
