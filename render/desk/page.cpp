#include "render/desk/page.hpp"

namespace stallwright::desk {
namespace {

ImDrawList& begin(const char* id, const ui::Fonts& fonts, ImVec2 from, ImVec2 to) {
  ImGui::SetNextWindowPos(from);
  ImGui::SetNextWindowSize({to.x - from.x, to.y - from.y});
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0.0f, 0.0f});
  ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, 0.0f);
  ImGui::PushFont(fonts.body);
  ImGui::Begin(id, nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                   ImGuiWindowFlags_NoBringToFrontOnFocus);
  return *ImGui::GetWindowDrawList();
}

}  // namespace

Page::Page(const char* id, const ui::Fonts& fonts, ImVec2 from, ImVec2 to)
    : pen_(begin(id, fonts, from, to), fonts) {}

Page::~Page() {
  ImGui::End();
  ImGui::PopFont();
  ImGui::PopStyleVar(2);
}

bool keys_free() { return !ImGui::GetIO().WantTextInput && !ImGui::IsAnyItemActive(); }

}  // namespace stallwright::desk
