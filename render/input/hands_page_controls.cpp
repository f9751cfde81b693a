#include <cstdio>

#include "render/input/hands_page_parts.hpp"

namespace stallwright::input {
namespace {

void enter(PageFrame& page, const std::string& name, const char* value, bool enabled = true) {
  page.registry.add({name, ImGui::GetItemRectMin(), ImGui::GetItemRectMax(), value, enabled});
}

}  // namespace

bool named_button(PageFrame& page, const char* shown, const std::string& name, float width, bool enabled) {
  ImGui::PushID(name.c_str());
  ImGui::BeginDisabled(!enabled);
  bool pressed = ImGui::Button(shown, {width, 0.0f});
  ImGui::EndDisabled();
  ImGui::PopID();
  enter(page, name, shown, enabled);
  if (enabled) pressed |= page.registry.take_press(name);
  return pressed && enabled;
}

bool named_check(PageFrame& page, const char* shown, const std::string& name, bool& value) {
  ImGui::PushID(name.c_str());
  bool changed = ImGui::Checkbox(shown, &value);
  ImGui::PopID();
  if (page.registry.take_press(name)) {
    value = !value;
    changed = true;
  }
  enter(page, name, value ? "on" : "off");
  return changed;
}

bool named_slider(PageFrame& page, const char* shown, const std::string& name, double& value, double high) {
  float now = static_cast<float>(value);
  ImGui::PushID(name.c_str());
  ImGui::SetNextItemWidth(page.px(110.0f));
  const bool changed =
      ImGui::SliderFloat(shown, &now, 0.0f, static_cast<float>(high), "%.2f", ImGuiSliderFlags_AlwaysClamp);
  ImGui::PopID();
  if (changed) value = static_cast<double>(now);
  char text[32];
  std::snprintf(text, sizeof text, "%.2f", value);
  enter(page, name, text);
  return changed;
}

}  // namespace stallwright::input
