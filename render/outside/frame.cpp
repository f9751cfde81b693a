#include "render/outside/frame.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "render/outside/noise.hpp"

namespace stallwright::outside {
namespace {

Four four(const Eigen::Vector3f& v, float last = 0.0f) { return {v.x(), v.y(), v.z(), last}; }

void copy_matrix(const Eigen::Matrix4f& from, std::array<float, 16>& to) {
  std::copy(from.data(), from.data() + 16, to.begin());
}

}  // namespace

Frame frame_of(const view::OutsideView& view, const Camera& camera, const Light& light,
               const LandSeed& seed) {
  Frame frame;
  copy_matrix(camera.clip_from_E, frame.clip_from_E);
  copy_matrix(camera.clip_from_B, frame.clip_from_B);
  frame.ray_right = four(camera.right_E * camera.half_width);
  frame.ray_up = four(camera.up_E * camera.half_height);
  frame.ray_ahead = four(camera.ahead_E);
  frame.eye = {static_cast<float>(view.eye_E_m[0]), static_cast<float>(view.eye_E_m[1]),
               static_cast<float>(eye_height_m(view)), static_cast<float>(std::fmod(view.time_s, 3600.0))};
  const auto clear = static_cast<float>(1.0 - smooth_step(0.5, 0.95, view.cloud_cover));
  frame.to_sun = four(light.to_sun_E, clear);
  frame.to_sun_B = four(camera.R_EB.transpose() * light.to_sun_E, clear);
  frame.sun = four(light.sun);
  frame.sky = four(light.sky);
  frame.zenith = four(light.zenith);
  frame.horizon = four(light.horizon);
  frame.haze = four(light.haze, light.extinction_per_m);
  frame.glow = four(light.glow);
  std::copy_n(seed.phase_rad.begin(), 4, frame.phase_low.begin());
  std::copy_n(seed.phase_rad.begin() + 4, 4, frame.phase_high.begin());
  const double heading = Airfield::kHeading_deg * std::numbers::pi / 180.0;
  frame.runway = {static_cast<float>(Airfield::kMiddle.north_m), static_cast<float>(Airfield::kMiddle.east_m),
                  static_cast<float>(std::cos(heading)), static_cast<float>(std::sin(heading))};
  frame.salt = {seed.salt, 0u, 0u, 0u};
  return frame;
}

}  // namespace stallwright::outside
