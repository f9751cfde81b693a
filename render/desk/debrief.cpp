#include "render/desk/debrief.hpp"

#include <SDL_scancode.h>

#include <algorithm>
#include <cstdio>

#include "render/desk/debrief_pages.hpp"
#include "render/desk/page.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;

struct Tab {
  const char* name;
  void (*draw)(const view::DebriefView&, Pen&, ImVec2, ImVec2);  ///< null: the flight over time
};
constexpr Tab kTaught[] = {{"Verdict", draw_verdict_page},
                           {"Set points and truth", draw_set_points_page},
                           {"What the errors are made of", draw_split_page},
                           {"The flight over time", nullptr},
                           {"What to work on", draw_work_page}};
constexpr Tab kVerified[] = {{"What was heard", draw_heard_page},
                             {"The flight over time", nullptr},
                             {"What to work on", draw_work_page}};

void draw_head(const view::DebriefView& view, Pen& pen, ImVec2 at, float right) {
  pen.text(pen.fonts().bold, at, kTheme.ivory, "Debrief");
  const float x = at.x + Pen::width(pen.fonts().bold, "Debrief") + pen.px(14);
  const float made = Pen::width(pen.fonts().small, view.made_by.c_str());
  pen.fitted(pen.fonts().body, {x, at.y}, kTheme.soft, view.title.c_str(), right - made - pen.px(24) - x);
  pen.text(pen.fonts().small, {right, at.y + pen.px(3)}, kTheme.soft, view.made_by.c_str(), Align::right);
}

/// A row of names; the open one stands in ivory over a heavy rule, the others softer.
void draw_tabs(const Tab* tabs, std::size_t count, DebriefState& state, ui::Registry& registry, Pen& pen,
               ImVec2 at, float right) {
  ImGui::PushStyleColor(ImGuiCol_Button, ImVec4(0, 0, 0, 0));
  ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, 0.0f);
  const float height = pen.px(34);
  float x = at.x;
  for (std::size_t k = 0; k < count; ++k) {
    char label[64];
    std::snprintf(label, sizeof label, "%zu  %s", k + 1, tabs[k].name);
    const float width = Pen::width(pen.fonts().body, label) + pen.px(28);
    ImGui::PushStyleColor(ImGuiCol_Text, k == state.page ? kTheme.ivory : kTheme.soft);
    Page::put({x, at.y});
    const bool key = keys_free() && ImGui::IsKeyPressed(SDL_SCANCODE_1 + static_cast<int>(k), false);
    if (ui::button(registry, label, {width, height}) || key) state.page = k;
    ImGui::PopStyleColor();
    if (k == state.page) pen.box({x, at.y + height - pen.px(3)}, {x + width, at.y + height}, kTheme.ivory);
    x += width;
  }
  ImGui::PopStyleVar();
  ImGui::PopStyleColor();
  pen.line({at.x, at.y + height}, {right, at.y + height}, kTheme.edge);
}

DebriefIntent draw_foot(const view::DebriefView& view, ui::Registry& registry, Pen& pen, ImVec2 from,
                        ImVec2 to) {
  struct Way {
    const char* label;
    DebriefIntent intent;
  };
  constexpr Way kWays[] = {{"Fly it again", DebriefIntent::again},
                           {"Replay", DebriefIntent::replay},
                           {"Logbook", DebriefIntent::logbook},
                           {"Back to the start", DebriefIntent::start}};
  pen.line({from.x, from.y}, {to.x, from.y}, kTheme.edge);
  float x = to.x;
  const float height = pen.px(34), y = to.y - height;
  DebriefIntent intent = DebriefIntent::none;
  for (std::size_t k = std::size(kWays); k-- > 0;) {
    const float width = Pen::width(pen.fonts().body, kWays[k].label) + pen.px(30);
    x -= width;
    Page::put({x, y});
    if (ui::button(registry, kWays[k].label, {width, height})) intent = kWays[k].intent;
    x -= pen.px(8);
  }
  if (keys_free() && ImGui::IsKeyPressed(SDL_SCANCODE_ESCAPE, false)) intent = DebriefIntent::start;
  if (!view.cautions.empty())
    pen.wrapped(
        pen.fonts().small, {from.x, from.y + pen.px(9)}, kTheme.soft,
        "Stalls kill. A rehearsal aid, not an approved training device: the flight manual, local rules "
        "and a qualified instructor govern. The aeroplane is invented; its numbers belong in no other.",
        x - from.x - pen.px(20));
  return intent;
}

}  // namespace

DebriefIntent draw_debrief(const view::DebriefView& view, DebriefState& state, ui::Registry& registry,
                           const ui::Fonts& fonts, ImVec2 from, ImVec2 to) {
  Page page("debrief", fonts, from, to);
  Pen& pen = page.pen();
  const float margin = pen.px(28), left = from.x + margin, right = to.x - margin;
  draw_head(view, pen, {left, from.y + pen.px(14)}, right);
  const Tab* tabs = view.verifying ? kVerified : kTaught;
  const std::size_t count = view.verifying ? std::size(kVerified) : std::size(kTaught);
  state.page = std::min(state.page, count - 1);
  draw_tabs(tabs, count, state, registry, pen, {left, from.y + pen.px(42)}, right);
  const ImVec2 body{left, from.y + pen.px(92)}, body_end{right, to.y - pen.px(70)};
  if (tabs[state.page].draw != nullptr)
    tabs[state.page].draw(view, pen, body, body_end);
  else
    draw_time_plots(view.flight, view.made_by.c_str(), state.plots, registry, pen, body, body_end);
  return draw_foot(view, registry, pen, {left, to.y - pen.px(56)}, {right, to.y - pen.px(12)});
}

}  // namespace stallwright::desk
