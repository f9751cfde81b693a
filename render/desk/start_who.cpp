// Third column of the start page: who flies, with what instruments and which seed.
#include <array>
#include <charconv>

#include "render/desk/options.hpp"
#include "render/desk/page.hpp"
#include "render/desk/start_parts.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;

struct Named {
  const char *label, *key;
};
constexpr std::array<Named, 4> kPilots{
    {{"I fly", "me"}, {"Sharp", "sharp"}, {"Current", "current"}, {"Rusty", "rusty"}}};
constexpr std::array<Named, 2> kSensors{{{"Standard", "standard"}, {"Ideal", "ideal"}}};

template <std::size_t N>
float choose(ui::Registry& registry, Pen& pen, const char* name, ImVec2 at, float right,
             const std::array<Named, N>& named, std::string& key) {
  std::size_t chosen = N;
  for (std::size_t k = 0; k < N; ++k)
    if (key == named[k].key) chosen = k;
  const float height = options(
      registry, pen, name, at, right - at.x, N, [&](std::size_t k) { return named[k].label; }, chosen);
  if (chosen < N && key != named[chosen].key) key = named[chosen].key;
  return height;
}

/// The seed as typed; what is no number is not taken, and the field says so by keeping the last one.
void draw_seed(StartState& state, ui::Registry& registry, Pen& pen, ImVec2 at, float right) {
  if (state.seed_text.empty() && !ImGui::IsAnyItemActive())
    state.seed_text = std::to_string(state.choice.seed);
  pen.text(pen.fonts().body, {at.x, at.y + pen.px(5)}, kTheme.ivory, "Seed");
  Page::put({at.x + pen.px(118), at.y});
  const float another = Pen::width(pen.fonts().body, "Another") + pen.px(26);
  ImGui::SetNextItemWidth(right - at.x - pen.px(126) - another);
  if (ui::text_field(registry, "##Seed", state.seed_text)) {
    std::uint64_t seed = 0;
    const char* end = state.seed_text.data() + state.seed_text.size();
    const auto read = std::from_chars(state.seed_text.data(), end, seed);
    if (read.ec == std::errc() && read.ptr == end)
      state.choice.seed = seed;
    else if (!state.seed_text.empty())
      state.seed_text = std::to_string(state.choice.seed);
  }
  Page::put({right - another, at.y});
  if (ui::button(registry, "Another", {another, 0})) {
    ++state.choice.seed;
    state.seed_text = std::to_string(state.choice.seed);
  }
  pen.wrapped(pen.fonts().small, {at.x, at.y + pen.px(36)}, kTheme.soft,
              "Draws gusts, instrument errors and the simulated hands. The same seed is the same day again.",
              right - at.x);
}

}  // namespace

void draw_who(StartState& state, ui::Registry& registry, Pen& pen, ImVec2 at, ImVec2 to) {
  const float right = to.x;
  float y = heading(pen, at.x, at.y, right, "Who flies");
  y += choose(registry, pen, "pilot", {at.x, y}, right, kPilots, state.choice.flown_by) + pen.px(8);
  y += pen.wrapped(pen.fonts().small, {at.x, y}, kTheme.soft,
                   state.choice.flown_by == "me"
                       ? "Your hands, stick or keyboard; you press the button."
                       : "A demonstration: the simulated pilot flies the card, you watch.",
                   right - at.x) +
       pen.px(10);
  pen.text(pen.fonts().body, {at.x, y + pen.px(5)}, kTheme.ivory, "Pilot's name");
  Page::put({at.x + pen.px(118), y});
  ImGui::SetNextItemWidth(right - at.x - pen.px(118));
  ui::text_field(registry, "##Pilot's name", state.choice.pilot);
  y += pen.px(38);
  Page::put({at.x, y});
  ui::check(registry, "Guide me through the first flight", state.choice.guide);
  y = heading(pen, at.x, y + pen.px(48), right, "Instruments and chance");
  y += choose(registry, pen, "sensors", {at.x, y}, right, kSensors, state.choice.sensors) + pen.px(10);
  draw_seed(state, registry, pen, {at.x, y}, right);
}

}  // namespace stallwright::desk
