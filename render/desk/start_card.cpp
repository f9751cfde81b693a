// Second column of the start page: the card, the air and the time of day.
#include <cmath>
#include <cstdio>

#include "render/desk/options.hpp"
#include "render/desk/page.hpp"
#include "render/desk/start_parts.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;

constexpr const char* kOwn = "Own file";

/// Which earlier flight's set points are verified, a step at a time.
float draw_taught(const view::StartView& view, StartState& state, ui::Registry& registry, Pen& pen, ImVec2 at,
                  float right) {
  if (view.taught.empty()) return 0.0f;
  std::size_t chosen = view.taught.size();
  for (std::size_t k = 0; k < view.taught.size(); ++k)
    if (view.taught[k].folder.string() == state.choice.set_points) chosen = k;
  const char* words = chosen < view.taught.size() ? view.taught[chosen].words.c_str() : "none chosen yet";
  pen.text(pen.fonts().small, at, kTheme.soft, "set points of");
  pen.fitted(pen.fonts().body, {at.x, at.y + pen.px(18)}, kTheme.ivory, words, right - at.x);
  const float y = at.y + pen.px(44);
  Page::put({at.x, y});
  std::size_t next = chosen;
  if (ui::button(registry, "Later flight", {0, 0}, chosen > 0 && chosen < view.taught.size()))
    next = chosen - 1;
  ImGui::SameLine();
  if (ui::button(registry, "Earlier flight", {0, 0}, chosen + 1 != view.taught.size()))
    next = chosen < view.taught.size() ? chosen + 1 : 0;
  if (next < view.taught.size() && next != chosen)
    state.choice.set_points = view.taught[next].folder.string();
  return pen.px(80);
}

float draw_own(StartState& state, ui::Registry& registry, Pen& pen, ImVec2 at, float right) {
  pen.text(pen.fonts().small, at, kTheme.soft, "path of the card file");
  Page::put({at.x, at.y + pen.px(20)});
  ImGui::SetNextItemWidth(right - at.x);
  ui::text_field(registry, "##Card file", state.choice.own_card);
  return pen.px(58);
}

float draw_card(const view::StartView& view, StartState& state, ui::Registry& registry, Pen& pen, ImVec2 at,
                float right) {
  float y = heading(pen, at.x, at.y, right, "Test card");
  const std::size_t own = view.cards.size();
  std::size_t chosen = own + 1;
  if (state.choice.card == "own") chosen = own;
  for (std::size_t k = 0; k < own; ++k)
    if (view.cards[k].key == state.choice.card) chosen = k;
  y += options(
      registry, pen, "card", {at.x, y}, right - at.x, own + 1,
      [&](std::size_t k) { return k == own ? kOwn : view.cards[k].card.name.c_str(); }, chosen);
  if (chosen <= own) state.choice.card = chosen == own ? "own" : view.cards[chosen].key;
  y += pen.px(10);
  const TestCard& card = state.check.flown_card;
  if (!card.summary.empty())
    y += pen.wrapped(pen.fonts().small, {at.x, y}, kTheme.soft, card.summary.c_str(), right - at.x) +
         pen.px(3);
  if (!card.points.empty()) {
    char text[160];
    std::snprintf(text, sizeof text, "%zu points at %.0f ft, nothing below %.0f ft above the ground",
                  card.points.size(), card.working_height_ft, card.floor_ft);
    pen.fitted(pen.fonts().small, {at.x, y}, kTheme.ivory, text, right - at.x);
    y += pen.px(26);
  }
  if (chosen == own) y += draw_own(state, registry, pen, {at.x, y}, right);
  if (card.verifies) y += draw_taught(view, state, registry, pen, {at.x, y}, right);
  return y;
}

float draw_air(const view::StartView& view, StartState& state, ui::Registry& registry, Pen& pen, ImVec2 at,
               float right) {
  float y = heading(pen, at.x, at.y, right, "Air");
  std::size_t chosen = view.air.size();
  for (std::size_t k = 0; k < view.air.size(); ++k)
    if (view.air[k].key == state.choice.air) chosen = k;
  y += options(
      registry, pen, "air", {at.x, y}, right - at.x, view.air.size(),
      [&](std::size_t k) { return view.air[k].name.c_str(); }, chosen);
  if (chosen < view.air.size()) state.choice.air = view.air[chosen].key;
  return y;
}

void draw_hour(StartState& state, ui::Registry& registry, Pen& pen, ImVec2 at, float right) {
  float y = heading(pen, at.x, at.y, right, "Time of day");
  auto hour = static_cast<float>(state.choice.hour);
  const std::string text = view::hour_text(state.choice.hour);
  Page::put({at.x, y});
  ImGui::SetNextItemWidth(right - at.x);
  // A format without a place for the number shows as it is: hours and minutes.
  if (ui::slider(registry, "##Time of day", hour, static_cast<float>(view::kEarliest_h),
                 static_cast<float>(view::kLatest_h), text.c_str()))
    state.choice.hour = std::round(12.0 * static_cast<double>(hour)) / 12.0;
  registry.add({"Time of day", ImGui::GetItemRectMin(), ImGui::GetItemRectMax(), text, true});
  y += pen.px(36);
  const bool by_hour = state.check.air != nullptr && state.check.air->preset.convection.has_value();
  char words[160];
  std::snprintf(
      words, sizeof words, "%s, local solar time. %s", state.check.hour_words.c_str(),
      by_hour ? "The ground warms by the hour and stirs this air." : "In this air the sun alone moves.");
  pen.wrapped(pen.fonts().small, {at.x, y}, kTheme.soft, words, right - at.x);
}

}  // namespace

void draw_card_and_air(const view::StartView& view, StartState& state, ui::Registry& registry, Pen& pen,
                       ImVec2 at, ImVec2 to) {
  float y = draw_card(view, state, registry, pen, at, to.x);
  y = draw_air(view, state, registry, pen, {at.x, y + pen.px(16)}, to.x);
  draw_hour(state, registry, pen, {at.x, y + pen.px(26)}, to.x);
}

}  // namespace stallwright::desk
