#pragma once
#include <array>
#include <cstdint>

namespace stallwright::outside {

/// A place on the ground, earth axes, m.
struct Spot {
  double north_m = 0.0, east_m = 0.0;
};

/// What the world's seed decides, drawn once. The shaders get the same numbers.
struct LandSeed {
  explicit LandSeed(std::uint64_t world_seed);
  std::uint32_t salt = 0;
  std::array<float, 8> phase_rad{};  ///< of the waves that bend hedges and the river
};

/// The invented airfield: one runway, near where flights begin.
struct Airfield {
  static constexpr Spot kMiddle{1500.0, 700.0};
  static constexpr double kHeading_deg = 70.0, kLength_m = 820.0, kWidth_m = 20.0;
  static constexpr double kFlat_m = 1300.0;  ///< radius that is dead level, at the height of the terrain
  static constexpr double kHalfAlong_m = 520.0, kHalfAcross_m = 190.0;  ///< of the mown ground
  /// Along the runway and to the right of it, from its middle.
  static Spot local(Spot place);
  static Spot place(double along_m, double across_m);
};

/// Height of the ground over the level that a flight calls its terrain, m; at most 120 within 15 km of the airfield, where
/// rolling ground of about +-20 has hills among it, up to about 450 beyond 30 km; 0 within Airfield::kFlat_m. Pure: the same
/// seed gives the same land, everywhere, without end.
double ground_height_m(double north_m, double east_m, const LandSeed& seed);
double ground_height_m(double north_m, double east_m, std::uint64_t seed);

/// Distance from the middle of the nearest river, m, east positive, and half the river's width there (it widens to lakes).
struct RiverSpot {
  double offset_m = 0.0, half_width_m = 0.0;
};
RiverSpot river_at(Spot place, const LandSeed& seed);

/// What grows in a field. The order is that of the colours in assets/shaders/land.glsl.
enum class Crop : std::uint8_t { pasture, hay, wheat, barley, ploughed, oilseed, fallow, wood };

/// The field at a place. Fields lie in rows and columns of unequal width, bent by long waves; every sixth edge is a lane.
struct FieldSpot {
  double to_row_edge_m = 0.0, to_column_edge_m = 0.0;  ///< signed, north and east of the nearest edge
  bool row_is_lane = false, column_is_lane = false;    ///< what that edge is
  std::int32_t row = 0, column = 0;
  Crop crop = Crop::pasture;
};
FieldSpot field_at(Spot place, const LandSeed& seed);

/// Woods that keep to no hedge: positive within one, negative outside, by a sum of waves.
double free_wood(Spot place, const LandSeed& seed);

inline constexpr double kRow_m = 215.0, kColumn_m = 290.0;  ///< mean size of a field
inline constexpr int kLaneEvery = 6;                        ///< edges

/// Where the bent rows and columns put a place.
Spot bent(Spot place, const LandSeed& seed);

/// A place whose bent coordinates are these, to within a few cm.
Spot unbent(Spot bent_place, const LandSeed& seed);

}  // namespace stallwright::outside
