#include <catch2/catch.hpp>

#include "aircraft/type_file.hpp"
#include "render/view/outside_from.hpp"
#include "sim/crew/pilot_grade.hpp"
#include "sim/sortie/test_card_file.hpp"

using namespace stallwright;

namespace {

SortieConfig config(const char* type) {
  SortieConfig c;
  c.type = load_aircraft_type(find_aircraft_file(type));
  c.loading = default_loading(c.type);
  c.card = load_test_card(find_card_file("short"));
  return c;
}

/// About the body's down axis (yaw) or right axis (pitch).
Quaternion<double> yawed(double deg) {
  const double half = 0.5 * deg * math::kDegree;
  return {std::cos(half), 0.0, 0.0, std::sin(half)};
}
Quaternion<double> pitched(double deg) {
  const double half = 0.5 * deg * math::kDegree;
  return {std::cos(half), 0.0, std::sin(half), 0.0};
}

double heading_deg(const view::OutsideView& v) {
  const auto& q = v.attitude_EB;
  return std::atan2(2.0 * (q[0] * q[3] + q[1] * q[2]), 1.0 - 2.0 * (q[2] * q[2] + q[3] * q[3])) /
         math::kDegree;
}

}  // namespace

TEST_CASE("between two snapshots the eye is part of the way, attitude by the shorter turn",
          "[view][outside]") {
  Seen seen;
  seen.before.rigid.position_E_m = {0.0, 0.0, -900.0};
  seen.now.rigid.position_E_m = {10.0, -4.0, -902.0};
  seen.before.rigid.attitude_EB = yawed(350.0);
  seen.now.rigid.attitude_EB = yawed(10.0);
  seen.before.time_s = 3.0;
  seen.now.time_s = 3.02;
  view::OutsideView v;
  for (const double share : {0.0, 0.5, 1.0}) {
    seen.share = share;
    view::place_eye(seen, {0.0, 0.0, 0.0}, 0.0, 0.0, v);
    CAPTURE(share);
    CHECK(v.eye_E_m[0] == Approx(10.0 * share));
    CHECK(v.eye_E_m[1] == Approx(-4.0 * share));
    CHECK(v.eye_E_m[2] == Approx(-900.0 - 2.0 * share));
    CHECK(heading_deg(v) == Approx(-10.0 + 20.0 * share).margin(1e-9));
    CHECK(v.time_s == Approx(3.0 + 0.02 * share));
  }
  // The same attitude with the other sign is the same attitude.
  seen.share = 0.5;
  seen.now.rigid.attitude_EB = {-seen.now.rigid.attitude_EB.w, 0.0, 0.0, -seen.now.rigid.attitude_EB.z};
  view::place_eye(seen, {0.0, 0.0, 0.0}, 0.0, 0.0, v);
  CHECK(heading_deg(v) == Approx(0.0).margin(1e-9));
}

TEST_CASE("the eye goes with the nose: ahead of the centre of gravity it rises with it", "[view][outside]") {
  Seen seen;
  seen.before.rigid.attitude_EB = seen.now.rigid.attitude_EB = pitched(30.0);
  view::OutsideView v;
  view::place_eye(seen, {2.0, 0.0, 0.0}, 0.0, 0.0, v);
  CHECK(v.eye_E_m[0] == Approx(2.0 * std::cos(30.0 * math::kDegree)));
  CHECK(v.eye_E_m[2] == Approx(-1.0));
}

TEST_CASE("eyes are above the seat and the centre of gravity in each aeroplane", "[view][outside]") {
  for (const char* type : {"marram", "sarsen", "tarnfell"}) {
    CAPTURE(type);
    const SortieConfig c = config(type);
    const Vec3<double> eye = view::eye_place(c);
    CHECK(-eye.z > 0.3);
    CHECK(-eye.z < 1.2);
    CHECK(std::abs(eye.x) < 2.0);
    CHECK(std::abs(eye.y) < 0.5);
  }
}

TEST_CASE("the head shakes with the seat, nods with it, and never by more than its neck allows",
          "[view][outside]") {
  Seen seen;
  view::OutsideView still, v;
  const Vec3<double> eye{0.5, 0.0, -0.8};
  view::place_eye(seen, eye, 20.0, -5.0, still);
  CHECK(still.look_up_deg == -5.0);
  CHECK(still.look_right_deg == 20.0);
  seen.now.seat_shake_mps2 = {0.0, 0.0, 0.3};  // 0.03 g: buffet that is felt for sure
  view::place_eye(seen, eye, 20.0, -5.0, v);
  CHECK(v.eye_E_m[2] - still.eye_E_m[2] > 0.0005);
  CHECK(v.look_up_deg - still.look_up_deg < -0.1);
  for (const double hard : {-500.0, 500.0}) {
    seen.now.seat_shake_mps2 = {hard, hard, hard};
    view::place_eye(seen, eye, 20.0, -5.0, v);
    for (std::size_t k = 0; k < 3; ++k) CHECK(std::abs(v.eye_E_m[k] - still.eye_E_m[k]) <= 0.0151);
    CHECK(std::abs(v.look_up_deg - still.look_up_deg) <= 1.0);
  }
}

TEST_CASE("the world's sky follows the hour, its ground the card", "[view][outside]") {
  SortieConfig c = config("marram");
  c.card.terrain_ft = 1000.0;
  const view::OutsideView morning = view::outside_of(c, 6.5), noon = view::outside_of(c, 12.0),
                          evening = view::outside_of(c, 18.0), night = view::outside_of(c, 23.0);
  CHECK(morning.terrain_m == Approx(304.8));
  CHECK(noon.sun_elevation_deg > morning.sun_elevation_deg);
  CHECK(morning.sun_azimuth_deg < 180.0);
  CHECK(evening.sun_azimuth_deg > 180.0);
  CHECK(night.sun_elevation_deg == 2.0);  // nobody flies a card in the dark
  CHECK(morning.visibility_m < noon.visibility_m);
  CHECK(noon.half_span_m == Approx(c.type.wing.stations.back().span_m));
}
