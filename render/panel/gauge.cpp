#include "render/panel/gauge.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace stallwright::panel {
namespace {

/// The level line and what stands on it; shares run 0 .. 1 from its left end.
struct Track {
  const Gauge& gauge;
  float left, span, y;
  float x(double share) const { return left + span * static_cast<float>(std::clamp(share, 0.0, 1.0)); }
};

void words(const Gauge& gauge, const char* caption, const char* value) {
  const ui::Fonts& fonts = gauge.fonts;
  const float width = fonts.bold->CalcTextSizeA(fonts.bold->FontSize, FLT_MAX, 0.0f, value).x;
  const float down = 0.5f * (fonts.bold->FontSize - fonts.small->FontSize);
  gauge.list.AddText(fonts.small, fonts.small->FontSize, {gauge.from.x, gauge.from.y + down},
                     ui::colour(ui::kTheme.soft), caption);
  gauge.list.AddText(fonts.bold, fonts.bold->FontSize, {gauge.to.x - width, gauge.from.y},
                     ui::colour(ui::kTheme.ivory), value);
}

Track track(const Gauge& gauge) {
  const float inset = gauge.px(6.0f);  // half a pointer, so that it stays inside at either end
  const Track t{gauge, gauge.from.x + inset, gauge.to.x - gauge.from.x - 2.0f * inset,
                gauge.from.y + gauge.px(kGaugeHeight_px - 7.0f)};
  gauge.list.AddLine({t.left, t.y}, {t.left + t.span, t.y}, ui::colour(ui::kTheme.soft), gauge.px(1.5f));
  return t;
}

void mark(const Track& t, double share, float length = 5.0f) {
  t.gauge.list.AddLine({t.x(share), t.y}, {t.x(share), t.y + t.gauge.px(length)}, ui::colour(ui::kTheme.soft),
                       t.gauge.px(1.5f));
}

void marks(const Track& t, int parts) {
  for (int k = 0; k <= parts; ++k) mark(t, static_cast<double>(k) / parts);
}

/// Filled, above the line.
void pointer(const Track& t, const char* name, double value, double share) {
  const Gauge& g = t.gauge;
  const ImVec2 tip = {t.x(share), t.y - g.px(0.5f)};
  g.list.AddTriangleFilled(tip, {tip.x - g.px(5.0f), tip.y - g.px(9.0f)},
                           {tip.x + g.px(5.0f), tip.y - g.px(9.0f)}, ui::colour(ui::kTheme.ivory));
  if (g.log != nullptr) g.log->add({name, value, {t.left, tip.y}, tip, t.span});
}

void percent_gauge(const Gauge& gauge, const char* caption, const char* name, double percent) {
  char value[16];
  std::snprintf(value, sizeof value, "%.0f %%", percent);
  words(gauge, caption, value);
  const Track t = track(gauge);
  marks(t, 4);
  pointer(t, name, percent, percent / 100.0);
}

double full_deg(const view::PanelView& view) {
  return view.flap_mark_count > 0 ? std::max(view.flap_marks_deg[view.flap_mark_count - 1], 1.0) : 1.0;
}

}  // namespace

void rpm_gauge(const Gauge& gauge, const view::PanelView& view) {
  char value[16];
  std::snprintf(value, sizeof value, "%.0f", 10.0 * std::round(view.rpm / 10.0));
  words(gauge, "rpm", value);
  const Track t = track(gauge);
  const double top = 1.1 * view.rated_rpm;
  for (int rpm = 0; rpm <= top; rpm += 500) mark(t, rpm / top);
  const float x = t.x(view.rated_rpm / top);
  gauge.list.AddLine({x, t.y - gauge.px(5.0f)}, {x, t.y + gauge.px(6.0f)}, ui::colour(ui::kTheme.line_red),
                     gauge.px(3.0f));
  pointer(t, "rpm", view.rpm, view.rpm / top);
}

void power_gauge(const Gauge& gauge, const view::PanelView& view) {
  percent_gauge(gauge, "power", "power", view.power_percent);
}

void throttle_gauge(const Gauge& gauge, const view::PanelView& view) {
  percent_gauge(gauge, "throttle", "throttle", view.throttle_percent);
}

void flap_gauge(const Gauge& gauge, const view::PanelView& view) {
  char value[32];
  if (std::abs(view.flap_lever_deg - view.flap_deg) > 0.5)
    std::snprintf(value, sizeof value, "%.0f\u00b0 to %.0f\u00b0", std::abs(view.flap_deg),
                  view.flap_lever_deg);
  else
    std::snprintf(value, sizeof value, "%.0f\u00b0", std::abs(view.flap_deg));
  words(gauge, "flaps", value);
  const Track t = track(gauge);
  const double full = full_deg(view);
  for (std::size_t k = 0; k < view.flap_mark_count; ++k) mark(t, view.flap_marks_deg[k] / full);
  const float x = t.x(view.flap_lever_deg / full), y = t.y + gauge.px(0.5f);
  gauge.list.AddTriangle({x, y}, {x - gauge.px(4.0f), y + gauge.px(6.0f)},
                         {x + gauge.px(4.0f), y + gauge.px(6.0f)}, ui::colour(ui::kTheme.ivory),
                         gauge.px(1.3f));
  if (gauge.log != nullptr) gauge.log->add({"flap lever", view.flap_lever_deg, {t.left, y}, {x, y}, t.span});
  pointer(t, "flaps", view.flap_deg, view.flap_deg / full);
}

void trim_gauge(const Gauge& gauge, const view::PanelView& view) {
  char value[24];
  const double percent = std::round(100.0 * view.pitch_trim);
  if (percent == 0.0)
    std::snprintf(value, sizeof value, "middle");
  else
    std::snprintf(value, sizeof value, "%.0f %% %s", std::abs(percent), percent > 0.0 ? "up" : "down");
  words(gauge, "trim", value);
  const Track t = track(gauge);
  marks(t, 2);
  pointer(t, "trim", view.pitch_trim, 0.5 + 0.5 * view.pitch_trim);
}

void clock_gauge(const Gauge& gauge, const view::PanelView& view) {
  char value[24];
  const unsigned s = static_cast<unsigned>(std::max(view.time_s, 0.0));
  std::snprintf(value, sizeof value, "%u:%02u:%02u", s / 3600, s / 60 % 60, s % 60);
  words(gauge, "time", value);
  const Track t = track(gauge);
  marks(t, 6);
  const double second = std::fmod(std::max(view.time_s, 0.0), 60.0);
  pointer(t, "time", view.time_s, second / 60.0);
}

void draw_gauge(std::size_t which, const Gauge& gauge, const view::PanelView& view) {
  constexpr decltype(&rpm_gauge) kAll[kGauges] = {rpm_gauge,  power_gauge, throttle_gauge,
                                                  flap_gauge, trim_gauge,  clock_gauge};
  kAll[which](gauge, view);
}

}  // namespace stallwright::panel
