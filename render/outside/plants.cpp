#include "render/outside/plants.hpp"

#include <cmath>

#include "render/outside/noise.hpp"

namespace stallwright::outside {
namespace {

constexpr int kAlong = 32;  // places for a plant along each side of a chunk: one each 16 m

bool free_ground(Spot place, const LandSeed& seed) {
  const Spot at = Airfield::local(place);
  if (std::abs(at.north_m) < Airfield::kHalfAlong_m + 150.0 &&
      std::abs(at.east_m) < Airfield::kHalfAcross_m + 20.0)
    return false;
  const RiverSpot river = river_at(place, seed);
  return std::abs(river.offset_m) > river.half_width_m + 9.0;
}

/// Onto the hedge of the nearest edge; on a lane's edge, onto the hedge of the lane's nearer side.
Spot onto_hedge(Spot place, const FieldSpot& field, const LandSeed& seed) {
  Spot at = bent(place, seed);
  const bool by_row = std::abs(field.to_row_edge_m) < std::abs(field.to_column_edge_m);
  const double away = by_row ? field.to_row_edge_m : field.to_column_edge_m;
  const bool lane = by_row ? field.row_is_lane : field.column_is_lane;
  const double move = (lane ? std::copysign(7.0, away) : 0.0) - away;
  (by_row ? at.north_m : at.east_m) += move;
  return unbent(at, seed);
}

/// Radius of what grows here, m, 0 for nothing; moves the place where it belongs on a hedge.
double grown_m(Spot& place, double chance, double size, const LandSeed& seed) {
  const FieldSpot field = field_at(place, seed);
  const double to_edge = std::fmin(std::abs(field.to_row_edge_m), std::abs(field.to_column_edge_m));
  const bool lane = (field.row_is_lane && std::abs(field.to_row_edge_m) < 16.0) ||
                    (field.column_is_lane && std::abs(field.to_column_edge_m) < 16.0);
  if (to_edge < (lane ? 16.0 : 9.0)) {
    if (chance > 0.80) return 0.0;
    place = onto_hedge(place, field, seed);
    return chance < 0.22 ? 3.0 + 2.8 * size : 1.4 + 0.9 * size;
  }
  if (field.crop == Crop::wood) return chance < 0.85 ? 4.6 + 3.4 * size : 0.0;
  return chance < 0.006 ? 4.0 + 2.5 * size : 0.0;
}

}  // namespace

void plants_in(const ChunkKey& key, const LandSeed& seed, std::vector<Plant>& plants) {
  plants.clear();
  const Spot corner = key.corner();
  const double apart = key.size_m() / kAlong;
  for (int i = 0; i < kAlong; ++i)
    for (int j = 0; j < kAlong && plants.size() < kMostPlants; ++j) {
      const int row = key.row * kAlong + i, column = key.column * kAlong + j;
      const auto draw = [&](std::uint32_t what) { return mixed_share(row, column, seed.salt + 300u + what); };
      Spot place{corner.north_m + (i + draw(1)) * apart, corner.east_m + (j + draw(2)) * apart};
      const double radius = grown_m(place, draw(3), draw(4), seed);
      if (radius <= 0.0 || !free_ground(place, seed)) continue;
      plants.push_back({static_cast<float>(place.north_m - corner.north_m),
                        static_cast<float>(place.east_m - corner.east_m),
                        static_cast<float>(ground_height_m(place.north_m, place.east_m, seed)),
                        static_cast<float>(radius), static_cast<float>(draw(5))});
    }
}

}  // namespace stallwright::outside
