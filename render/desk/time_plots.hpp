#pragma once
#include <cstdint>
#include <vector>

#include "render/desk/pen.hpp"
#include "render/ui/widgets.hpp"
#include "render/view/debrief_view.hpp"
#include "render/view/pixel_columns.hpp"

namespace stallwright::desk {

/// Part of the flight that is shown, which pictures, and curves cut down to pixels, kept until the part changes.
struct TimePlotsState {
  double begin_s = 0.0, end_s = 0.0;  ///< end not above begin: the whole flight
  double cursor_s = kNone;
  std::uint32_t shown = 0b1111;  ///< panels, by bit
  std::size_t record = 0;        ///< last gone to, from 1; 0: none

  struct Cut {
    double begin_s = 0.0, end_s = -1.0;
    std::size_t columns = 0;
    std::vector<std::vector<view::CurvePoint>> traces;
    double low = 0.0, high = 1.0;  ///< of the axis
  };
  std::vector<Cut> cuts;  ///< by panel
};

/// Draws the flight over time into a rectangle and heeds wheel, drag and keys.
void draw_time_plots(const view::FlightView& flight, const char* made_by, TimePlotsState& state,
                     ui::Registry& registry, Pen& pen, ImVec2 from, ImVec2 to);

/// The span that a zoom about a moment gives, kept within the flight and not below two seconds.
void zoom(const view::FlightView& flight, TimePlotsState& state, double factor, double about_s);
/// Moves by a share of what is shown; stops at the ends.
void pan(const view::FlightView& flight, TimePlotsState& state, double share);

}  // namespace stallwright::desk
