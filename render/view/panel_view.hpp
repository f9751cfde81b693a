#pragma once
#include <array>
#include <cstddef>

#include "aircraft/aircraft_type.hpp"
#include "render/flight/snapshot.hpp"

namespace stallwright::view {

/// Arcs and line of the airspeed dial after 14 CFR 23.1545 (amendment 62), kt. The type file's limits and book speeds, which are
/// CAS at maximum mass, flaps as named, idle: at another mass or in a turn the stall is elsewhere than where an arc begins.
struct SpeedArcs {
  double white_from_kt = 0.0, white_to_kt = 0.0;    ///< V_S0 .. V_FE: flaps may be used
  double green_from_kt = 0.0, green_to_kt = 0.0;    ///< V_S1 .. V_NO: normal
  double yellow_from_kt = 0.0, yellow_to_kt = 0.0;  ///< V_NO .. V_NE: smooth air only
  double red_kt = 0.0;                              ///< V_NE: never
};

/// The most flap settings that the flap scale can mark; a type file has at most six.
inline constexpr std::size_t kFlapMarks = 6;

/// What the panel shows, in the pilot's units: numbers only, as the needles stand.
struct PanelView {
  double airspeed_kt = 0.0;  ///< as read: indicated
  SpeedArcs arcs;
  double altitude_ft = 0.0;  ///< on the altimeter setting below
  double altimeter_setting_hpa = 1013.25;
  double pitch_deg = 0.0, bank_deg = 0.0;  ///< nose up, right wing down
  double turn_rate_degps = 0.0;            ///< right
  double slip_balls = 0.0;                 ///< right, in ball widths
  double vertical_speed_fpm = 0.0;         ///< up
  double heading_deg = 0.0;                ///< 0 .. 360, true north: the invented world has no variation
  double rpm = 0.0, rated_rpm = 0.0;
  double power_percent = 0.0;  ///< of full power; 0: windmilling
  double throttle_percent = 0.0;
  double flap_deg = 0.0, flap_lever_deg = 0.0;  ///< where the flaps are, and where the lever is
  std::array<double, kFlapMarks> flap_marks_deg{};
  std::size_t flap_mark_count = 0;
  double pitch_trim = 0.0;  ///< -1 .. 1, nose up
  double time_s = 0.0;      ///< since the flight began
};

/// The panel as of this snapshot. Pure.
PanelView panel_view(const Snapshot& now, const AircraftType& type);

}  // namespace stallwright::view
