#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "render/outside/cloud_field.hpp"
#include "render/outside/shell.hpp"

namespace outside = stallwright::outside;
using Catch::Matchers::WithinAbs;
using stallwright::view::OutsideView;

namespace {

/// Angle below level of the highest part of the nose straight ahead: where a pilot sees the cowling end.
double nose_angle(const std::vector<outside::ShellVertex>& shell) {
  double highest = 10.0;
  for (const auto& v : shell)
    if (v.place_B.x() > 1.0f && std::abs(v.place_B.y()) < 0.05f)
      highest = std::min(highest, static_cast<double>(std::atan2(v.place_B.z(), v.place_B.x())));
  return highest;
}

}  // namespace

TEST_CASE("the nose ends where the type file says it does", "[outside][shell]") {
  OutsideView view;
  for (const double drop_m : {0.25, 0.35, 0.45}) {
    view.cowling_drop_m = drop_m;
    const auto shell = outside::make_shell(outside::shell_shape(view));
    INFO("cowling " << drop_m << " m below the eye, nose " << view.eye_to_nose_m << " m ahead");
    CHECK_THAT(nose_angle(shell), WithinAbs(std::atan2(drop_m, view.eye_to_nose_m), 0.012));
  }
}

TEST_CASE("wing tips reach the half span, above a high wing's pilot and below a low wing's",
          "[outside][shell]") {
  OutsideView view;
  view.half_span_m = 5.4;
  for (const bool high : {true, false}) {
    view.high_wing = high;
    const auto shell = outside::make_shell(outside::shell_shape(view));
    const auto tip = std::max_element(shell.begin(), shell.end(), [](const auto& a, const auto& b) {
      return a.place_B.y() < b.place_B.y();
    });
    const auto other = std::min_element(shell.begin(), shell.end(), [](const auto& a, const auto& b) {
      return a.place_B.y() < b.place_B.y();
    });
    CHECK_THAT(tip->place_B.y(), WithinAbs(5.4, 1e-4));
    CHECK_THAT(other->place_B.y(), WithinAbs(-5.4, 1e-4));
    CHECK((tip->place_B.z() < 0.0f) == high);
    // Against the horizon: within 10 degrees of it, so that it can be seen there.
    CHECK(std::abs(std::atan2(tip->place_B.z(), tip->place_B.y())) < 0.17f);
  }
}

TEST_CASE("the propeller's disc stands before the nose and its blades rise above it", "[outside][shell]") {
  const auto shape = outside::shell_shape(OutsideView{});
  const auto disc = outside::propeller_disc(shape);
  CHECK(disc.middle_B.x() > static_cast<float>(shape.eye_to_nose_m));
  CHECK(disc.middle_B.z() - disc.radius_m < static_cast<float>(shape.cowling_drop_m));
}

TEST_CASE("no cover has no clouds, more cover has more, and far ones come first", "[outside][clouds]") {
  outside::CloudSky sky;
  std::vector<outside::Cloud> clouds;
  sky.cover = 0.0;
  outside::clouds_about(sky, 3, clouds);
  CHECK(clouds.empty());
  std::size_t before = 0;
  for (const double cover : {0.1, 0.2, 0.4}) {
    sky.cover = cover;
    outside::clouds_about(sky, 3, clouds);
    CHECK(clouds.size() > before);
    before = clouds.size();
    CHECK(std::is_sorted(clouds.begin(), clouds.end(), [](const auto& a, const auto& b) {
      return std::hypot(a.north_m, a.east_m) > std::hypot(b.north_m, b.east_m);
    }));
  }
}

TEST_CASE("clouds stand in the air: they move with the wind and not with the eye", "[outside][clouds]") {
  outside::CloudSky sky;
  sky.cover = 0.3;
  std::vector<outside::Cloud> still, moved;
  outside::clouds_about(sky, 3, still);
  sky.eye.north_m += 40.0;
  sky.drift.east_m += 25.0;
  outside::clouds_about(sky, 3, moved);
  // One not too near the edge of what is kept.
  const auto& one = *std::find_if(still.begin(), still.end(),
                                  [](const auto& c) { return std::hypot(c.north_m, c.east_m) < 12000.0; });
  CHECK(std::any_of(moved.begin(), moved.end(), [&](const auto& c) {
    return std::abs(c.north_m - (one.north_m - 40.0f)) < 0.1f &&
           std::abs(c.east_m - (one.east_m + 25.0f)) < 0.1f;
  }));
}

TEST_CASE("a cloud's base is at the height asked for, over the terrain", "[outside][clouds]") {
  outside::CloudSky sky;
  sky.cover = 0.3;
  sky.base_m = 1500.0;
  sky.eye_height_m = 900.0;
  std::vector<outside::Cloud> clouds;
  outside::clouds_about(sky, 3, clouds);
  REQUIRE_FALSE(clouds.empty());
  for (const auto& cloud : clouds) CHECK_THAT(cloud.up_m, WithinAbs(600.0, 31.0));
}
