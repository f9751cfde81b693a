#pragma once
#include <Eigen/Core>
#include <array>

#include "render/view/outside_view.hpp"

namespace stallwright::outside {

/// The picture's rectangle in the framebuffer, px, from its lower left corner as OpenGL counts.
struct Viewport {
  int x = 0, y = 0, width = 0, height = 0;
};

/// From the eye's surroundings to the picture. Everything is relative to the eye, so that single precision does far from the
/// origin. Axes: E north-east-down, B forward-right-down.
struct Camera {
  Eigen::Matrix4f clip_from_E, clip_from_B;     ///< OpenGL clip space, -1 .. 1
  Eigen::Matrix3f R_EB;                         ///< takes body to earth
  Eigen::Vector3f ahead_E, right_E, up_E;       ///< of the picture
  float half_width = 1.0f, half_height = 1.0f;  ///< of the picture at distance 1: tangents

  /// Six planes, pointing inwards, of what the picture can show in E; a.x + b.y + c.z + d >= 0.
  std::array<Eigen::Vector4f, 5> sides() const;
};

/// Ranges of depth, m. The world begins beyond the aeroplane's own parts, which are drawn over it.
inline constexpr float kWorldNear_m = 2.0f, kWorldFar_m = 120000.0f, kOwnNear_m = 0.05f, kOwnFar_m = 30.0f;

/// The field of view is kept within 5 .. 120 degrees; an attitude that is not of unit length is made so.
Camera camera_of(const view::OutsideView& view, double width_over_height);

/// Where a direction in E falls, -1 .. 1 to the right and up; behind the eye it has no meaning.
Eigen::Vector2f seen_at(const Camera& camera, const Eigen::Vector3f& direction_E);

}  // namespace stallwright::outside
