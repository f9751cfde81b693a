#include "render/desk/logbook.hpp"

#include <SDL_scancode.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "render/desk/axis.hpp"
#include "render/desk/logbook_trend.hpp"
#include "render/desk/page.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;
using view::Logbook;
using view::LogbookLine;

/// Left edges of the list's columns, px at scale 1; `hold` and `warning` are right edges.
struct Columns {
  float when = 0, who = 142, what = 262, air = 452, hold = 572, warning = 648, outcome = 664;
};

void heed_keys(const Logbook& logbook, LogbookState& state, std::size_t rows) {
  if (!keys_free() || logbook.lines.empty()) return;
  const auto pressed = [](int key) { return ImGui::IsKeyPressed(key, true); };
  const auto last = static_cast<std::ptrdiff_t>(logbook.lines.size()) - 1;
  auto at = static_cast<std::ptrdiff_t>(state.chosen);
  const auto page = static_cast<std::ptrdiff_t>(std::max<std::size_t>(rows, 2) - 1);
  if (pressed(SDL_SCANCODE_DOWN)) ++at;
  if (pressed(SDL_SCANCODE_UP)) --at;
  if (pressed(SDL_SCANCODE_PAGEDOWN)) at += page;
  if (pressed(SDL_SCANCODE_PAGEUP)) at -= page;
  if (pressed(SDL_SCANCODE_HOME)) at = 0;
  if (pressed(SDL_SCANCODE_END)) at = last;
  const auto now = static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(at, 0, last));
  if (now == state.chosen) return;
  state.chosen = now;
  state.first = std::clamp(state.first, now + 1 > rows ? now + 1 - rows : 0, now);
}

void draw_number(Pen& pen, ImVec2 right_top, double value, bool with_sign, const char* none) {
  char text[32];
  std::snprintf(text, sizeof text, "%s", none);
  if (std::isfinite(value)) axis_text(text, sizeof text, value, 1, with_sign);
  pen.text(pen.fonts().small, right_top, kTheme.ivory, text, Align::right);
}

void draw_line(const LogbookLine& line, Pen& pen, ImVec2 at, float right) {
  const Columns c;
  ImFont* font = pen.fonts().small;
  const float y = at.y + pen.px(5);
  const auto cell = [&](float from, float to, const char* text, const ui::Colour& ink) {
    pen.fitted(font, {at.x + pen.px(from), y}, ink, text, pen.px(to - from - 10));
  };
  cell(c.when, c.who, line.when.c_str(), kTheme.ivory);
  if (!line.problem.empty()) {
    pen.bar({at.x + pen.px(c.who + 5), y + pen.px(9)}, 5, kTheme.outside);
    char text[320];
    std::snprintf(text, sizeof text, "%s: %s", line.name.c_str(), line.problem.c_str());
    pen.fitted(font, {at.x + pen.px(c.who + 18), y}, kTheme.soft, text, right - at.x - pen.px(c.who + 24));
    return;
  }
  char text[160];
  std::snprintf(text, sizeof text, "%s, %s", line.aircraft.c_str(), line.card.c_str());
  cell(c.who, c.what, line.who.empty() ? "\u2013" : line.who.c_str(),
       line.who.empty() ? kTheme.soft : kTheme.ivory);
  cell(c.what, c.air, text, kTheme.ivory);
  cell(c.air, c.hold - 44, line.air.c_str(), kTheme.soft);
  draw_number(pen, {at.x + pen.px(c.hold), y}, line.hold_rms_kt, false,
              line.hold_looked_up ? "\u2013" : "\u2026");
  draw_number(pen, {at.x + pen.px(c.warning), y}, line.warning_error_kt, true, "\u2013");
  pen.fitted(font, {at.x + pen.px(c.outcome), y}, kTheme.ivory, line.outcome.c_str(),
             right - at.x - pen.px(c.outcome));
}

void draw_heads(Pen& pen, ImVec2 at, float right) {
  const Columns c;
  const auto put = [&](float x, const char* first, const char* second, Align align) {
    pen.text(pen.fonts().small, {at.x + pen.px(x), at.y}, kTheme.soft, first, align);
    pen.text(pen.fonts().small, {at.x + pen.px(x), at.y + pen.px(16)}, kTheme.soft, second, align);
  };
  put(c.when, "", "when", Align::left);
  put(c.who, "", "who", Align::left);
  put(c.what, "", "aeroplane, card", Align::left);
  put(c.air, "", "air", Align::left);
  put(c.hold, "hold,", "kt rms", Align::right);
  put(c.warning, "warning,", "kt", Align::right);
  put(c.outcome, "", "outcome", Align::left);
  pen.line({at.x, at.y + pen.px(37)}, {right, at.y + pen.px(37)}, kTheme.edge);
}

/// True where a line was clicked twice.
bool draw_list(const Logbook& logbook, LogbookState& state, ui::Registry& registry, Pen& pen, ImVec2 from,
               ImVec2 to) {
  draw_heads(pen, from, to.x);
  const float row = pen.px(27), top = from.y + pen.px(42);
  const auto rows = static_cast<std::size_t>(std::max(1.0f, (to.y - top) / row));
  heed_keys(logbook, state, rows);
  const std::size_t most = logbook.lines.size() > rows ? logbook.lines.size() - rows : 0;
  Page::put({from.x, top});
  ImGui::InvisibleButton("##lines", {to.x - from.x, to.y - top});
  const ImGuiIO& io = ImGui::GetIO();
  const bool over = ImGui::IsItemHovered();
  if (over && io.MouseWheel > 0.0f) state.first -= std::min<std::size_t>(state.first, 3);
  if (over && io.MouseWheel < 0.0f) state.first += 3;
  state.first = std::min(state.first, most);
  if (ImGui::IsItemClicked()) {
    const std::size_t at = state.first + static_cast<std::size_t>((io.MousePos.y - top) / row);
    if (at < logbook.lines.size()) state.chosen = at;
  }
  for (std::size_t k = 0; k < rows && state.first + k < logbook.lines.size(); ++k) {
    const std::size_t at = state.first + k;
    const ImVec2 place{from.x, top + row * static_cast<float>(k)};
    const ImVec2 end{to.x, place.y + row};
    if (at == state.chosen) {
      pen.box({place.x - pen.px(10), place.y}, end, kTheme.field_over);
      pen.box({place.x - pen.px(10), place.y}, {place.x - pen.px(6), end.y}, kTheme.ivory);
    }
    draw_line(logbook.lines[at], pen, place, to.x - pen.px(6));
    registry.add({logbook.lines[at].name, place, end, at == state.chosen ? "on" : "off", true});
    if (registry.take_press(logbook.lines[at].name)) state.chosen = at;
  }
  return over && ImGui::IsMouseDoubleClicked(0);
}

LogbookIntent draw_foot(const Logbook& logbook, const LogbookState& state, ui::Registry& registry, Pen& pen,
                        ImVec2 from, ImVec2 to) {
  const bool open = state.chosen < logbook.lines.size() && logbook.lines[state.chosen].problem.empty();
  struct Way {
    const char* label;
    LogbookIntent intent;
    bool enabled;
  };
  const Way ways[] = {{"Debrief", LogbookIntent::debrief, open},
                      {"Replay", LogbookIntent::replay, open},
                      {"Back to the start", LogbookIntent::start, true}};
  pen.line(from, {to.x, from.y}, kTheme.edge);
  LogbookIntent intent = LogbookIntent::none;
  float x = to.x;
  const float height = pen.px(34);
  for (std::size_t k = std::size(ways); k-- > 0;) {
    const float width = Pen::width(pen.fonts().body, ways[k].label) + pen.px(30);
    x -= width;
    Page::put({x, to.y - height});
    if (ui::button(registry, ways[k].label, {width, height}, ways[k].enabled)) intent = ways[k].intent;
    x -= pen.px(8);
  }
  if (keys_free()) {
    if (open && ImGui::IsKeyPressed(SDL_SCANCODE_RETURN, false)) intent = LogbookIntent::debrief;
    if (open && ImGui::IsKeyPressed(SDL_SCANCODE_R, false)) intent = LogbookIntent::replay;
    if (ImGui::IsKeyPressed(SDL_SCANCODE_ESCAPE, false)) intent = LogbookIntent::start;
  }
  pen.wrapped(pen.fonts().small, {from.x, from.y + pen.px(9)}, kTheme.soft,
              "Rehearsals in invented aeroplanes: no flying time, and no approved training device. 'When' is "
              "the date given "
              "with the names, else the time the folder's sortie.json was written.",
              x - from.x - pen.px(20));
  return intent;
}

}  // namespace

LogbookIntent draw_logbook(const Logbook& logbook, LogbookState& state, ui::Registry& registry,
                           const ui::Fonts& fonts, ImVec2 from, ImVec2 to) {
  Page page("logbook", fonts, from, to);
  Pen& pen = page.pen();
  const float left = from.x + pen.px(36), right = to.x - pen.px(36);
  pen.text(pen.fonts().large, {left, from.y + pen.px(18)}, kTheme.ivory, "Logbook");
  char text[64];
  std::snprintf(text, sizeof text, logbook.lines.size() == 1 ? "%zu flight" : "%zu flights",
                logbook.lines.size());
  pen.text(pen.fonts().body, {right, from.y + pen.px(24)}, kTheme.soft, text, Align::right);
  pen.line({left, from.y + pen.px(54)}, {right, from.y + pen.px(54)}, kTheme.edge);
  const float top = from.y + pen.px(66), foot = to.y - pen.px(58);
  bool opened = false;
  if (logbook.lines.empty()) {
    pen.wrapped(pen.fonts().body, {left, top + pen.px(10)}, kTheme.ivory,
                logbook.problem.empty() ? "No flight yet. Each one that you fly is kept and stands here."
                                        : logbook.problem.c_str(),
                right - left);
  } else {
    state.chosen = std::min(state.chosen, logbook.lines.size() - 1);
    const float split = right - std::max(pen.px(350), 0.3f * (right - left));
    opened = draw_list(logbook, state, registry, pen, {left, top}, {split - pen.px(28), foot - pen.px(8)});
    draw_trends(logbook, state.chosen, pen, {split, top + pen.px(4)}, {right, foot - pen.px(8)});
  }
  const LogbookIntent intent =
      draw_foot(logbook, state, registry, pen, {left, foot}, {right, to.y - pen.px(14)});
  const bool can_open = state.chosen < logbook.lines.size() && logbook.lines[state.chosen].problem.empty();
  return intent == LogbookIntent::none && opened && can_open ? LogbookIntent::debrief : intent;
}

}  // namespace stallwright::desk
