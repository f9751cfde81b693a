#pragma once
#include <imgui.h>

#include <array>
#include <cstddef>
#include <cstring>

namespace stallwright::panel {

/// Where one pointer was drawn, for tests: a needle turns about its pivot, a pointer on a straight scale stands `tip - pivot` along
/// a track of `span_px` from its low end.
struct NeedleMark {
  const char* name = "";  ///< a literal
  double value = 0.0;     ///< that it shows, in the dial's unit
  ImVec2 pivot{}, tip{};  ///< screen px
  float span_px = 0.0f;   ///< 0 for a needle
};

/// All pointers of one frame, in the order drawn. Drawing works without it.
struct NeedleLog {
  std::array<NeedleMark, 192> marks{};
  std::size_t count = 0;

  void add(const NeedleMark& mark) {
    if (count < marks.size()) marks[count++] = mark;
  }
  const NeedleMark* find(const char* name) const {
    for (std::size_t k = 0; k < count; ++k)
      if (std::strcmp(marks[k].name, name) == 0) return &marks[k];
    return nullptr;
  }
};

}  // namespace stallwright::panel
