#pragma once
#include <cstdint>
#include <vector>

#include "render/outside/land.hpp"

namespace stallwright::outside {

/// One cumulus, as a flat picture that turns to the eye.
struct Cloud {
  float north_m, east_m, up_m;  ///< of the middle of its base, from the eye
  float half_width_m, height_m;
  float picture, flipped;  ///< which picture; -1 mirrored, 1 as it is
  float cover;             ///< 0 .. 1: far clouds fade in
};

struct CloudSky {
  Spot eye;
  double eye_height_m = 0.0, base_m = 1800.0;  ///< over the terrain's level
  double cover = 0.15;
  Spot drift;  ///< how far the wind has carried the air, m
  double reach_m = 26000.0;
};

inline constexpr int kCloudPictures = 6;

/// Clouds within reach, farthest first, into `clouds` (cleared; grows only when it must). They stand in the air, so they move
/// with the drift and not with the eye. Pure otherwise.
void clouds_about(const CloudSky& sky, std::uint32_t salt, std::vector<Cloud>& clouds);

}  // namespace stallwright::outside
