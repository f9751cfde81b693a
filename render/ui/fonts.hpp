#pragma once
#include <imgui.h>

#include <string>

namespace stallwright::ui {

/// The sizes of type, px at scale 1 (1280 x 720). None is under 14.
inline constexpr float kSmall_px = 14.0f, kBody_px = 17.0f, kLarge_px = 24.0f, kHuge_px = 34.0f;

struct Fonts {
  ImFont *small = nullptr, *body = nullptr, *bold = nullptr, *large = nullptr, *huge = nullptr;
  float scale = 1.0f;
  std::string notice;  ///< what a user should know: the face that was not found; empty: all is well
};

/// Puts B612 at these sizes into the atlas: Latin, Greek, and the signs that our texts use. Where fontconfig does not
/// have the face, ImGui's own stands in and `notice` says so.
///   scale  1 at 1280 x 720
Fonts load_fonts(ImFontAtlas& atlas, float scale);

/// Our colours and spacings, for the current context.
void apply_style(float scale);

/// Pushes a font for the life of this object.
class UseFont {
 public:
  explicit UseFont(ImFont* font) { ImGui::PushFont(font); }
  ~UseFont() { ImGui::PopFont(); }
  UseFont(const UseFont&) = delete;
  UseFont& operator=(const UseFont&) = delete;
  UseFont(UseFont&&) = delete;
  UseFont& operator=(UseFont&&) = delete;
};

}  // namespace stallwright::ui
