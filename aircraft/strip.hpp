#pragma once
#include <array>
#include <cstddef>

#include "aircraft/aircraft_type.hpp"
#include "aircraft/math/vec3.hpp"

namespace stallwright {

using math::Mat3;
using math::Vec3;

inline constexpr std::size_t kWingStrips = 16;  ///< left tip to right tip
inline constexpr std::size_t kTailStrips = 6;   ///< left tip to right tip
inline constexpr std::size_t kFinStrips = 3;    ///< root to tip
inline constexpr std::size_t kStrips = kWingStrips + kTailStrips + kFinStrips;

/// Separation spreads sideways: a strip is drawn towards its neighbours over this length, in chords (stall cells are
/// one to two chords wide; Winkelmann and Barlow, from memory). Without it neighbouring strips of a steep section stall
/// one by one in jumps, and no steady flight exists near maximum lift: an artefact of cutting the wing into strips.
/// How: see Aircraft::separation_spread.
inline constexpr double kSpreadChords = 0.7;

/// Travel, in chords, over which a wing's induced flow follows its lift; why: see kShedShare in airframe.hpp.
inline constexpr double kInflowChords = 1.8;

/// One chordwise slice of a lifting surface. Geometry only; its flow states are in AirframeState.
///   r_B      quarter-chord point from the centre of gravity, body axes, m
///   chord_B  unit vector along the chord, forward;  normal_B  unit, to the lower side;  span_B  completes the triad
/// Flow along +normal_B (air met from below) is positive angle of attack; lift acts along -normal_B.
struct Strip {
  Vec3<double> r_B, chord_B, normal_B, span_B;
  double chord_m = 0, width_m = 0, area_m2 = 0;
  double span_position_m = 0;    ///< y for wing and tail, height for the fin
  double flap_share = 0;         ///< share of the strip's width that carries flap
  double control_share = 0;      ///< share that carries the control
  double slipstream_share = 0;   ///< share washed by the propeller
  double slipstream_growth = 0;  ///< 1 at the disc, 2 far behind
  double stall_offset_rad = 0;   ///< this airframe's own difference in stall angle
  double body_crossflow = 0;     ///< wing: upflow per sideways speed, from the flow round the body
  double wake_arm_m = 0;         ///< tail and fin: behind the wing root's quarter chord
  double wake_rise_m = 0;        ///< and above it

  // What the flow round its section keeps pace with, and where it lets go; from section and chord, see keep_pace.
  double separation_per_m = 0;  ///< 1/(tau1 chord): relaxation of separation by travel
  double delay_per_m = 0;       ///< 1/(tau2 chord)
  double inflow_per_m = 0;      ///< 1/(kInflowChords chord)
  double per_stall_width = 0;   ///< 1/rad
  double separation_gap = 0;    ///< of its section
};

/// Fills the constants above from a strip's chord and its section.
void keep_pace(Strip& strip, const SectionType& section);

}  // namespace stallwright
