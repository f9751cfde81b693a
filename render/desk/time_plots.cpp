// The flight over time: keys, wheel and drag, and the frame about the pictures (time_plot_panel.cpp draws one).
#include "render/desk/time_plots.hpp"

#include <SDL_scancode.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "render/desk/axis.hpp"
#include "render/desk/page.hpp"
#include "render/desk/time_plot_panel.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;
using view::FlightView;

constexpr double kLeast_s = 2.0;

double first_s(const FlightView& f) { return f.t_s.empty() ? 0.0 : f.t_s.front(); }
double last_s(const FlightView& f) { return f.t_s.empty() ? 1.0 : std::max(f.t_s.back(), first_s(f) + 1.0); }

void whole(const FlightView& flight, TimePlotsState& state) {
  state.begin_s = first_s(flight);
  state.end_s = last_s(flight);
  state.record = 0;
}

/// A record with a quarter of its length about it.
void go_to_record(const FlightView& flight, TimePlotsState& state, std::size_t record) {
  if (record == 0 || record > flight.windows.size()) return;
  state.record = record;
  const TimeHistory::Window& w = flight.windows[record - 1];
  const double about = std::max(2.0, 0.25 * (w.end_s - w.begin_s));
  state.begin_s = std::max(first_s(flight), w.begin_s - about);
  state.end_s = std::min(last_s(flight), w.end_s + about);
}

void heed_keys(const FlightView& flight, TimePlotsState& state) {
  if (!keys_free()) return;
  const auto pressed = [](int key) { return ImGui::IsKeyPressed(key, true); };
  const double middle = 0.5 * (state.begin_s + state.end_s);
  const double about =
      state.cursor_s > state.begin_s && state.cursor_s < state.end_s ? state.cursor_s : middle;
  if (pressed(SDL_SCANCODE_EQUALS) || pressed(SDL_SCANCODE_KP_PLUS)) zoom(flight, state, 0.7, about);
  if (pressed(SDL_SCANCODE_MINUS) || pressed(SDL_SCANCODE_KP_MINUS)) zoom(flight, state, 1.0 / 0.7, about);
  if (pressed(SDL_SCANCODE_LEFT)) pan(flight, state, -0.1);
  if (pressed(SDL_SCANCODE_RIGHT)) pan(flight, state, 0.1);
  if (pressed(SDL_SCANCODE_HOME)) whole(flight, state);
  if (pressed(SDL_SCANCODE_PAGEDOWN)) go_to_record(flight, state, state.record + 1);
  if (pressed(SDL_SCANCODE_PAGEUP) && state.record > 1) go_to_record(flight, state, state.record - 1);
}

void heed_mouse(const FlightView& flight, TimePlotsState& state, float left, float right, bool over) {
  const ImGuiIO& io = ImGui::GetIO();
  const double per_px = (state.end_s - state.begin_s) / static_cast<double>(right - left);
  const double at = state.begin_s + static_cast<double>(io.MousePos.x - left) * per_px;
  if (ImGui::IsItemActive() && ImGui::IsMouseDragging(0))
    pan(flight, state,
        -static_cast<double>(io.MouseDelta.x) * per_px / std::max(state.end_s - state.begin_s, 1e-9));
  if (!over) return;
  state.cursor_s = std::clamp(at, state.begin_s, state.end_s);
  if (io.MouseWheel != 0.0f) zoom(flight, state, std::pow(0.8, static_cast<double>(io.MouseWheel)), at);
}

/// Which pictures are shown, and ways to move for those who have no wheel. Returns the height.
float draw_controls(const FlightView& flight, TimePlotsState& state, ui::Registry& registry, Pen& pen,
                    ImVec2 at, float right) {
  ImGui::PushFont(pen.fonts().small);
  Page::put(at);
  for (std::size_t k = 0; k < flight.panels.size() && k < 32; ++k) {
    if (k > 0) ImGui::SameLine(0.0f, pen.px(14));
    bool on = (state.shown >> k & 1u) != 0;
    if (ui::check(registry, flight.panels[k].name.c_str(), on)) state.shown ^= 1u << k;
  }
  const char* const labels[] = {"Record before", "Record after", "Closer", "Wider", "Whole flight"};
  float x = right;
  const double middle = 0.5 * (state.begin_s + state.end_s);
  for (std::size_t k = std::size(labels); k-- > 0;) {
    const float width = Pen::width(pen.fonts().small, labels[k]) + pen.px(18);
    x -= width;
    Page::put({x, at.y});
    const bool pressed = ui::button(registry, labels[k], {width, 0});
    x -= pen.px(6);
    if (!pressed) continue;
    if (k == 0 && state.record > 1) go_to_record(flight, state, state.record - 1);
    if (k == 1) go_to_record(flight, state, state.record + 1);
    if (k == 2) zoom(flight, state, 0.7, middle);
    if (k == 3) zoom(flight, state, 1.0 / 0.7, middle);
    if (k == 4) whole(flight, state);
  }
  ImGui::PopFont();
  return pen.px(32);
}

void draw_time_axis(const TimePlotsState& state, Pen& pen, float left, float right, float y) {
  const AxisTicks ticks = axis_ticks(state.begin_s, state.end_s, 10);
  for (int k = 0; k < ticks.count; ++k) {
    const float x = left + static_cast<float>((ticks.at(k) - state.begin_s) / (state.end_s - state.begin_s)) *
                               (right - left);
    char text[32];
    axis_text(text, sizeof text, ticks.at(k), ticks.decimals);
    pen.line({x, y}, {x, y + pen.px(4)}, kTheme.soft);
    pen.text(pen.fonts().small, {x, y + pen.px(5)}, kTheme.soft, text, Align::middle);
  }
  pen.text(pen.fonts().small, {left - pen.px(24), y + pen.px(5)}, kTheme.soft, "time, s", Align::right);
}

/// The records by name, above the pictures.
void draw_records(const FlightView& flight, const TimePlotsState& state, Pen& pen, ImVec2 from, ImVec2 to) {
  pen.text(pen.fonts().small, {from.x - pen.px(10), from.y}, kTheme.soft, "record", Align::right);
  const auto x_of = [&](double t_s) {
    const double share = (t_s - state.begin_s) / (state.end_s - state.begin_s);
    return from.x + static_cast<float>(std::clamp(share, 0.0, 1.0)) * (to.x - from.x);
  };
  float free_from = from.x;
  for (const TimeHistory::Window& w : flight.windows) {
    if (w.end_s < state.begin_s || w.begin_s > state.end_s) continue;
    const float a = x_of(w.begin_s), b = x_of(w.end_s);
    pen.box({a, from.y}, {std::max(b, a + pen.px(1)), to.y}, kTheme.ivory, 0.13f);
    char text[96];
    std::snprintf(text, sizeof text, "%s%s%s", w.name.c_str(), w.left_band ? ", left a band" : "",
                  w.forced ? ", off condition" : "");
    const float start = a + pen.px(4), width = Pen::width(pen.fonts().small, text);
    if (start < free_from || start + width > to.x) continue;
    pen.text(pen.fonts().small, {start, from.y}, kTheme.ivory, text);
    free_from = start + width + pen.px(8);
  }
}

void draw_legend(const char* made_by, Pen& pen, ImVec2 at, float right) {
  ImFont* font = pen.fonts().small;
  float x = at.x;
  const float y = at.y + pen.px(9);
  const auto key = [&](const char* words, auto&& draw) {
    draw(x);
    x += pen.px(34);
    x += pen.text(font, {x, at.y}, kTheme.soft, words) + pen.px(18);
  };
  key("as recorded", [&](float a) { pen.line({a, y}, {a + pen.px(26), y}, kTheme.measured, 2.0f); });
  key("truth", [&](float a) { pen.dashed({a, y}, {a + pen.px(26), y}, kTheme.truth, 6, 3, 2.0f); });
  key("record", [&](float a) {
    pen.box({a, y - pen.px(7)}, {a + pen.px(26), y + pen.px(7)}, kTheme.ivory, 0.13f);
  });
  key("band", [&](float a) {
    pen.dashed({a, y - pen.px(4)}, {a + pen.px(26), y - pen.px(4)}, kTheme.within, 7, 4);
    pen.dashed({a, y + pen.px(4)}, {a + pen.px(26), y + pen.px(4)}, kTheme.within, 7, 4);
  });
  key("event", [&](float a) { pen.diamond({a + pen.px(13), y}, 4, kTheme.ivory); });
  pen.text(font, {right, at.y}, kTheme.soft, made_by, Align::right);
}

}  // namespace

void zoom(const FlightView& flight, TimePlotsState& state, double factor, double about_s) {
  const double first = first_s(flight), last = last_s(flight);
  const double span = std::clamp((state.end_s - state.begin_s) * factor, kLeast_s, last - first);
  const double share = std::clamp((about_s - state.begin_s) / (state.end_s - state.begin_s), 0.0, 1.0);
  state.begin_s = std::clamp(about_s - share * span, first, last - span);
  state.end_s = state.begin_s + span;
}

void pan(const FlightView& flight, TimePlotsState& state, double share) {
  const double span = state.end_s - state.begin_s;
  state.begin_s = std::clamp(state.begin_s + share * span, first_s(flight), last_s(flight) - span);
  state.end_s = state.begin_s + span;
}

void draw_time_plots(const FlightView& flight, const char* made_by, TimePlotsState& state,
                     ui::Registry& registry, Pen& pen, ImVec2 from, ImVec2 to) {
  if (flight.t_s.size() < 2) {
    pen.text(pen.fonts().large, from, kTheme.ivory, "Nothing was logged on this flight.");
    return;
  }
  if (!(state.end_s > state.begin_s)) whole(flight, state);
  state.cuts.resize(flight.panels.size());
  heed_keys(flight, state);
  const float below = draw_controls(flight, state, registry, pen, from, to.x);
  const float left = from.x + pen.px(76), top = from.y + below + pen.px(8), bottom = to.y - pen.px(48);
  std::size_t shown = 0;
  for (std::size_t k = 0; k < flight.panels.size(); ++k) shown += state.shown >> k & 1u;
  Page::put({left, top});
  ImGui::InvisibleButton("##plots", {to.x - left, bottom - top});
  heed_mouse(flight, state, left, to.x, ImGui::IsItemHovered() || ImGui::IsItemActive());
  const float strip = pen.px(19), gap = pen.px(24);
  draw_records(flight, state, pen, {left, top}, {to.x, top + strip});
  const float height = (bottom - top - strip) / static_cast<float>(std::max<std::size_t>(shown, 1)) - gap;
  float y = top + strip;
  for (std::size_t k = 0; k < flight.panels.size(); ++k) {
    if ((state.shown >> k & 1u) == 0) continue;
    draw_time_panel(flight, k, state, pen, {left, y + gap}, {to.x, y + gap + height}, y == top + strip);
    y += height + gap;
  }
  draw_time_axis(state, pen, left, to.x, y);
  draw_legend(made_by, pen, {from.x, to.y - pen.px(18)}, to.x);
}

}  // namespace stallwright::desk
