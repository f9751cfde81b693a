#pragma once
#include "render/desk/pen.hpp"
#include "render/view/debrief_view.hpp"

/// The pages of the debrief that only show; debrief.cpp puts them in their frame.
namespace stallwright::desk {

void draw_verdict_page(const view::DebriefView& view, Pen& pen, ImVec2 from, ImVec2 to);
void draw_set_points_page(const view::DebriefView& view, Pen& pen, ImVec2 from, ImVec2 to);
void draw_split_page(const view::DebriefView& view, Pen& pen, ImVec2 from, ImVec2 to);
void draw_heard_page(const view::DebriefView& view, Pen& pen, ImVec2 from, ImVec2 to);
void draw_work_page(const view::DebriefView& view, Pen& pen, ImVec2 from, ImVec2 to);

}  // namespace stallwright::desk
