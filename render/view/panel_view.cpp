#include "render/view/panel_view.hpp"

#include <algorithm>
#include <numbers>

#include "aircraft/math/units.hpp"

namespace stallwright::view {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kRpm = 2.0 * std::numbers::pi / 60.0;

SpeedArcs arcs_of(const LimitsType& limits) {
  SpeedArcs arcs;
  arcs.white_from_kt = limits.book_v_s0_mps / kKnot;
  arcs.white_to_kt = limits.v_fe_mps / kKnot;
  arcs.green_from_kt = limits.book_v_s1_mps / kKnot;
  arcs.green_to_kt = arcs.yellow_from_kt = limits.v_no_mps / kKnot;
  arcs.yellow_to_kt = arcs.red_kt = limits.v_ne_mps / kKnot;
  return arcs;
}

void put_flaps(PanelView& view, const Snapshot& now, const AircraftType& type) {
  view.flap_deg = now.readings.flap_rad / kDegree;
  view.flap_lever_deg = now.controls.flap_rad / kDegree;
  view.flap_mark_count = std::min(type.flaps.size(), kFlapMarks);
  for (std::size_t k = 0; k < view.flap_mark_count; ++k)
    view.flap_marks_deg[k] = type.flaps[k].deflection_rad / kDegree;
}

}  // namespace

PanelView panel_view(const Snapshot& now, const AircraftType& type) {
  const Needles& needles = now.needles;
  PanelView view;
  view.airspeed_kt = needles.airspeed_kt;
  view.arcs = arcs_of(type.limits);
  view.altitude_ft = needles.altitude_ft;
  view.altimeter_setting_hpa = now.altimeter_setting_hpa;
  view.pitch_deg = needles.pitch_deg;
  view.bank_deg = needles.bank_deg;
  view.turn_rate_degps = needles.turn_rate_degps;
  view.slip_balls = needles.slip_balls;
  view.vertical_speed_fpm = needles.vertical_speed_fpm;
  view.heading_deg = needles.heading_deg;
  view.rpm = needles.rpm;
  view.rated_rpm = type.engine.rated_speed_radps / kRpm;
  view.power_percent = 100.0 * now.power_share;
  view.throttle_percent = 100.0 * now.controls.throttle;
  put_flaps(view, now, type);
  view.pitch_trim = now.pitch_trim;
  view.time_s = now.time_s;
  return view;
}

}  // namespace stallwright::view
