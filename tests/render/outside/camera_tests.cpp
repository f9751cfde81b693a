#include <Eigen/Geometry>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "render/outside/camera.hpp"
#include "render/outside/light.hpp"

namespace outside = stallwright::outside;
using Catch::Matchers::WithinAbs;
using stallwright::view::OutsideView;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

OutsideView attitude(double heading_deg, double pitch_deg, double bank_deg) {
  const Eigen::Quaterniond q = Eigen::AngleAxisd(heading_deg * kDegree, Eigen::Vector3d::UnitZ()) *
                               Eigen::AngleAxisd(pitch_deg * kDegree, Eigen::Vector3d::UnitY()) *
                               Eigen::AngleAxisd(bank_deg * kDegree, Eigen::Vector3d::UnitX());
  OutsideView view;
  view.attitude_EB = {q.w(), q.x(), q.y(), q.z()};
  return view;
}

Eigen::Vector3f level_direction(double azimuth_deg) {
  return {static_cast<float>(std::cos(azimuth_deg * kDegree)),
          static_cast<float>(std::sin(azimuth_deg * kDegree)), 0.0f};
}

constexpr double kWide = 1.6;

}  // namespace

TEST_CASE("a level eye has the whole horizon on the centre line", "[outside][camera]") {
  const auto camera = outside::camera_of(attitude(70.0, 0.0, 0.0), kWide);
  for (const double azimuth_deg : {40.0, 55.0, 70.0, 99.0}) {
    const auto at = outside::seen_at(camera, level_direction(azimuth_deg));
    INFO("azimuth " << azimuth_deg << " deg");
    CHECK_THAT(at.y(), WithinAbs(0.0, 1e-6));
    CHECK((at.x() > 0.0f) == (azimuth_deg > 70.0));
  }
}

TEST_CASE("nose up puts the horizon below the centre by the tangent of the pitch", "[outside][camera]") {
  const auto camera = outside::camera_of(attitude(20.0, 10.0, 0.0), kWide);
  const auto at = outside::seen_at(camera, level_direction(20.0));
  CHECK_THAT(at.y(), WithinAbs(-std::tan(10.0 * kDegree) / std::tan(24.0 * kDegree), 1e-5));
}

TEST_CASE("ten degrees of right bank lift the horizon's right end by ten degrees", "[outside][camera]") {
  const auto camera = outside::camera_of(attitude(0.0, 0.0, 10.0), kWide);
  const auto right = outside::seen_at(camera, level_direction(20.0)),
             left = outside::seen_at(camera, level_direction(-20.0));
  const double slope = (right.y() - left.y()) / ((right.x() - left.x()) * kWide);
  CHECK_THAT(std::atan(slope) / kDegree, WithinAbs(10.0, 1e-3));
}

TEST_CASE("the head turns right and up from straight ahead", "[outside][camera]") {
  auto view = attitude(0.0, 0.0, 0.0);
  view.look_right_deg = 90.0;
  CHECK_THAT(outside::camera_of(view, kWide).ahead_E.y(), WithinAbs(1.0, 1e-6));
  view.look_up_deg = 20.0;
  const auto camera = outside::camera_of(view, kWide);
  CHECK_THAT(camera.ahead_E.z(), WithinAbs(-std::sin(20.0 * kDegree), 1e-6));
  CHECK_THAT(camera.ahead_E.y(), WithinAbs(std::cos(20.0 * kDegree), 1e-6));
}

TEST_CASE("the matrices and seen_at agree, and E turns into B by the attitude", "[outside][camera]") {
  auto view = attitude(130.0, 7.0, -25.0);
  view.look_right_deg = -30.0;
  const auto camera = outside::camera_of(view, kWide);
  const Eigen::Vector3f in_B(5.0f, -2.5f, 0.7f);
  const Eigen::Vector3f in_E = camera.R_EB * in_B;
  const Eigen::Vector4f a = camera.clip_from_E * in_E.homogeneous(),
                        b = camera.clip_from_B * in_B.homogeneous();
  const auto at = outside::seen_at(camera, in_E);
  CHECK_THAT(a.x() / a.w(), WithinAbs(at.x(), 1e-5));
  CHECK_THAT(a.y() / a.w(), WithinAbs(at.y(), 1e-5));
  CHECK_THAT(b.x() / b.w(), WithinAbs(at.x(), 1e-5));
  CHECK_THAT(b.y() / b.w(), WithinAbs(at.y(), 1e-5));
}

TEST_CASE("an attitude of no length is taken as level, and the field of view is kept within bounds",
          "[outside][camera]") {
  OutsideView view;
  view.attitude_EB = {0.0, 0.0, 0.0, 0.0};
  view.field_of_view_deg = 400.0;
  const auto camera = outside::camera_of(view, kWide);
  CHECK(camera.ahead_E.x() == 1.0f);
  CHECK_THAT(camera.half_height, WithinAbs(std::tan(60.0 * kDegree), 1e-5));
}

TEST_CASE("what is ahead lies within the picture's sides, what is behind does not", "[outside][camera]") {
  const auto camera = outside::camera_of(attitude(0.0, 0.0, 0.0), kWide);
  const auto within = [&](const Eigen::Vector3f& place) {
    for (const auto& side : camera.sides())
      if (side.dot(place.homogeneous()) < 0.0f) return false;
    return true;
  };
  CHECK(within({1000.0f, 0.0f, 100.0f}));
  CHECK_FALSE(within({-1000.0f, 0.0f, 100.0f}));
  CHECK_FALSE(within({1000.0f, 900.0f, 0.0f}));
  CHECK_FALSE(within({1000.0f, 0.0f, -500.0f}));
}

TEST_CASE("low sun is weaker and warmer than high sun, and haze is darker than the sky it meets",
          "[outside][light]") {
  const auto low = outside::light_of(70.0, 4.0, 30000.0, 0.1),
             high = outside::light_of(180.0, 55.0, 30000.0, 0.1);
  CHECK(low.sun.sum() < high.sun.sum());
  CHECK(low.sun.x() / low.sun.z() > 1.5f * high.sun.x() / high.sun.z());
  for (double elevation_deg = -20.0; elevation_deg <= 70.0; elevation_deg += 5.0)
    for (const double cover : {0.0, 0.5, 1.0}) {
      const auto light = outside::light_of(120.0, elevation_deg, 30000.0, cover);
      INFO("sun at " << elevation_deg << " deg, cover " << cover);
      CHECK(light.haze.sum() < 0.93f * light.horizon.sum());
    }
}

TEST_CASE("five per cent of the contrast is left at the visibility", "[outside][light]") {
  for (const double visibility_m : {3000.0, 30000.0}) {
    const auto light = outside::light_of(120.0, 30.0, visibility_m, 0.0);
    CHECK_THAT(std::exp(-light.extinction_per_m * visibility_m), WithinAbs(0.05, 0.001));
  }
}

TEST_CASE("the sun's direction is north-east-down", "[outside][light]") {
  const auto light = outside::light_of(90.0, 30.0, 30000.0, 0.0);
  CHECK_THAT(light.to_sun_E.x(), WithinAbs(0.0, 1e-6));
  CHECK_THAT(light.to_sun_E.y(), WithinAbs(std::cos(30.0 * kDegree), 1e-6));
  CHECK_THAT(light.to_sun_E.z(), WithinAbs(-0.5, 1e-6));
}
