#pragma once
#include <array>
#include <cstdint>

#include "aircraft/aircraft_type.hpp"
#include "aircraft/airframe_state.hpp"
#include "aircraft/mass_properties.hpp"
#include "aircraft/strip.hpp"

namespace stallwright {

template <std::size_t Rows, std::size_t Columns>
using Influence = std::array<std::array<double, Columns>, Rows>;

/// One aeroplane as loaded, ready to fly: immutable, made once by make_aircraft.
/// Strips run left wing tip to right, left tail tip to right, fin root to tip: wing, tail, fin in one array.
struct Aircraft {
  AircraftType type;
  MassProperties mass;
  std::array<Strip, kStrips> strips{};
  Influence<kWingStrips, kWingStrips> wing_influence{};  ///< downwash on the wing by the wing, 1/m
  Influence<kTailStrips, kTailStrips> tail_influence{};  ///< on the tail by the tail
  Influence<kFinStrips, kFinStrips> fin_influence{};
  Influence<kTailStrips, kWingStrips> tail_by_wing{};  ///< on the tail by the wing, steady
  Influence<kFinStrips, kWingStrips> fin_by_wing{};    ///< sidewash on the fin by the wing, steady
  /// What each wing strip takes of every strip's own quasi-static separation x0: the solution x of
  ///   x_i - s_i (x_{i-1} - 2 x_i + x_{i+1}) = x0_i,  s_i = (kSpreadChords chord/width)^2,  nothing past the tips.
  /// Rows add up to 1. It is applied to x0, not to the state, so that the relaxation keeps its time tau1.
  Influence<kWingStrips, kWingStrips> separation_spread{};
  std::array<Vec3<double>, kWingStrips> probe_by_wing{};  ///< velocity at the AOA probe, 1/m
  double wing_area_m2 = 0, span_m = 0, mean_chord_m = 0;
  double tail_arm_m = 0;  ///< wing quarter chord to tail quarter chord
  /// Travel over which downwash and sidewash follow the wing's circulation: the tail arm times the trailing vortices' share
  /// of the downwash. Vorticity shed by a change must pass the tail first; the bound vortex is felt at once.
  double wake_travel_m = 0;
  double disc_area_m2 = 0;
  double idle_throttle = 0;     ///< share of full torque that turns the propeller at idle speed
  Vec3<double> hub_B, shaft_B;  ///< propeller hub from the cg; unit vector along the shaft, forward
  Vec3<double> body_centre_B, probe_B;
  Mat3<double> inertia_inverse;
};

/// Cuts the type into strips for a loading and an airframe.
///   airframe_seed  draws the fixed small differences between strips; 0 is the perfectly even airframe
/// Throws std::invalid_argument if the type's lists are too short to build from.
Aircraft make_aircraft(const AircraftType& type, const Loading& loading, std::uint64_t airframe_seed);
Aircraft make_aircraft(const AircraftType& type, const MassProperties& mass, std::uint64_t airframe_seed);

/// The same airframe reflected in its plane of symmetry (strip differences swapped left for right, propeller
/// turning the other way is not possible: the mirror test stops the propeller instead).
Aircraft mirrored(const Aircraft& aircraft);

}  // namespace stallwright
