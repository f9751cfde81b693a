#include <catch2/catch.hpp>
#include <cmath>

#include "tests/sim/motion/marram.hpp"
#include "tests/sim/motion/stall_entry.hpp"
#include "tests/sim/motion/upsets.hpp"

using namespace stallwright;
using namespace stallwright::testing;

namespace {

FlightState<double> flown(const Aircraft& a, FlightState<double> s, const Controls<double>& c,
                          const AirSample<double>& air, int steps) {
  for (int i = 0; i < steps; ++i) s = flight_step(a, s, c, air);
  return s;
}

double worst_memory_difference(const FlightState<double>& a, const FlightState<double>& b) {
  const auto x = std::bit_cast<AsArray<double, AirframeState<double>>>(a.airframe);
  const auto y = std::bit_cast<AsArray<double, AirframeState<double>>>(b.airframe);
  double worst = 0.0;
  for (std::size_t i = 0; i < x.size(); ++i) worst = std::max(worst, std::abs(x[i] - y[i]));
  return worst;
}

}  // namespace

TEST_CASE("a steady wind moves the ground track by its speed and changes nothing else",
          "[motion][invariant]") {
  // Through a stall. The velocity is kept in body axes, so the turning of the wind in them is integrated too:
  // RK4's error in that, about 1e-8, is the tolerance of 1e-6; the law itself is exact.
  const Aircraft a = marram(7);
  const Flight f = stall_entry(a, 24.0, 0.9);
  AirSample<double> wind;
  wind.wind_E_mps = {8.0, -5.0, 0.0};
  FlightState<double> carried = f.state;
  carried.rigid.velocity_B_mps += transpose(rotation_EB(carried.rigid.attitude_EB)) * wind.wind_E_mps;
  const auto still = flown(a, f.state, f.controls, AirSample<double>{}, 500);
  const auto blown = flown(a, carried, f.controls, wind, 500);
  CHECK(norm(blown.rigid.position_E_m - still.rigid.position_E_m - wind.wind_E_mps * 5.0) < 1e-6);
  CHECK(norm(blown.rigid.rate_B_radps - still.rigid.rate_B_radps) < 1e-6);
  CHECK(worst_memory_difference(blown, still) < 1e-6);
  const Vec3<double> through_air =
      blown.rigid.velocity_B_mps - transpose(rotation_EB(blown.rigid.attitude_EB)) * wind.wind_E_mps;
  CHECK(norm(through_air - still.rigid.velocity_B_mps) < 1e-6);
}

TEST_CASE("where the flight starts and which way it heads change nothing but the track",
          "[motion][invariant]") {
  const Aircraft a = marram(7);
  const Flight f = stall_entry(a, 24.0, 0.9);
  FlightState<double> turned = f.state;
  const double heading = 2.2;
  EulerAngles<double> e = euler_angles(turned.rigid.attitude_EB);
  e.yaw_rad += heading;
  turned.rigid.attitude_EB = quaternion(e);
  turned.rigid.position_E_m += Vec3<double>{1234.0, -987.0, 0.0};
  const auto one = flown(a, f.state, f.controls, AirSample<double>{}, 500);
  const auto other = flown(a, turned, f.controls, AirSample<double>{}, 500);
  CHECK(norm(one.rigid.velocity_B_mps - other.rigid.velocity_B_mps) < 1e-9);
  CHECK(worst_memory_difference(one, other) < 1e-9);
  const Vec3<double> went = one.rigid.position_E_m - f.state.rigid.position_E_m;
  const Vec3<double> other_went = other.rigid.position_E_m - turned.rigid.position_E_m;
  CHECK(other_went.x == Approx(went.x * std::cos(heading) - went.y * std::sin(heading)).margin(1e-9));
  CHECK(other_went.y == Approx(went.x * std::sin(heading) + went.y * std::cos(heading)).margin(1e-9));
}

TEST_CASE("a gust is felt as the opposite motion: an upgust as a descent, a rolling gust as a roll",
          "[motion][invariant]") {
  const Aircraft a = marram(7);
  const Flight f = glide(a, 30.0);
  AirSample<double> air;
  air.gust_B_mps = {0.7, -0.4, -1.5};
  air.gust_rate_B_radps = {0.1, -0.05, 0.07};
  FlightState<double> moved = f.state;
  moved.rigid.velocity_B_mps -= air.gust_B_mps;
  moved.rigid.rate_B_radps -= air.gust_rate_B_radps;
  const auto gusty = airframe_loads(a, f.state.airframe, relative_flow(f.state.rigid, air), f.controls);
  const auto moving =
      airframe_loads(a, moved.airframe, relative_flow(moved.rigid, AirSample<double>{}), f.controls);
  const auto calm =
      airframe_loads(a, f.state.airframe, relative_flow(f.state.rigid, AirSample<double>{}), f.controls);
  CHECK(norm(gusty.force_B - moving.force_B) < 1e-9);
  CHECK(norm(gusty.moment_B - moving.moment_B) < 1e-9);
  CHECK(gusty.force_B.z < calm.force_B.z - 100.0);
}

TEST_CASE("the attitude stays a unit quaternion and a rotation", "[motion][invariant]") {
  const Aircraft a = marram(7);
  Draw draw(5);
  FlightState<double> s = any_state(a, draw);
  for (int i = 0; i < 1000; ++i) {
    s = flight_step(a, s, Controls<double>{}, AirSample<double>{});
    const Quaternion<double>& q = s.rigid.attitude_EB;
    REQUIRE(std::abs(q.w * q.w + q.x * q.x + q.y * q.y + q.z * q.z - 1.0) < 4e-15);
  }
  const Mat3<double> r = rotation_EB(s.rigid.attitude_EB), unit = r * transpose(r);
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) CHECK(unit(i, j) == Approx(i == j ? 1.0 : 0.0).margin(1e-14));
}

TEST_CASE("Euler angles and quaternions turn into each other, nose up and down included", "[motion]") {
  for (const double yaw : {-3.0, -0.4, 0.0, 1.7, 3.1})
    for (const double pitch : {-1.55, -0.8, 0.0, 0.3, 1.55})
      for (const double roll : {-3.1, -1.0, 0.0, 0.6, 2.9}) {
        const auto e = euler_angles(quaternion(EulerAngles<double>{yaw, pitch, roll}));
        CAPTURE(yaw, pitch, roll);
        // asin loses digits near the poles: 1e-16/cos(1.55) twice over.
        CHECK(e.yaw_rad == Approx(yaw).margin(1e-12));
        CHECK(e.pitch_rad == Approx(pitch).margin(1e-12));
        CHECK(e.roll_rad == Approx(roll).margin(1e-12));
      }
  const auto straight_up = euler_angles(quaternion(EulerAngles<double>{0.5, 0.5 * math::kPi, 0.0}));
  CHECK(straight_up.pitch_rad == Approx(0.5 * math::kPi).margin(1e-7));
}

TEST_CASE("yaw, pitch and roll turn the body axes the way their names say", "[motion]") {
  const auto axes = [](double yaw, double pitch, double roll) {
    return rotation_EB(quaternion(EulerAngles<double>{yaw, pitch, roll}));
  };
  const Vec3<double> nose{1.0, 0.0, 0.0}, right{0.0, 1.0, 0.0};
  CHECK((axes(0.1, 0.0, 0.0) * nose).y > 0.0);   // nose to the east of north: to the right
  CHECK((axes(0.0, 0.1, 0.0) * nose).z < 0.0);   // nose up
  CHECK((axes(0.0, 0.0, 0.1) * right).z > 0.0);  // right wing down
  // And the rates p, q, r turn them so.
  for (const std::size_t which : {0u, 1u, 2u}) {
    RigidState<double> s;
    (which == 0 ? s.rate_B_radps.x : which == 1 ? s.rate_B_radps.y : s.rate_B_radps.z) = 0.3;
    const Inertia<double> ball{1.0, Mat3<double>::identity(), Mat3<double>::identity()};
    for (int i = 0; i < 100; ++i)
      s = runge_kutta_step(s, 0.01, [&](const RigidState<double>& at) {
        return rigid_rates(at, ball, Wrench<double>{}, 0.0);
      });
    const auto e = euler_angles(s.attitude_EB);
    CHECK(e.roll_rad == Approx(which == 0 ? 0.3 : 0.0).margin(1e-12));
    CHECK(e.pitch_rad == Approx(which == 1 ? 0.3 : 0.0).margin(1e-12));
    CHECK(e.yaw_rad == Approx(which == 2 ? 0.3 : 0.0).margin(1e-12));
  }
}

TEST_CASE("a body that nothing holds falls as gravity says", "[motion]") {
  RigidState<double> s;
  s.attitude_EB = quaternion(EulerAngles<double>{0.4, -0.9, 2.0});
  s.velocity_B_mps = transpose(rotation_EB(s.attitude_EB)) * Vec3<double>{3.0, 0.0, -20.0};
  s.rate_B_radps = {0.5, -0.7, 0.9};
  const Inertia<double> ball{5.0, Mat3<double>::identity(), Mat3<double>::identity()};
  for (int i = 0; i < 300; ++i)
    s = runge_kutta_step(
        s, 0.01, [&](const RigidState<double>& at) { return rigid_rates(at, ball, Wrench<double>{}, 9.8); });
  CHECK(s.position_E_m.x == Approx(9.0).margin(1e-7));
  CHECK(s.position_E_m.z == Approx(-60.0 + 0.5 * 9.8 * 9.0).margin(1e-7));
}
