#pragma once
#include "render/desk/pen.hpp"
#include "render/desk/start.hpp"

/// The columns of the start page; start.cpp puts them in place. Each fills from `at` down, `width` wide.
namespace stallwright::desk {

void draw_aeroplane(const view::StartView& view, StartState& state, ui::Registry& registry, Pen& pen,
                    ImVec2 at, ImVec2 to);
void draw_card_and_air(const view::StartView& view, StartState& state, ui::Registry& registry, Pen& pen,
                       ImVec2 at, ImVec2 to);
void draw_who(StartState& state, ui::Registry& registry, Pen& pen, ImVec2 at, ImVec2 to);

/// Mass against centre of gravity, with the load in it.
void draw_envelope(const AircraftType& type, const view::StartCheck& check, Pen& pen, ImVec2 from, ImVec2 to);

}  // namespace stallwright::desk
