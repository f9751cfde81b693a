#pragma once
#include <imgui.h>

#include "render/panel/needle_log.hpp"
#include "render/ui/fonts.hpp"
#include "render/view/panel_view.hpp"

namespace stallwright::panel {

/// Draws the panel into a rectangle of the screen, ground included, on ImGui's background list: behind every window. Where the
/// mouse rests on a dial that no window covers, a sentence says what the dial shows.
///   log  if given, where each pointer was drawn
/// Call between NewFrame and Render. Allocates nothing but what ImGui's lists keep.
void draw_panel(const view::PanelView& view, const ui::Fonts& fonts, ImVec2 from, ImVec2 to,
                NeedleLog* log = nullptr);

}  // namespace stallwright::panel
