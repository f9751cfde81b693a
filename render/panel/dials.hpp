#pragma once
#include "render/panel/dial.hpp"
#include "render/view/panel_view.hpp"

/// The six round dials. Each draws itself whole, face first.
namespace stallwright::panel {

void airspeed_dial(const Dial& dial, const view::PanelView& view);
void attitude_dial(const Dial& dial, const view::PanelView& view);
void altimeter(const Dial& dial, const view::PanelView& view);
void turn_and_slip(const Dial& dial, const view::PanelView& view);
void heading_dial(const Dial& dial, const view::PanelView& view);
void vertical_speed_dial(const Dial& dial, const view::PanelView& view);

}  // namespace stallwright::panel
