#pragma once
#include "tests/published/section_fit.hpp"
#include "tests/sim/motion/wind_tunnel.hpp"

namespace stallwright::published {

/// A flat, straight-tapered, untwisted wing for the model's strips, of a type in which nothing else feels the air.
inline AircraftType bare_wing_type(double span_m, double root_chord_m, double tip_chord_m,
                                   const SectionType& section) {
  AircraftType type = testing::marram_type();
  type.wing.stations = {{0.0, 0.375, 0.0, root_chord_m, 0.0}, {0.5 * span_m, 0.375, 0.0, tip_chord_m, 0.0}};
  type.wing.section = section;
  for (double& c : type.propeller.thrust_coefficient) c = 0.0;
  for (double& c : type.propeller.power_coefficient) c = 0.0;
  type.propeller.normal_force_slope = type.propeller.asymmetric_moment = 0.0;
  type.body.drag_area_m2 = type.body.side_force_area_m2 = type.body.munk_volume_m3 = 0.0;
  type.body.crossflow_area_side_m2 = type.body.crossflow_area_up_m2 = 0.0;
  type.body.radius_at_wing_m = 0.0;
  return type;
}

/// The wing itself: tail and fin have no area.
inline Aircraft wing_alone(const AircraftType& type) {
  Aircraft a = make_aircraft(type, default_loading(type), 0);
  for (std::size_t i = kWingStrips; i < kStrips; ++i) a.strips[i].area_m2 = 0.0;
  return a;
}
inline Aircraft bare_wing(double span_m, double root_chord_m, double tip_chord_m,
                          const SectionType& section) {
  return wing_alone(bare_wing_type(span_m, root_chord_m, tip_chord_m, section));
}

}  // namespace stallwright::published
