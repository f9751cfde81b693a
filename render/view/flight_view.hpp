#pragma once
#include "render/view/debrief_view.hpp"

namespace stallwright::view {

/// The flight over time from what the pages hold of it. Panels without a column are left out.
FlightView flight_view(const TimeHistory& history, const SortieSummary& summary);

}  // namespace stallwright::view
