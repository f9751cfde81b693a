#include "render/outside/camera.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace stallwright::outside {
namespace {

float radians(double angle_deg) { return static_cast<float>(angle_deg * std::numbers::pi / 180.0); }

Eigen::Matrix3f earth_from_body(const std::array<double, 4>& q) {
  const Eigen::Quaterniond attitude(q[0], q[1], q[2], q[3]);
  if (!(attitude.norm() > 1e-9)) return Eigen::Matrix3f::Identity();
  return attitude.normalized().toRotationMatrix().cast<float>();
}

/// The head turns right about the body's down axis, then up about its own right.
Eigen::Matrix3f body_from_head(double right_deg, double up_deg) {
  return (Eigen::AngleAxisf(radians(right_deg), Eigen::Vector3f::UnitZ()) *
          Eigen::AngleAxisf(radians(up_deg), Eigen::Vector3f::UnitY()))
      .toRotationMatrix();
}

/// OpenGL's eye looks along -z with y up; ours along x with z down.
Eigen::Matrix4f view_matrix(const Eigen::Matrix3f& to_axes) {
  Eigen::Matrix4f view = Eigen::Matrix4f::Identity();
  view.block<1, 3>(0, 0) = to_axes.col(1).transpose();
  view.block<1, 3>(1, 0) = -to_axes.col(2).transpose();
  view.block<1, 3>(2, 0) = -to_axes.col(0).transpose();
  return view;
}

Eigen::Matrix4f projection(float half_width, float half_height, float near_m, float far_m) {
  Eigen::Matrix4f p = Eigen::Matrix4f::Zero();
  p(0, 0) = 1.0f / half_width;
  p(1, 1) = 1.0f / half_height;
  p(2, 2) = -(far_m + near_m) / (far_m - near_m);
  p(2, 3) = -2.0f * far_m * near_m / (far_m - near_m);
  p(3, 2) = -1.0f;
  return p;
}

}  // namespace

std::array<Eigen::Vector4f, 5> Camera::sides() const {
  const auto row = [this](int i) { return Eigen::Vector4f(clip_from_E.row(i).transpose()); };
  return {Eigen::Vector4f(row(3) + row(0)), Eigen::Vector4f(row(3) - row(0)),
          Eigen::Vector4f(row(3) + row(1)), Eigen::Vector4f(row(3) - row(1)),
          Eigen::Vector4f(row(3) + row(2))};
}

Camera camera_of(const view::OutsideView& view, double width_over_height) {
  Camera camera;
  camera.R_EB = earth_from_body(view.attitude_EB);
  const Eigen::Matrix3f R_BH = body_from_head(view.look_right_deg, view.look_up_deg);
  const Eigen::Matrix3f R_EH = camera.R_EB * R_BH;
  camera.ahead_E = R_EH.col(0);
  camera.right_E = R_EH.col(1);
  camera.up_E = -R_EH.col(2);
  camera.half_height = std::tan(0.5f * radians(std::clamp(view.field_of_view_deg, 5.0, 120.0)));
  camera.half_width = camera.half_height * static_cast<float>(width_over_height);
  camera.clip_from_E =
      projection(camera.half_width, camera.half_height, kWorldNear_m, kWorldFar_m) * view_matrix(R_EH);
  camera.clip_from_B =
      projection(camera.half_width, camera.half_height, kOwnNear_m, kOwnFar_m) * view_matrix(R_BH);
  return camera;
}

Eigen::Vector2f seen_at(const Camera& camera, const Eigen::Vector3f& direction_E) {
  const float depth = camera.ahead_E.dot(direction_E);
  return {camera.right_E.dot(direction_E) / (depth * camera.half_width),
          camera.up_E.dot(direction_E) / (depth * camera.half_height)};
}

}  // namespace stallwright::outside
