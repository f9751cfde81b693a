#pragma once
#include <array>
#include <cstdint>

#include "render/outside/camera.hpp"
#include "render/outside/land.hpp"
#include "render/outside/light.hpp"
#include "render/view/outside_view.hpp"

namespace stallwright::outside {

using Four = std::array<float, 4>;

/// The uniform block `Frame` of assets/shaders/frame.glsl, laid out as std140 wants it.
struct Frame {
  std::array<float, 16> clip_from_E{}, clip_from_B{};
  Four ray_right{}, ray_up{}, ray_ahead{};
  Four eye{};
  Four to_sun{}, to_sun_B{};
  Four sun{}, sky{}, zenith{}, horizon{}, haze{}, glow{};
  Four phase_low{}, phase_high{};
  Four runway{};
  std::array<std::uint32_t, 4> salt{};
};

/// What the frame's shaders share, from the view and what was made of it.
Frame frame_of(const view::OutsideView& view, const Camera& camera, const Light& light, const LandSeed& seed);

/// Height of the eye over the level of the terrain, m.
inline double eye_height_m(const view::OutsideView& view) { return -view.eye_E_m[2] - view.terrain_m; }

}  // namespace stallwright::outside
