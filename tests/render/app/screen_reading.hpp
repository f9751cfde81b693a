#pragma once
#include <imgui.h>
#include <imgui_internal.h>

#include <cmath>
#include <string>
#include <vector>

#include "render/app/cockpit.hpp"
#include "render/app/script.hpp"
#include "tests/render/ui_reader.hpp"

/// What somebody in front of the running cockpit can read.
namespace stallwright::app_test {

/// Texts of the last frame, without those that a page lies over. One that a page covers in part is kept: it is cut.
inline std::vector<ui::ShownText> texts_in_sight() {
  const ImDrawData* drawn = ImGui::GetDrawData();
  std::vector<ui::ShownText> texts;
  if (drawn == nullptr) return texts;
  for (int k = 0; k < drawn->CmdListsCount; ++k) {
    ImDrawData one = *drawn;
    one.CmdLists = drawn->CmdLists + k;
    one.CmdListsCount = 1;
    const char* name = drawn->CmdLists[k]->_OwnerName;
    const ImGuiWindow* window = name != nullptr ? ImGui::FindWindowByName(name) : nullptr;
    const bool covers = window != nullptr && (window->Flags & ImGuiWindowFlags_NoBackground) == 0 &&
                        (window->Flags & ImGuiWindowFlags_ChildWindow) == 0;
    if (covers)
      std::erase_if(texts, [&](const ui::ShownText& text) {
        return window->Rect().Contains(ImRect(text.ink.from, text.ink.to));
      });
    const bool scrolls = window != nullptr && window->ScrollMax.y > 0.0f;
    for (ui::ShownText& text : ui::read_texts(one)) {
      // A list that is longer than its place is cut where it scrolls.
      const bool beyond = text.ink.from.y < text.clip.from.y || text.ink.to.y > text.clip.to.y;
      if (!scrolls || !beyond) texts.push_back(std::move(text));
    }
  }
  return texts;
}

inline bool shows(const std::string& words) {
  const ImDrawData* drawn = ImGui::GetDrawData();
  return drawn != nullptr && ui::shows(*drawn, words);
}

/// What is wrong with the frame to read, a line each: texts over one another, too small, cut or outside.
inline std::vector<std::string> hard_to_read(float scale) {
  const std::vector<ui::ShownText> texts = texts_in_sight();
  std::vector<std::string> found = ui_test::overlaps(texts, 1.0f);
  for (const std::string& small : ui_test::smaller_than(texts, std::round(14.0f * scale)))
    found.push_back("small: " + small);
  for (const std::string& cut : ui_test::out_of(texts, {{0.0f, 0.0f}, ImGui::GetIO().DisplaySize}, 1.0f))
    found.push_back("cut: " + cut);
  return found;
}

/// A key pressed and let go, as by a keyboard.
inline void tap(SDL_Keycode key, std::uint16_t modifiers = 0) {
  for (const bool down : {true, false}) app::push_key(key, modifiers, down);
}

inline void resize(int width, int height) { SDL_SetWindowSize(SDL_GL_GetCurrentWindow(), width, height); }

}  // namespace stallwright::app_test
