#include "render/ui/widgets.hpp"

#include <imgui_stdlib.h>

#include <cstdio>

#include "render/ui/theme.hpp"

namespace stallwright::ui {

void Registry::begin_frame() { shown_.clear(); }

const Shown* Registry::find(const std::string& label) const {
  for (const Shown& s : shown_)
    if (s.label == label) return &s;
  return nullptr;
}

bool Registry::take_press(const std::string& label) {
  if (label.empty() || wanted_ != label) return false;
  wanted_.clear();
  return true;
}

namespace {

std::string visible(const char* label) {
  const std::string text(label);
  return text.substr(0, text.find("##"));
}

void enter(Registry& registry, const std::string& label, const std::string& value, bool enabled) {
  registry.add({label, ImGui::GetItemRectMin(), ImGui::GetItemRectMax(), value, enabled});
}

}  // namespace

bool button(Registry& registry, const char* label, ImVec2 size, bool enabled) {
  if (!enabled) ImGui::BeginDisabled();
  bool pressed = ImGui::Button(label, size);
  if (!enabled) ImGui::EndDisabled();
  enter(registry, visible(label), "", enabled);
  if (enabled && registry.take_press(visible(label))) pressed = true;
  return pressed && enabled;
}

bool check(Registry& registry, const char* label, bool& value) {
  bool changed = ImGui::Checkbox(label, &value);
  if (registry.take_press(visible(label))) {
    value = !value;
    changed = true;
  }
  enter(registry, visible(label), value ? "on" : "off", true);
  return changed;
}

bool slider(Registry& registry, const char* label, float& value, float low, float high, const char* format) {
  const bool changed = ImGui::SliderFloat(label, &value, low, high, format, ImGuiSliderFlags_AlwaysClamp);
  char text[32];
  std::snprintf(text, sizeof text, "%g", static_cast<double>(value));
  enter(registry, visible(label), text, true);
  return changed;
}

bool text_field(Registry& registry, const char* label, std::string& value) {
  const bool changed = ImGui::InputText(label, &value);
  enter(registry, visible(label), value, true);
  return changed;
}

bool choice(Registry& registry, const char* name, const std::vector<std::string>& entries,
            std::size_t& chosen) {
  const std::size_t before = chosen;
  ImGui::PushID(name);
  for (std::size_t k = 0; k < entries.size(); ++k) {
    if (k > 0) ImGui::SameLine();
    const bool is_chosen = k == chosen;
    // The chosen one is marked by a filled ground, a light frame and a dot, not by colour alone.
    if (is_chosen) {
      ImGui::PushStyleColor(ImGuiCol_Button, kTheme.field_over);
      ImGui::PushStyleColor(ImGuiCol_Border, kTheme.ivory);
    }
    const std::string label = (is_chosen ? "\u2022 " : "  ") + entries[k] + "##" + entries[k];
    if (ImGui::Button(label.c_str())) chosen = k;
    if (is_chosen) ImGui::PopStyleColor(2);
    enter(registry, entries[k], is_chosen ? "on" : "off", true);
    if (registry.take_press(entries[k])) chosen = k;
  }
  ImGui::PopID();
  return chosen != before;
}

}  // namespace stallwright::ui
