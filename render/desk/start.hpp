#pragma once
#include <string>

#include "render/ui/fonts.hpp"
#include "render/ui/widgets.hpp"
#include "render/view/start_view.hpp"

namespace stallwright::desk {

/// What the start page keeps between frames. The check is made anew when the choice has changed.
struct StartState {
  view::StartChoice choice;
  std::string
      notice;  ///< one line from the program: a file that could not be read, a flight that could not begin
  std::string seed_text;
  view::StartChoice checked;
  view::StartCheck check;
  const view::StartView* of = nullptr;
};

enum class StartIntent { none, fly, logbook, hands, quit };

/// Draws the start page into a rectangle. With `fly`, `state.check` says what to fly. Enter flies when nothing is typed.
StartIntent draw_start(const view::StartView& view, StartState& state, ui::Registry& registry,
                       const ui::Fonts& fonts, ImVec2 from, ImVec2 to);

}  // namespace stallwright::desk
