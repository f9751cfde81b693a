#pragma once
#include <imgui.h>

#include "render/ui/fonts.hpp"
#include "render/ui/theme.hpp"

namespace stallwright::desk {

enum class Align { left, middle, right };

/// Draws text and marks of our look into a window's draw list. Lengths are px at scale 1 and grow with the type; positions are
/// screen px.
class Pen {
 public:
  Pen(ImDrawList& list, const ui::Fonts& fonts) : list_(list), fonts_(fonts) {}

  const ui::Fonts& fonts() const { return fonts_; }
  ImDrawList& list() { return list_; }
  float px(float at_scale_1) const { return at_scale_1 * fonts_.scale; }

  /// One line; `at` is its upper left, middle or right. Returns the width.
  float text(ImFont* font, ImVec2 at, const ui::Colour& colour, const char* text, Align align = Align::left);
  /// Cut with an ellipsis where it is wider than `width`.
  void fitted(ImFont* font, ImVec2 at, const ui::Colour& colour, const char* text, float width);
  /// Lines broken at `width`; returns the height.
  float wrapped(ImFont* font, ImVec2 at, const ui::Colour& colour, const char* text, float width);
  static float width(ImFont* font, const char* text);
  static float wrapped_height(ImFont* font, const char* text, float width);

  void line(ImVec2 from, ImVec2 to, const ui::Colour& colour, float thick = 1.0f, float alpha = 1.0f);
  void dashed(ImVec2 from, ImVec2 to, const ui::Colour& colour, float on, float off, float thick = 1.0f);
  void box(ImVec2 from, ImVec2 to, const ui::Colour& colour, float alpha = 1.0f);
  void frame(ImVec2 from, ImVec2 to, const ui::Colour& colour, float thick = 1.0f);

  // Marks by meaning; `radius` in px at scale 1.
  void round_mark(ImVec2 at, float radius, const ui::Colour& colour);
  void diamond(ImVec2 at, float radius, const ui::Colour& colour);
  void cross(ImVec2 at, float radius, const ui::Colour& colour);
  void tick(ImVec2 at, float radius, const ui::Colour& colour);
  void bar(ImVec2 at, float radius, const ui::Colour& colour);  ///< outside a band
  void whisker(float x_low, float x_high, float y, float cap, const ui::Colour& colour);

 private:
  ImDrawList& list_;
  const ui::Fonts& fonts_;
};

}  // namespace stallwright::desk
