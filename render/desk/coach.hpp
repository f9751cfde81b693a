#pragma once
#include "render/ui/fonts.hpp"
#include "render/ui/widgets.hpp"
#include "render/view/coach_view.hpp"

namespace stallwright::desk {

/// What was pressed on the strip.
struct CoachIntent {
  bool record = false, record_anyway = false, area_clear = false, knock_it_off = false;
};

/// The coach strip on the glareshield: what to hold and how it goes in words on the left, the bands as bars with the live
/// value in the middle, settling and record progress and the buttons on the right; the guide's line below, where there is one.
CoachIntent draw_coach(const view::CoachView& view, ui::Registry& registry, const ui::Fonts& fonts,
                       ImVec2 from, ImVec2 to);

/// Height that the strip wants, px.
float coach_height(const ui::Fonts& fonts, bool guide);

}  // namespace stallwright::desk
