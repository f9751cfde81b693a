#pragma once
#include <imgui.h>

#include "render/panel/needle_log.hpp"
#include "render/ui/fonts.hpp"
#include "render/ui/theme.hpp"
#include "render/view/panel_view.hpp"

/// The straight gauges beside the dials: a caption, a figure, and a level scale with a pointer.
namespace stallwright::panel {

struct Gauge {
  ImDrawList& list;
  const ui::Fonts& fonts;
  ImVec2 from, to;  ///< of the whole gauge, px; at least kGaugeWidth x kGaugeHeight at scale 1
  NeedleLog* log = nullptr;

  float px(float at_scale_1) const { return at_scale_1 * fonts.scale; }
};
inline constexpr float kGaugeWidth_px = 140.0f, kGaugeHeight_px = 34.0f;

/// Each gauge with the range of its scale, left to right:
void rpm_gauge(const Gauge& gauge,
               const view::PanelView& view);  ///< 0 .. rated + 10 %; a red line at the rated speed
void power_gauge(const Gauge& gauge, const view::PanelView& view);     ///< 0 .. 100 %
void throttle_gauge(const Gauge& gauge, const view::PanelView& view);  ///< 0 .. 100 % of its travel
void flap_gauge(const Gauge& gauge, const view::PanelView& view);  ///< up .. full; hollow pointer: the lever
void trim_gauge(const Gauge& gauge, const view::PanelView& view);  ///< nose down .. nose up
void clock_gauge(const Gauge& gauge,
                 const view::PanelView& view);  ///< 0 .. 60 s, the time as hours:minutes:seconds

/// The six in the order above.
inline constexpr std::size_t kGauges = 6;
void draw_gauge(std::size_t which, const Gauge& gauge, const view::PanelView& view);

}  // namespace stallwright::panel
