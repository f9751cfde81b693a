#pragma once
#include "render/desk/pen.hpp"

namespace stallwright::desk {

/// A page that covers a rectangle of the screen, for the life of this object: an ImGui window without any furniture.
/// Controls are put where the page wants them with `put`.
class Page {
 public:
  Page(const char* id, const ui::Fonts& fonts, ImVec2 from, ImVec2 to);
  ~Page();
  Page(const Page&) = delete;
  Page& operator=(const Page&) = delete;

  Pen& pen() { return pen_; }
  static void put(ImVec2 at) { ImGui::SetCursorScreenPos(at); }

 private:
  Pen pen_;
};

/// Whether keys are for the page: no text is being typed.
bool keys_free();

}  // namespace stallwright::desk
