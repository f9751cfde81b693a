#pragma once
#include <vector>

#include "render/outside/chunk.hpp"

namespace stallwright::outside {

/// A tree or a bush: a round crown.
struct Plant {
  float north_m, east_m,
      height_m;  ///< from the chunk's south-west corner; of the ground over the terrain's level
  float radius_m;
  float tint;  ///< 0 .. 1
};

inline constexpr std::size_t kMostPlants = 640;  ///< of one chunk

/// What grows in a chunk of the lowest level, into `plants` (cleared): woods, hedges with trees in them, now and then a tree in a
/// field. None on the airfield, in the river or on a lane.
void plants_in(const ChunkKey& key, const LandSeed& seed, std::vector<Plant>& plants);

}  // namespace stallwright::outside
