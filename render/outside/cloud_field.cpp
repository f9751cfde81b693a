#include "render/outside/cloud_field.hpp"

#include <algorithm>
#include <cmath>

#include "render/outside/noise.hpp"

namespace stallwright::outside {
namespace {

constexpr double kApart_m = 2300.0;  // one place for a cloud in each square of the air

double squared(const Cloud& c) {
  return static_cast<double>(c.north_m) * c.north_m + static_cast<double>(c.east_m) * c.east_m;
}

/// The cloud of one square, from the eye.
Cloud cloud_of(const CloudSky& sky, std::int32_t i, std::int32_t j, std::uint32_t salt) {
  const auto draw = [&](std::uint32_t what) { return mixed_share(i, j, salt + what); };
  const double north = (i + 0.1 + 0.8 * draw(1)) * kApart_m + sky.drift.north_m - sky.eye.north_m;
  const double east = (j + 0.1 + 0.8 * draw(2)) * kApart_m + sky.drift.east_m - sky.eye.east_m;
  const double half = (330.0 + 520.0 * draw(3) * draw(3)) * (1.0 + 1.6 * sky.cover * sky.cover);
  const double away = std::hypot(north, east);
  Cloud cloud{};
  cloud.north_m = static_cast<float>(north);
  cloud.east_m = static_cast<float>(east);
  cloud.up_m = static_cast<float>(sky.base_m + 60.0 * (draw(4) - 0.5) - sky.eye_height_m);
  cloud.half_width_m = static_cast<float>(half);
  cloud.height_m = static_cast<float>(half * (0.55 + 0.4 * draw(5)));
  cloud.picture = static_cast<float>(mixed_bits(i, j, salt + 6) % kCloudPictures);
  cloud.flipped = draw(7) < 0.5 ? -1.0f : 1.0f;
  // Near ones fade too: a picture that fills the view would show that it is flat.
  cloud.cover = static_cast<float>((1.0 - smooth_step(0.75, 1.0, away / sky.reach_m)) *
                                   smooth_step(0.6, 1.6, away / half));
  return cloud;
}

}  // namespace

void clouds_about(const CloudSky& sky, std::uint32_t salt, std::vector<Cloud>& clouds) {
  clouds.clear();
  if (sky.cover <= 0.0) return;
  const double n = sky.eye.north_m - sky.drift.north_m, e = sky.eye.east_m - sky.drift.east_m;
  const auto reach = static_cast<std::int32_t>(std::ceil(sky.reach_m / kApart_m));
  const auto row = static_cast<std::int32_t>(std::floor(n / kApart_m));
  const auto column = static_cast<std::int32_t>(std::floor(e / kApart_m));
  const double share = std::min(1.0, 2.2 * sky.cover);
  for (std::int32_t i = row - reach; i <= row + reach; ++i)
    for (std::int32_t j = column - reach; j <= column + reach; ++j) {
      if (mixed_share(i, j, salt) >= share) continue;
      const Cloud cloud = cloud_of(sky, i, j, salt);
      if (cloud.cover > 0.0f) clouds.push_back(cloud);
    }
  std::sort(clouds.begin(), clouds.end(),
            [](const Cloud& a, const Cloud& b) { return squared(a) > squared(b); });
}

}  // namespace stallwright::outside
