#pragma once
#include "render/desk/time_plots.hpp"
#include "render/ui/fonts.hpp"
#include "render/ui/widgets.hpp"
#include "render/view/debrief_view.hpp"

namespace stallwright::desk {

/// Which page of the debrief is open, and how the flight is looked at.
struct DebriefState {
  std::size_t page = 0;
  TimePlotsState plots;
};

enum class DebriefIntent { none, again, logbook, replay, start };

/// Draws the open page of a debrief into a rectangle. Keys 1 to 5 open a page; on the flight's page + - zoom, arrows move,
/// Home shows all, Page Up and Page Down go from record to record; Escape goes back to the start.
/// A replay begins where the flight's page has its cursor (`state.plots.cursor_s`).
DebriefIntent draw_debrief(const view::DebriefView& view, DebriefState& state, ui::Registry& registry,
                           const ui::Fonts& fonts, ImVec2 from, ImVec2 to);

}  // namespace stallwright::desk
