#include "render/desk/replay_bar.hpp"

#include <SDL_scancode.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "render/desk/page.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;
using view::ReplayTrack;

constexpr std::array kRates{0.25, 0.5, 1.0, 2.0, 4.0, 8.0};
constexpr double kTick_s = 0.02;

void change_rate(ReplayState& state, int by) {
  std::size_t at = 0;
  while (at + 1 < kRates.size() && kRates[at] < state.rate) ++at;
  if (by > 0 && at + 1 < kRates.size()) ++at;
  if (by < 0 && at > 0) --at;
  state.rate = kRates[at];
}

void step(const ReplayTrack& track, ReplayState& state, double by_s) {
  state.playing = false;
  state.time_s = std::clamp(state.time_s + by_s, track.begin_s(), track.end_s());
}

/// The event after or before this moment, if there is one.
void to_event(const ReplayTrack& track, ReplayState& state, bool after) {
  constexpr double kPast_s = 0.5;  // so that a second press goes on from the first
  double best = state.time_s;
  for (const ReplayTrack::Event& e : track.events()) {
    if (after && e.time_s > state.time_s + kTick_s) {
      best = e.time_s;
      break;
    }
    if (!after && e.time_s < state.time_s - kPast_s) best = e.time_s;
  }
  state.time_s = best;
}

ReplayIntent heed_keys(const ReplayTrack& track, ReplayState& state) {
  if (!keys_free()) return ReplayIntent::none;
  const auto pressed = [](int key) { return ImGui::IsKeyPressed(key, true); };
  const double by = ImGui::GetIO().KeyShift ? kTick_s : 1.0;
  if (ImGui::IsKeyPressed(SDL_SCANCODE_SPACE, false)) state.playing = !state.playing;
  if (pressed(SDL_SCANCODE_LEFT)) step(track, state, -by);
  if (pressed(SDL_SCANCODE_RIGHT)) step(track, state, by);
  if (pressed(SDL_SCANCODE_LEFTBRACKET)) to_event(track, state, false);
  if (pressed(SDL_SCANCODE_RIGHTBRACKET)) to_event(track, state, true);
  if (pressed(SDL_SCANCODE_MINUS) || pressed(SDL_SCANCODE_KP_MINUS)) change_rate(state, -1);
  if (pressed(SDL_SCANCODE_EQUALS) || pressed(SDL_SCANCODE_KP_PLUS)) change_rate(state, 1);
  return ImGui::IsKeyPressed(SDL_SCANCODE_ESCAPE, false) ? ReplayIntent::leave : ReplayIntent::none;
}

/// The whole flight as a rail: records shaded and named, events marked, the place a heavy line.
void draw_rail(const ReplayTrack& track, ReplayState& state, ui::Registry& registry, Pen& pen, ImVec2 from,
               ImVec2 to) {
  const double span = std::max(track.end_s() - track.begin_s(), 1e-9);
  const auto x_of = [&](double t_s) {
    return from.x + static_cast<float>((t_s - track.begin_s()) / span) * (to.x - from.x);
  };
  Page::put(from);
  ImGui::InvisibleButton("##rail", {to.x - from.x, to.y - from.y});
  if (ImGui::IsItemActive()) {
    const float share = (ImGui::GetIO().MousePos.x - from.x) / (to.x - from.x);
    state.time_s = track.begin_s() + span * static_cast<double>(std::clamp(share, 0.0f, 1.0f));
  }
  char value[32];
  std::snprintf(value, sizeof value, "%.2f", state.time_s);
  registry.add({"Replay", from, to, value, true});
  pen.box(from, to, kTheme.dial);
  float free_from = from.x;
  for (const ReplayTrack::Span& r : track.records()) {
    const float a = x_of(r.begin_s), b = std::max(x_of(r.end_s), a + pen.px(2));
    pen.box({a, from.y}, {b, to.y}, kTheme.ivory, 0.14f);
    const float width = Pen::width(pen.fonts().small, r.name.c_str());
    if (a + pen.px(4) < free_from || a + width + pen.px(4) > to.x) continue;
    pen.text(pen.fonts().small, {a + pen.px(4), from.y + pen.px(1)}, kTheme.soft, r.name.c_str());
    free_from = a + width + pen.px(12);
  }
  for (const ReplayTrack::Event& e : track.events()) {
    const ImVec2 at{x_of(e.time_s), to.y - pen.px(8)};
    if (e.danger)
      pen.cross(at, 4, kTheme.danger);
    else
      pen.diamond(at, 3, kTheme.ivory);
  }
  const float x = x_of(state.time_s);
  pen.box({from.x, to.y - pen.px(2)}, {x, to.y}, kTheme.soft);
  pen.box({x - pen.px(1.5f), from.y - pen.px(3)}, {x + pen.px(1.5f), to.y + pen.px(3)}, kTheme.ivory);
  pen.frame(from, to, kTheme.edge);
}

/// The event that was last, in words; else the record that is on.
void draw_words(const ReplayTrack& track, const ReplayState& state, Pen& pen, ImVec2 at, float right) {
  constexpr double kStays_s = 6.0;
  char text[256] = "";
  for (const ReplayTrack::Span& r : track.records())
    if (state.time_s >= r.begin_s && state.time_s <= r.end_s)
      std::snprintf(text, sizeof text, "recording %s", r.name.c_str());
  for (const ReplayTrack::Event& e : track.events())
    if (e.time_s <= state.time_s && state.time_s < e.time_s + kStays_s)
      std::snprintf(text, sizeof text, "%s%s%s: %s", e.kind.c_str(), e.point.empty() ? "" : ", ",
                    e.point.c_str(), e.text.c_str());
  pen.fitted(pen.fonts().body, at, kTheme.ivory, text, right - at.x);
}

}  // namespace

void advance(const ReplayTrack& track, ReplayState& state, double dt_s) {
  state.time_s = std::clamp(state.time_s, track.begin_s(), track.end_s());
  if (!state.playing) return;
  state.time_s = std::min(state.time_s + state.rate * dt_s, track.end_s());
  if (state.time_s >= track.end_s()) state.playing = false;
}

ReplayIntent draw_replay_bar(const ReplayTrack& track, ReplayState& state, ui::Registry& registry,
                             const ui::Fonts& fonts, ImVec2 from, ImVec2 to) {
  Page page("replay bar", fonts, from, to);
  Pen& pen = page.pen();
  ReplayIntent intent = heed_keys(track, state);
  const float left = from.x + pen.px(16), right = to.x - pen.px(16);
  draw_rail(track, state, registry, pen, {left, from.y + pen.px(8)}, {right, from.y + pen.px(36)});
  const float y = from.y + pen.px(42), height = pen.px(28);
  float x = left;
  const auto press = [&](const char* label, const char* widest) {
    const float width = Pen::width(pen.fonts().body, widest) + pen.px(22);
    Page::put({x, y});
    x += width + pen.px(6);
    return ui::button(registry, label, {width, height});
  };
  if (press(state.playing ? "Pause" : "Play", "Pause")) {
    if (!state.playing && state.time_s >= track.end_s()) state.time_s = track.begin_s();
    state.playing = !state.playing;
  }
  if (press("Step back", "Step back")) step(track, state, -1.0);
  if (press("Step on", "Step on")) step(track, state, 1.0);
  if (press("Event before", "Event before")) to_event(track, state, false);
  if (press("Event after", "Event after")) to_event(track, state, true);
  if (press("Slower", "Slower")) change_rate(state, -1);
  if (press("Faster", "Faster")) change_rate(state, 1);
  char text[96];
  std::snprintf(text, sizeof text, "%.1f of %.0f s   at %g times", state.time_s, track.end_s(), state.rate);
  x += pen.text(pen.fonts().body, {x + pen.px(8), y + pen.px(5)}, kTheme.soft, text) + pen.px(30);
  const float leave = Pen::width(pen.fonts().body, "Leave the replay") + pen.px(22);
  draw_words(track, state, pen, {x, y + pen.px(5)}, right - leave - pen.px(14));
  Page::put({right - leave, y});
  if (ui::button(registry, "Leave the replay", {leave, height})) intent = ReplayIntent::leave;
  return intent;
}

}  // namespace stallwright::desk
