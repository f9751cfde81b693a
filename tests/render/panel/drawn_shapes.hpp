#pragma once
#include <imgui.h>

#include <cmath>
#include <numbers>
#include <vector>

/// Shapes read back from ImGui's draw data by their colour.
namespace stallwright::ui_test {

/// All corner points drawn in exactly this colour.
inline std::vector<ImVec2> points_of_colour(const ImDrawData& drawn, ImU32 colour) {
  std::vector<ImVec2> points;
  for (int k = 0; k < drawn.CmdListsCount; ++k)
    for (const ImDrawVert& v : drawn.CmdLists[k]->VtxBuffer)
      if (v.col == colour) points.push_back(v.pos);
  return points;
}

/// Degrees clockwise from straight up, 0 .. 360.
inline double direction_deg(ImVec2 from, ImVec2 to) {
  const double deg = std::atan2(static_cast<double>(to.x - from.x), static_cast<double>(from.y - to.y)) *
                     180.0 / std::numbers::pi;
  return deg < 0.0 ? deg + 360.0 : deg;
}

inline double distance(ImVec2 a, ImVec2 b) {
  return std::hypot(static_cast<double>(a.x - b.x), static_cast<double>(a.y - b.y));
}

}  // namespace stallwright::ui_test
