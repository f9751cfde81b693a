#pragma once
#include "render/ui/fonts.hpp"
#include "render/ui/widgets.hpp"
#include "render/view/logbook_view.hpp"

namespace stallwright::desk {

struct LogbookState {
  std::size_t chosen = 0;  ///< line, newest first
  std::size_t first = 0;   ///< line at the top of the list
};

enum class LogbookIntent { none, debrief, replay, start };

/// Draws the logbook into a rectangle. Up, down, Page Up, Page Down, Home and End choose a flight; Enter opens its debrief, R
/// its replay, Escape goes back. With an intent, `state.chosen` is the line meant.
LogbookIntent draw_logbook(const view::Logbook& logbook, LogbookState& state, ui::Registry& registry,
                           const ui::Fonts& fonts, ImVec2 from, ImVec2 to);

}  // namespace stallwright::desk
