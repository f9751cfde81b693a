// First column of the start page: the aeroplane and what is loaded into it.
#include <algorithm>
#include <cstdio>

#include "render/desk/options.hpp"
#include "render/desk/page.hpp"
#include "render/desk/start_parts.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;

/// One station: its name, a slider from nothing to its limit, kilograms.
void draw_station(const LoadStation& station, StartState& state, ui::Registry& registry, Pen& pen, ImVec2 at,
                  float right) {
  const auto given = state.choice.load_kg.find(station.name);
  const double is = given == state.choice.load_kg.end() ? station.default_kg : given->second;
  pen.fitted(pen.fonts().body, {at.x, at.y + pen.px(2)}, kTheme.ivory, station.name.c_str(), pen.px(112));
  auto kg = static_cast<float>(std::min(is, station.max_kg));
  ImGui::PushFont(pen.fonts().small);
  ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {pen.px(6), pen.px(2)});
  Page::put({at.x + pen.px(118), at.y});
  ImGui::SetNextItemWidth(right - at.x - pen.px(118) - pen.px(100));
  // Labels hide behind ##: the name stands at the left already.
  char label[96];
  std::snprintf(label, sizeof label, "##%s", station.name.c_str());
  if (ui::slider(registry, label, kg, 0.0f, static_cast<float>(station.max_kg), "%.0f kg"))
    state.choice.load_kg[station.name] = static_cast<double>(static_cast<int>(kg + 0.5f));
  registry.add({station.name, ImGui::GetItemRectMin(), ImGui::GetItemRectMax(), "", true});
  ImGui::PopStyleVar();
  ImGui::PopFont();
  char text[48];
  std::snprintf(text, sizeof text, "at most %.0f kg", station.max_kg);
  pen.text(pen.fonts().small, {right, at.y + pen.px(3)}, kTheme.soft, text, Align::right);
}

}  // namespace

void draw_aeroplane(const view::StartView& view, StartState& state, ui::Registry& registry, Pen& pen,
                    ImVec2 at, ImVec2 to) {
  float y = heading(pen, at.x, at.y, to.x, "Aeroplane");
  std::size_t chosen = view.aircraft.size();
  for (std::size_t k = 0; k < view.aircraft.size(); ++k)
    if (view.aircraft[k].key == state.choice.aircraft) chosen = k;
  const std::size_t before = chosen;
  y += options(
      registry, pen, "aeroplane", {at.x, y}, to.x - at.x, view.aircraft.size(),
      [&](std::size_t k) { return view.aircraft[k].type.name.c_str(); }, chosen);
  if (chosen != before) {
    state.choice.aircraft = view.aircraft[chosen].key;
    state.choice.load_kg.clear();  // stations are the type's own
  }
  const view::AircraftOffer* aircraft = state.check.aircraft;
  if (aircraft == nullptr || !aircraft->problem.empty() || chosen != before) return;
  y += pen.px(10);
  y += pen.wrapped(pen.fonts().small, {at.x, y}, kTheme.soft, aircraft->type.summary.c_str(), to.x - at.x);
  pen.text(pen.fonts().small, {at.x, y + pen.px(3)}, kTheme.ivory, aircraft->stalls.c_str());
  y = heading(pen, at.x, y + pen.px(34), to.x, "Loading");
  const std::vector<LoadStation>& stations = aircraft->type.mass.stations;
  for (const LoadStation& station : stations) {
    draw_station(station, state, registry, pen, {at.x, y}, to.x);
    y += pen.px(27);
  }
  const ImVec2 mark{at.x + pen.px(8), y + pen.px(14)};
  if (state.check.inside)
    pen.tick(mark, 6, kTheme.within);
  else
    pen.cross(mark, 5, kTheme.danger);
  pen.fitted(pen.fonts().body, {at.x + pen.px(24), y + pen.px(4)}, kTheme.ivory, state.check.balance.c_str(),
             to.x - at.x - pen.px(24));
  y += pen.px(32);
  if (to.y - y > pen.px(70)) draw_envelope(aircraft->type, state.check, pen, {at.x, y}, to);
}

}  // namespace stallwright::desk
