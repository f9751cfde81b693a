#pragma once
#include "render/desk/time_plots.hpp"

namespace stallwright::desk {

/// One picture over time: record windows shaded, bands, curves, events, and the values at the cursor beside its name.
///   panel  index in flight.panels;  top  the uppermost picture names the records
void draw_time_panel(const view::FlightView& flight, std::size_t panel, TimePlotsState& state, Pen& pen,
                     ImVec2 from, ImVec2 to, bool top);

}  // namespace stallwright::desk
