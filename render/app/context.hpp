#pragma once
#include <filesystem>
#include <string>

#include "render/app/notices.hpp"
#include "render/app/window.hpp"
#include "render/input/hands.hpp"
#include "render/outside/world.hpp"
#include "render/sound/speaker.hpp"
#include "render/ui/widgets.hpp"

namespace stallwright::app {

/// What every screen may use for the length of a frame.
struct Context {
  Window& window;
  outside::World& world;
  ui::Registry& registry;
  input::Hands& hands;
  sound::Speaker* speaker;  ///< null: silent
  Notices& notices;
  bool draws = true;  ///< false: this frame is laid out but not drawn
  bool in_step;       ///< frames and flight go together, nothing waits for a clock

  const ui::Fonts& fonts() const { return window.fonts(); }
  ImVec2 size() const { return {static_cast<float>(window.width()), static_cast<float>(window.height())}; }
};

}  // namespace stallwright::app
