#pragma once
#include <imgui.h>

#include <array>

#include "render/view/probe_scale_view.hpp"

namespace stallwright::panel {

/// A peg's name and where it stands.
struct PegName {
  std::array<char, 80> words{};
  std::size_t peg = 0;           ///< index in the view
  int row = 0;                   ///< 0 the uppermost
  float x = 0.0f, width = 0.0f;  ///< left end, px
};

struct PegNames {
  std::array<PegName, view::kPegs> names{};
  std::size_t count = 0;
};

/// Places the names above their pegs so that none meets another: the lit ones first, in the row next to the ruler, else in the
/// row above, else moved sideways; the others, with their flap setting, only where there is room right above their peg.
///   rows  1 or 2;  gap_px  least distance in a row;  left_px, right_px  ends of the ruler, which no name leaves
PegNames place_names(const view::ProbeScaleView& view, ImFont& font, int rows, float gap_px, float left_px,
                     float right_px);

}  // namespace stallwright::panel
