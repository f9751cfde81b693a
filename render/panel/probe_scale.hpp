#pragma once
#include <imgui.h>

#include "render/panel/needle_log.hpp"
#include "render/ui/fonts.hpp"
#include "render/view/probe_scale_view.hpp"

namespace stallwright::panel {

/// The height that shows everything, px at scale 1; 58 leaves out the second line of names.
inline constexpr float kProbeScaleHeight_px = 76.0f;

/// Draws the probe scale into a rectangle of the screen, ground included, on ImGui's background list: a ruler of probe ratio, slow on
/// the right; set points as pegs on it with their 95 % interval as whiskers and their names above, those of the present flap
/// setting in ivory and full, the others dim, short and hollow, named where there is room; one needle with a bead. A needle beyond the
/// ruler stays at its end.
///   log  if given: "probe ratio" for the needle, then "low", "high" and "peg" for each peg, the dim ones first
void draw_probe_scale(const view::ProbeScaleView& view, const ui::Fonts& fonts, ImVec2 from, ImVec2 to,
                      NeedleLog* log = nullptr);

}  // namespace stallwright::panel
