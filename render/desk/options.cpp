#include "render/desk/options.hpp"

namespace stallwright::desk {

using ui::kTheme;

bool option(ui::Registry& registry, Pen& pen, const char* label, ImVec2 at, ImVec2 size, bool chosen) {
  ImGui::SetCursorScreenPos(at);
  ImGui::PushID(label);
  const bool clicked = ImGui::InvisibleButton("##option", size);
  const bool over = ImGui::IsItemHovered();
  ImGui::PopID();
  const ImVec2 to{at.x + size.x, at.y + size.y};
  pen.box(at, to, chosen || over ? kTheme.field_over : kTheme.field);
  pen.frame(at, to, chosen ? kTheme.ivory : kTheme.edge);
  const float middle = 0.5f * (at.y + to.y);
  if (chosen) pen.list().AddCircleFilled({at.x + pen.px(12), middle}, pen.px(3), ui::colour(kTheme.ivory));
  pen.text(pen.fonts().body, {at.x + pen.px(22), middle - 0.5f * pen.fonts().body->FontSize},
           chosen ? kTheme.ivory : kTheme.soft, label);
  registry.add({label, at, to, chosen ? "on" : "off", true});
  return registry.take_press(label) || clicked;
}

float heading(Pen& pen, float x, float y, float right, const char* text) {
  pen.text(pen.fonts().bold, {x, y}, kTheme.ivory, text);
  pen.line({x, y + pen.px(25)}, {right, y + pen.px(25)}, kTheme.edge);
  return y + pen.px(34);
}

}  // namespace stallwright::desk
