#pragma once
#include <imgui.h>

namespace stallwright::ui {

/// Red, green, blue and cover, 0 .. 1. (ImGui 1.86 has no colour that a constant can be made of.)
struct Colour {
  float r, g, b, a = 1.0f;
  operator ImVec4() const { return {r, g, b, a}; }
};

/// Colours by meaning, the Okabe-Ito set as on our pages (sim/report/theme.hpp), on a matt warm dark grey. Meaning is carried
/// by form and words first: no two things differ by colour alone.
struct Theme {
  Colour panel{0.129f, 0.118f, 0.106f, 1.0f};       ///< warm dark grey
  Colour dial{0.071f, 0.063f, 0.055f, 1.0f};        ///< face of a dial
  Colour edge{0.255f, 0.235f, 0.212f, 1.0f};        ///< rims, rules, frames
  Colour field{0.180f, 0.165f, 0.149f, 1.0f};       ///< boxes that take input
  Colour field_over{0.255f, 0.235f, 0.212f, 1.0f};  ///< the same under the pointer, or chosen
  Colour ivory{0.953f, 0.929f, 0.878f, 1.0f};       ///< markings and text
  Colour soft{0.714f, 0.682f, 0.631f, 1.0f};        ///< second-rank text
  Colour measured{0.337f, 0.706f, 0.914f, 1.0f};    ///< sky blue; round marks
  Colour within{0.000f, 0.720f, 0.530f, 1.0f};      ///< bluish green, lightened for the dark ground; ticked
  Colour outside{0.902f, 0.624f, 0.000f, 1.0f};     ///< orange; barred
  Colour danger{0.900f, 0.400f, 0.070f, 1.0f};      ///< vermilion, lightened; crosses, heavy lines
  Colour truth{0.860f, 0.530f, 0.700f, 1.0f};       ///< reddish purple, lightened; diamonds
  // Airspeed arcs keep the colours that 14 CFR 23.1545 gives them.
  Colour arc_white{0.950f, 0.950f, 0.950f, 1.0f}, arc_green{0.100f, 0.620f, 0.250f, 1.0f},
      arc_yellow{0.960f, 0.800f, 0.100f, 1.0f}, line_red{0.860f, 0.130f, 0.100f, 1.0f};
  Colour sky{0.310f, 0.365f, 0.395f, 1.0f};  ///< upper half of the attitude indicator: slate
  Colour ground{0.235f, 0.180f, 0.130f,
                1.0f};  ///< lower half: peat, darker so that the halves differ in grey too
};

inline constexpr Theme kTheme{};

inline ImU32 colour(const Colour& c, float alpha = 1.0f) {
  return ImGui::ColorConvertFloat4ToU32({c.r, c.g, c.b, c.a * alpha});
}

}  // namespace stallwright::ui
