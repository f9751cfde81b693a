#include "render/app/overlay.hpp"

#include <SDL_scancode.h>

#include <algorithm>
#include <cstdio>

#include "render/desk/page.hpp"

namespace stallwright::app {
namespace {

using desk::Page;
using desk::Pen;
using ui::kTheme;

constexpr const char* kCautions =
    "Stalls kill. This is a rehearsal aid, not an approved training device: the flight manual, local rules "
    "and a qualified "
    "instructor govern.";

float title(Pen& pen, ImVec2 from, const char* text) {
  pen.text(pen.fonts().large, from, kTheme.ivory, text);
  return from.y + pen.px(34);
}

/// A list in two columns of wrapped sentences; returns where it ends.
float two_columns(Pen& pen, ImVec2 from, float width, const std::vector<std::string>& sentences) {
  const float half = 0.5f * (width - pen.px(30));
  float y[2] = {from.y, from.y};
  for (std::size_t k = 0; k < sentences.size(); ++k) {
    const int side = k * 2 < sentences.size() ? 0 : 1;
    const float x = from.x + static_cast<float>(side) * (half + pen.px(30));
    pen.text(pen.fonts().body, {x, y[side]}, kTheme.soft, "\u2022");
    y[side] += pen.wrapped(pen.fonts().body, {x + pen.px(14), y[side]}, kTheme.ivory, sentences[k].c_str(),
                           half - pen.px(14)) +
               pen.px(4);
  }
  return std::max(y[0], y[1]);
}

bool pressed(int scancode) { return ImGui::IsKeyPressed(scancode, false); }

}  // namespace

Answer draw_stall_checks(const TestCard& card, ui::Registry& registry, const ui::Fonts& fonts, ImVec2 from,
                         ImVec2 to) {
  Page page("stall checks", fonts, from, to);
  Pen& pen = page.pen();
  const float pad = pen.px(20), x = from.x + pad, width = to.x - from.x - 2.0f * pad;
  float y = title(pen, {x, from.y + pen.px(10)}, "Before the first stall");
  char floor_text[120];
  std::snprintf(floor_text, sizeof floor_text,
                "Height: recovered above the floor of %.0f ft above ground, or knock it off.", card.floor_ft);
  // Common practice; the flight manual's own list takes its place in an aeroplane.
  y = two_columns(
      pen, {x, y}, width,
      {floor_text, "Aeroplane: flaps as the card asks, trimmed; stalls permitted at this mass and balance.",
       "Inside: straps tight, nothing loose.",
       "Engine: mixture, carburettor heat, temperatures as the manual says.",
       "Place: clear of towns, cloud and other people's air.", "Look around: all round and below, each time.",
       "The break: stick forward first, then full power, wings level with the ball in the middle; out of the "
       "dive gently.",
       "Anything unexpected: knock it off."});
  y += pen.wrapped(pen.fonts().small, {x, y + pen.px(2)}, kTheme.soft, kCautions, width);
  Page::put({x, to.y - pen.px(44)});
  const bool gone_through = ui::button(registry, "Gone through (Enter)", {pen.px(220), pen.px(34)});
  return gone_through || pressed(SDL_SCANCODE_RETURN) ? Answer::yes : Answer::none;
}

Answer draw_key_page(const std::vector<input::KeyHelp>& keys, ui::Registry& registry, const ui::Fonts& fonts,
                     ImVec2 from, ImVec2 to) {
  Page page("keys", fonts, from, to);
  Pen& pen = page.pen();
  const float pad = pen.px(16), line = pen.px(18.5f), column = (to.x - from.x - 2.0f * pad) / 4.0f;
  const float top = from.y + pen.px(8), bottom = to.y - pen.px(42);
  ImVec2 at{from.x + pad, top};
  for (std::size_t k = 0; k < keys.size(); ++k) {
    if (k == 0 || keys[k].group != keys[k - 1].group) {
      // A group stays together: it begins a column where it does not fit into what is left of one.
      const auto of_group = [&](const input::KeyHelp& help) { return help.group == keys[k].group; };
      const auto rows = 1 + std::count_if(keys.begin(), keys.end(), of_group);
      if (at.y > top && at.y + static_cast<float>(rows) * line > bottom) at = {at.x + column, top};
      pen.text(fonts.bold, at, kTheme.ivory, keys[k].group.c_str());
      at.y += line;
    }
    pen.text(fonts.small, at, kTheme.soft, keys[k].name.c_str());
    pen.text(fonts.small, {at.x + column - pen.px(16), at.y}, kTheme.ivory, keys[k].keys.c_str(),
             desk::Align::right);
    at.y += line;
  }
  Page::put({from.x + pad, to.y - pen.px(38)});
  const bool close = ui::button(registry, "Close the keys (Escape)", {pen.px(220), pen.px(30)});
  return close || pressed(SDL_SCANCODE_ESCAPE) ? Answer::yes : Answer::none;
}

Answer draw_leave_page(ui::Registry& registry, const ui::Fonts& fonts, ImVec2 from, ImVec2 to) {
  Page page("leave", fonts, from, to);
  Pen& pen = page.pen();
  const float pad = pen.px(20), x = from.x + pad;
  float y = title(pen, {x, from.y + pen.px(14)}, "End the flight here?");
  pen.wrapped(fonts.body, {x, y}, kTheme.ivory,
              "What was flown is kept in its folder, and debriefed as far as it went.",
              to.x - from.x - 2.0f * pad);
  y += pen.px(34);
  Page::put({x, y});
  if (ui::button(registry, "End it (Enter)", {pen.px(180), pen.px(34)}) || pressed(SDL_SCANCODE_RETURN))
    return Answer::yes;
  Page::put({x + pen.px(196), y});
  if (ui::button(registry, "Fly on (Escape)", {pen.px(180), pen.px(34)}) || pressed(SDL_SCANCODE_ESCAPE))
    return Answer::no;
  return Answer::none;
}

}  // namespace stallwright::app
