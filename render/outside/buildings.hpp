#pragma once
#include <vector>

#include "render/outside/land.hpp"

namespace stallwright::outside {

/// A house, barn or hangar: a box with a gabled roof, its ridge along its length.
struct Building {
  float north_m, east_m, height_m;  ///< of its middle in the world; of the ground over the terrain's level
  float along_north, along_east;    ///< unit, of its length
  float half_length_m, half_width_m, wall_m, roof_m;
  float kind;  ///< 0 barn, 1 house, 2 hangar
  float tint;  ///< 0 .. 1
};

/// All within reach of a place, into `buildings` (cleared): farms and cottages on lanes, villages at some crossings, the hangars
/// of the airfield. None in the river or on the airfield's runway.
void buildings_about(Spot place, double reach_m, const LandSeed& seed, std::vector<Building>& buildings);

}  // namespace stallwright::outside
