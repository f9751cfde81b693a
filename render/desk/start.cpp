#include "render/desk/start.hpp"

#include <SDL_scancode.h>

#include <algorithm>
#include <cstdio>

#include "render/desk/options.hpp"
#include "render/desk/page.hpp"
#include "render/desk/start_parts.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;

void renew_check(const view::StartView& view, StartState& state) {
  if (state.of == &view && state.checked == state.choice) return;
  state.check = view::start_check(view, state.choice);
  state.checked = state.choice;
  state.of = &view;
}

void draw_head(const StartState& state, Pen& pen, ImVec2 at, float right) {
  const float width = pen.text(pen.fonts().huge, at, kTheme.ivory, "Stallwright");
  pen.text(pen.fonts().body, {at.x + width + pen.px(18), at.y + pen.px(16)}, kTheme.soft,
           "Rehearse the flight that teaches your angle-of-attack system where the wing stalls.");
  pen.line({at.x, at.y + pen.px(48)}, {right, at.y + pen.px(48)}, kTheme.edge);
  if (!state.notice.empty()) {
    pen.bar({at.x + pen.px(6), at.y + pen.px(63)}, 6, kTheme.outside);
    pen.fitted(pen.fonts().small, {at.x + pen.px(20), at.y + pen.px(54)}, kTheme.ivory, state.notice.c_str(),
               right - at.x - pen.px(20));
  }
}

/// Why it cannot be flown, standing on the button; the first is told in any case, others while there is room.
void draw_problems(const StartState& state, Pen& pen, ImVec2 from, ImVec2 to) {
  const std::vector<std::string>& problems = state.check.problems;
  const float width = to.x - from.x - pen.px(18), gap = pen.px(6), more_height = pen.px(20);
  const auto height_of = [&](std::size_t k) {
    return Pen::wrapped_height(pen.fonts().small, problems[k].c_str(), width) + gap;
  };
  std::size_t told = 0;
  float height = 0.0f;
  while (told < problems.size() && (told == 0 || height + height_of(told) + more_height < to.y - from.y))
    height += height_of(told++);
  float y = to.y - height - (told < problems.size() ? more_height : 0.0f);
  for (std::size_t k = 0; k < told; ++k) {
    pen.bar({from.x + pen.px(6), y + pen.px(9)}, 5, kTheme.outside);
    pen.wrapped(pen.fonts().small, {from.x + pen.px(18), y}, kTheme.ivory, problems[k].c_str(), width);
    y += height_of(k);
  }
  if (told == problems.size()) return;
  char more[48];
  std::snprintf(more, sizeof more, "and %zu more", problems.size() - told);
  pen.text(pen.fonts().small, {from.x + pen.px(18), y}, kTheme.soft, more);
}

bool draw_fly(const StartState& state, ui::Registry& registry, Pen& pen, ImVec2 from, ImVec2 to) {
  const bool can = state.check.can_fly();
  ImGui::PushFont(pen.fonts().large);
  ImGui::PushStyleColor(ImGuiCol_Button, can ? kTheme.ivory : kTheme.field);
  ImGui::PushStyleColor(ImGuiCol_ButtonHovered, ImVec4(1.0f, 0.98f, 0.93f, 1.0f));
  ImGui::PushStyleColor(ImGuiCol_ButtonActive, kTheme.soft);
  ImGui::PushStyleColor(ImGuiCol_Text, can ? kTheme.panel : kTheme.ivory);
  Page::put(from);
  const char* label = state.choice.flown_by == "me" ? "Fly##fly" : "Watch it flown##fly";
  bool fly = ui::button(registry, label, {to.x - from.x, to.y - from.y}, can);
  ImGui::PopStyleColor(4);
  ImGui::PopFont();
  if (can && keys_free() &&
      (ImGui::IsKeyPressed(SDL_SCANCODE_RETURN, false) || ImGui::IsKeyPressed(SDL_SCANCODE_KP_ENTER, false)))
    fly = true;
  return fly;
}

StartIntent draw_foot(ui::Registry& registry, Pen& pen, ImVec2 from, ImVec2 to) {
  struct Way {
    const char* label;
    StartIntent intent;
  };
  constexpr Way kWays[] = {
      {"Logbook", StartIntent::logbook}, {"Set up hands", StartIntent::hands}, {"Quit", StartIntent::quit}};
  pen.line({from.x, from.y}, {to.x, from.y}, kTheme.edge);
  float x = to.x;
  const float height = pen.px(34);
  StartIntent intent = StartIntent::none;
  for (std::size_t k = std::size(kWays); k-- > 0;) {
    const float width = Pen::width(pen.fonts().body, kWays[k].label) + pen.px(30);
    x -= width;
    Page::put({x, to.y - height});
    if (ui::button(registry, kWays[k].label, {width, height})) intent = kWays[k].intent;
    x -= pen.px(8);
  }
  pen.wrapped(
      pen.fonts().small, {from.x, from.y + pen.px(9)}, kTheme.soft,
      "Stalls kill. A rehearsal aid, not an approved training device: the flight manual, local rules and a "
      "qualified instructor govern. The aeroplanes are invented; none of their numbers may be set in yours.",
      x - from.x - pen.px(20));
  return intent;
}

}  // namespace

StartIntent draw_start(const view::StartView& view, StartState& state, ui::Registry& registry,
                       const ui::Fonts& fonts, ImVec2 from, ImVec2 to) {
  renew_check(view, state);
  Page page("start", fonts, from, to);
  Pen& pen = page.pen();
  const float margin = pen.px(36), gap = pen.px(44);
  // The page keeps its shape on wide screens: it does not run into lines too long to read.
  const float width = std::min(to.x - from.x - 2.0f * margin, pen.px(1440));
  const float left = 0.5f * (from.x + to.x - width), right = left + width;
  const float column = (width - 2.0f * gap) / 3.0f;
  draw_head(state, pen, {left, from.y + pen.px(18)}, right);
  const float top = from.y + pen.px(94), foot = to.y - pen.px(58);
  const float second = left + column + gap, third = second + column + gap;
  draw_aeroplane(view, state, registry, pen, {left, top}, {left + column, foot - pen.px(18)});
  draw_card_and_air(view, state, registry, pen, {second, top}, {second + column, foot - pen.px(18)});
  const ImVec2 fly{third, foot - pen.px(82)};
  draw_who(state, registry, pen, {third, top}, {right, fly.y});
  draw_problems(state, pen, {third, fly.y - pen.px(138)}, {right, fly.y - pen.px(8)});
  const bool flies = draw_fly(state, registry, pen, fly, {right, foot - pen.px(18)});
  const StartIntent intent = draw_foot(registry, pen, {left, foot}, {right, to.y - pen.px(14)});
  return intent == StartIntent::none && flies ? StartIntent::fly : intent;
}

}  // namespace stallwright::desk
