#pragma once
#include "render/desk/pen.hpp"
#include "render/view/logbook_view.hpp"

namespace stallwright::desk {

/// Two pictures of how flights went, oldest left, at most the newest sixty: speed hold, and error of the warning. Flights of the
/// same people as the chosen one are joined and filled, others stand open.
void draw_trends(const view::Logbook& logbook, std::size_t chosen, Pen& pen, ImVec2 from, ImVec2 to);

}  // namespace stallwright::desk
