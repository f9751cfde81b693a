#pragma once
#include <imgui.h>

#include <array>

#include "render/panel/gauge.hpp"

namespace stallwright::panel {

inline constexpr std::size_t kDials = 6;

struct Box {
  ImVec2 from{}, to{};
};

/// Where dials and gauges stand in a rectangle, px. Dials in the order airspeed, attitude, altimeter, turn and slip, heading,
/// vertical speed: two rows of three as the trade has them, or the same in one row.
struct PanelLayout {
  float radius = 0.0f;
  std::array<ImVec2, kDials> dials{};  ///< centres
  std::array<Box, kGauges> gauges{};   ///< in the order of draw_gauge
};

/// Of three arrangements the one with the largest dials: a row of six with the gauges under it, a row with them on the right, two
/// rows of three with them on the right; the last, which is the trade's, also where it costs no more than a twentieth. From 1280 x 200 px
/// at scale 1 all figures keep apart; in less, dials shrink and their figures meet.
PanelLayout panel_layout(ImVec2 from, ImVec2 to, float scale);

}  // namespace stallwright::panel
