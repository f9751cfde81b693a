#pragma once
#include <array>
#include <cstdint>

namespace stallwright::view {

/// What the pilot's eyes look at, and from where. Earth axes north-east-down from the place the flight began, ground at
/// `terrain_m` above sea level; body axes forward-right-down.
struct OutsideView {
  std::array<double, 3> eye_E_m{};  ///< of the pilot's eye, head shake included; z down, altitude -z
  std::array<double, 4> attitude_EB{1, 0, 0, 0};  ///< quaternion w x y z, body to earth
  double look_right_deg = 0.0;                    ///< of the head, from straight ahead
  double look_up_deg = 0.0;
  double field_of_view_deg = 48.0;  ///< vertical
  double terrain_m = 0.0;
  double sun_azimuth_deg = 120.0, sun_elevation_deg = 25.0;
  double visibility_m = 30000.0;
  double cloud_base_m = 1800.0;        ///< above the ground
  double cloud_cover = 0.15;           ///< share of the sky, 0 .. 1
  std::array<double, 2> wind_E_mps{};  ///< clouds drift with it
  double time_s = 0.0;
  double propeller_turns = 0.0, propeller_rps = 0.0;  ///< blade angle, and how fast: blades blur
  std::uint64_t world_seed = 1;
  // The aeroplane around the pilot, from the type file.
  double eye_to_nose_m = 1.8;    ///< forward from the eye to the propeller
  double cowling_drop_m = 0.35;  ///< of the cowling's top below the eye
  double cowling_width_m = 0.9;
  bool high_wing = true;
  double half_span_m = 5.0, wing_chord_m = 1.5;
};

}  // namespace stallwright::view
