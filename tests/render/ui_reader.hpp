#pragma once
#include <imgui.h>

#include <string>
#include <vector>

#include "render/ui/fonts.hpp"
#include "render/ui/screen_text.hpp"

/// What stands on the screen, read back from what Dear ImGui would draw: no window, no OpenGL, no picture.
namespace stallwright::ui_test {

using ui::Box;
using ui::read_texts;
using ui::ShownText;

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
