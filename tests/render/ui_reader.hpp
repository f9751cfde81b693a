#pragma once
#include <imgui.h>

#include <string>
#include <vector>

#include "render/ui/fonts.hpp"

/// What stands on the screen, read back from what Dear ImGui would draw: no window, no OpenGL, no picture.
namespace stallwright::ui_test {

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

/// Of all texts "A over B at x, y" for each pair whose ink overlaps by more than `slack_px` both ways. Texts that the clip
/// hides are left out; the same words twice in one place (an outline) count as an overlap.
std::vector<std::string> overlaps(const std::vector<ShownText>& texts, float slack_px = 0.5f);

/// Texts in type smaller than this, "17.0 px: words".
std::vector<std::string> smaller_than(const std::vector<ShownText>& texts, float least_px);

/// Texts with ink outside the box by more than `slack_px`, or cut by their clip.
std::vector<std::string> out_of(const std::vector<ShownText>& texts, const Box& box, float slack_px = 0.5f);

/// An ImGui context with our fonts and style and a screen of this size, but no window: scale is height / 720. Draw frames
/// through it and read them. One at a time; makes itself current.
class UiFixture {
 public:
  explicit UiFixture(float width_px = 1280.0f, float height_px = 720.0f);
  ~UiFixture();
  UiFixture(const UiFixture&) = delete;
  UiFixture& operator=(const UiFixture&) = delete;
  UiFixture(UiFixture&&) = delete;
  UiFixture& operator=(UiFixture&&) = delete;

  /// One frame: `draw()` is called between NewFrame and Render. Draw in windows of your own or in the background list.
  /// ImGui shows a new window's true sizes from its second frame on.
  template <class Draw>
  const std::vector<ShownText>& frame(Draw&& draw) {
    begin();
    draw();
    return end();
  }

  const std::vector<ShownText>& texts() const { return texts_; }  ///< of the last frame
  /// The first text that equals, or that contains, these words; null if none.
  const ShownText* equal_to(const std::string& words) const;
  const ShownText* containing(const std::string& words) const;
  const ui::Fonts& fonts() const { return fonts_; }
  Box screen() const;

 private:
  void begin();
  const std::vector<ShownText>& end();

  ImGuiContext* context_;
  ui::Fonts fonts_;
  std::vector<ShownText> texts_;
};

}  // namespace stallwright::ui_test
