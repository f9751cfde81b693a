#pragma once
#include "aircraft/aircraft_type.hpp"
#include "render/flight/drive.hpp"
#include "render/view/outside_view.hpp"

namespace stallwright::view {

/// What stays the same through a flight: sky, ground and the aeroplane around the pilot. From type file, card and air.
///   hour  local solar time, for the sun
OutsideView outside_of(const SortieConfig& config, double hour);

/// Where the eye is now: between the two snapshots, position in a straight line and attitude by the shorter turn; shaken by
/// what the seat feels, twice integrated and held to 15 mm, as a head on a neck is; and nodding with it by a degree at most, which is what the far horizon shows.
///   look_right_deg, look_up_deg  of the head
void place_eye(const Seen& seen, const Vec3<double>& eye_B_m, double look_right_deg, double look_up_deg,
               OutsideView& view);

/// From the centre of gravity to the eye of whoever flies, body axes, m.
Vec3<double> eye_place(const SortieConfig& config);

}  // namespace stallwright::view
