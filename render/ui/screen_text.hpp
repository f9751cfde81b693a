#pragma once
#include <imgui.h>

#include <string>
#include <vector>

/// What stands on the screen, read back from what Dear ImGui would draw: no window, no OpenGL, no picture. Scripts wait for
/// words with it, and tests read every screen.
namespace stallwright::ui {

struct Box {
  ImVec2 from{}, to{};
  float width() const { return to.x - from.x; }
  float height() const { return to.y - from.y; }
  ImVec2 centre() const { return {(from.x + to.x) / 2.0f, (from.y + to.y) / 2.0f}; }
};

/// A run of letters of one font, size and colour on one line. One call of AddText gives one of these, a line of it at a
/// time; two calls merge only where the second starts exactly where a letter or a space would have stood.
struct ShownText {
  std::string text;      ///< UTF-8
  Box line;              ///< as ImGui::CalcTextSize measures it, px
  Box ink;               ///< round the letters' own pictures, px
  Box clip;              ///< what the draw list lets through
  float size_px = 0.0f;  ///< of the type
  const ImFont* font = nullptr;
  ImU32 colour = 0;
  float seen_share() const;  ///< 0 .. 1 of the ink inside the clip
};

/// All texts, in the order drawn. Works after ImGui::Render(), on draw lists of any window. Letters that a widget cut at its
/// own edge are missing, so a label too long for its place reads short.
std::vector<ShownText> read_texts(const ImDrawData& drawn);

/// Whether some text of the screen has these words in it, read within one line and one font.
bool shows(const ImDrawData& drawn, const std::string& words);

}  // namespace stallwright::ui
