// Spheres and a brick dropped from 30,000 ft at the equator, cases 01, 02, 04, 06 and 07 of NASA's check cases
// [NESC-2015], flown by our equations of motion in our standard atmosphere. Those of a flat earth are Newton's in any
// Cartesian axes: the cases' own gravitation goes in as gravity (case 04), or with centrifugal and Coriolis force as a
// force (rotating earth). Limits: the equator only, where the ellipsoid is a circle and nothing goes north.
#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "sim/air/standard_atmosphere.hpp"
#include "sim/motion/flight.hpp"
#include "sim/motion/runge_kutta.hpp"
#include "tests/published/csv_rows.hpp"
#include "tests/published/evidence.hpp"
#include "tests/published/rotating_earth.hpp"

using namespace stallwright;
using namespace stallwright::published;
using evidence::Published;
using evidence::WorstRow;

namespace {

constexpr double kDeg = math::kDegree, kSlug_kg = 14.59390294;
constexpr double kArea_m2 = 0.1963495 * kFoot * kFoot, kInertia_kgm2 = 3.6 * kSlug_kg * kFoot * kFoot;

struct Fall {
  FallingEarth earth = kWgs84;
  double drag_coefficient = 0.1, wind_east_mps = 0.0;
  Vec3<double> rate_B_radps{-kWgs84.spin_radps, 0.0, 0.0};  ///< at rest against the stars
  double constant_gravity_mps2 = 0.0;                       ///< above zero: instead of the earth's own
};

Inertia<double> principal(double mass_kg, double a, double b, double c) {
  return {mass_kg, Mat3<double>::diagonal(a, b, c), Mat3<double>::diagonal(1.0 / a, 1.0 / b, 1.0 / c)};
}

RigidState<double> rates(const Fall& fall, const RigidState<double>& s) {
  const Inertia<double> body = principal(kSlug_kg, kInertia_kgm2, kInertia_kgm2, kInertia_kgm2);
  const Mat3<double> r_EB = rotation_EB(s.attitude_EB);
  const auto in_body = [&](const Vec3<double>& v_E) {
    return Vec3<double>{dot(r_EB.column(0), v_E), dot(r_EB.column(1), v_E), dot(r_EB.column(2), v_E)};
  };
  const double height = height_m(fall.earth, s.position_E_m);
  const Vec3<double> wind_E = local_axes(fall.earth, s.position_E_m).east * fall.wind_east_mps;
  const Vec3<double> air_B = s.velocity_B_mps - in_body(wind_E);
  Wrench<double> on;
  on.force_B_n = air_B * (-0.5 * atmosphere(Day{}, height).density_kgpm3 * norm(air_B) * kArea_m2 *
                          fall.drag_coefficient);
  if (fall.constant_gravity_mps2 > 0.0) return rigid_rates(s, body, on, fall.constant_gravity_mps2);
  if (fall.earth.spin_radps == 0.0)
    return rigid_rates(s, body, on, gravitation(fall.earth, fall.earth.radius_m + height));
  on.force_B_n =
      on.force_B_n +
      in_body(apparent_acceleration(fall.earth, s.position_E_m, r_EB * s.velocity_B_mps)) * kSlug_kg;
  return rigid_rates(s, body, on, 0.0);
}

RigidState<double> fallen(const Fall& fall, double time_s) {
  RigidState<double> s;
  s.position_E_m = {0.0, 0.0, -30000.0 * kFoot};
  s.rate_B_radps = fall.rate_B_radps;
  for (int i = 0; i < static_cast<int>(std::lround(time_s / kStep_s)); ++i) {
    s = runge_kutta_step(s, kStep_s, [&](const RigidState<double>& at) { return rates(fall, at); });
    s.attitude_EB = normalised(s.attitude_EB);
  }
  return s;
}

double longitude_rad(const FallingEarth& earth, const Vec3<double>& position_E_m) {
  const Vec3<double> r = from_centre(earth, position_E_m);
  return std::atan2(r.y, -r.z);
}

/// Holds every time and tool of a case; a tool that publishes no angles is compared without.
void hold_case(const std::string& number, const Fall& fall, double height_ft, double speed_ftps,
               const char* reason) {
  WorstRow height, east, down, yaw, pitch, roll;
  for (const auto& cells : csv_cells("nesc_falls.csv")) {
    if (cells[0] != number) continue;
    const RigidState<double> s = fallen(fall, csv_number(cells[2]));
    const LocalAxes axes = local_axes(fall.earth, s.position_E_m);
    const Vec3<double> v_E = rotation_EB(s.attitude_EB) * s.velocity_B_mps;
    const std::string at = cells[2] + " s, tool " + cells[1];
    height.row(at, height_m(fall.earth, s.position_E_m) / kFoot - csv_number(cells[3]), 0.0, height_ft);
    east.difference(at, dot(v_E, axes.east) / kFoot, csv_number(cells[4]), speed_ftps);
    down.row(at, dot(v_E, axes.down) / kFoot - csv_number(cells[5]), 0.0, speed_ftps);
    if (cells[6].empty()) continue;
    const EulerAngles<double> e =
        euler_angles(turned_about_north(s.attitude_EB, longitude_rad(fall.earth, s.position_E_m)));
    yaw.difference(at, e.yaw_rad / kDeg, csv_number(cells[6]), 1e-6);
    pitch.difference(at, e.pitch_rad / kDeg, csv_number(cells[7]), 1e-6);
    roll.difference(at, e.roll_rad / kDeg, csv_number(cells[8]), 1e-6);
  }
  const std::string where = "case " + number + ", every fifth second to 30 s";
  const Published source{"NESC-2015", where.c_str(), "read"};
  height.hold(source, "case " + number + ", altitude less published", "ft", reason);
  east.hold(source, "case " + number + ", speed east", "ft/s", reason);
  down.hold(source, "case " + number + ", speed down less published", "ft/s", reason);
  yaw.hold(source, "case " + number + ", yaw", "deg", "the tools agree to 1e-7");
  pitch.hold(source, "case " + number + ", pitch", "deg", "the tools agree to 1e-7");
  roll.hold(source, "case " + number + ", roll", "deg", "the tools agree to 1e-7");
}

}  // namespace

TEST_CASE("a sphere with drag falls and turns over a round earth at rest as in check case 04",
          "[motion][published]") {
  Fall fall;
  fall.earth = kRound;
  fall.rate_B_radps = {10.0 * kDeg, 20.0 * kDeg, 30.0 * kDeg};
  hold_case("04", fall, 0.02, 0.002, "twice what the tools differ by");
}

TEST_CASE("spheres fall over the rotating earth as in check cases 01, 06 and 07", "[motion][published]") {
  Fall dragless, wind;
  dragless.drag_coefficient = 0.0;
  wind.wind_east_mps = 20.0 * kFoot;
  hold_case("01", dragless, 0.001, 1e-4, "a hundred times what the tools differ by");
  hold_case("06", Fall{}, 0.02, 0.002, "twice what the tools differ by");
  hold_case("07", wind, 0.02, 0.002, "twice what the tools differ by");
}

TEST_CASE("the brick of check case 02 has its published attitude against the turning earth",
          "[motion][published]") {
  const Inertia<double> brick = principal(1.0, 0.001894220, 0.006211019, 0.007194665);
  Fall dragless;
  dragless.drag_coefficient = 0.0;
  WorstRow yaw, pitch, roll;
  for (const auto& cells : csv_cells("nesc_falls.csv")) {
    if (cells[0] != "02") continue;
    const double time = csv_number(cells[2]);
    RigidState<double> s;
    s.rate_B_radps = {10.0 * kDeg, 20.0 * kDeg, 30.0 * kDeg};
    for (int i = 0; i < static_cast<int>(std::lround(time / kStep_s)); ++i) {
      s = runge_kutta_step(s, kStep_s, [&](const RigidState<double>& at) {
        return rigid_rates(at, brick, Wrench<double>{}, 0.0);
      });
      s.attitude_EB = normalised(s.attitude_EB);
    }
    const double turned =
        kWgs84.spin_radps * time + longitude_rad(kWgs84, fallen(dragless, time).position_E_m);
    const EulerAngles<double> e = euler_angles(turned_about_north(s.attitude_EB, turned));
    const std::string at = cells[2] + " s, tool " + cells[1];
    yaw.difference(at, e.yaw_rad / kDeg, csv_number(cells[6]), 1e-6);
    pitch.difference(at, e.pitch_rad / kDeg, csv_number(cells[7]), 1e-6);
    roll.difference(at, e.roll_rad / kDeg, csv_number(cells[8]), 1e-6);
  }
  const Published source{"NESC-2015", "case 02, every fifth second to 30 s", "read"};
  yaw.hold(source, "case 02, yaw", "deg", "the two tools agree to 1e-7");
  pitch.hold(source, "case 02, pitch", "deg", "the two tools agree to 1e-7");
  roll.hold(source, "case 02, roll", "deg", "the two tools agree to 1e-7");
}

TEST_CASE("over the program's own earth, flat and with standard gravity throughout, the spheres end lower",
          "[motion][published]") {
  // 9.80665 m/s2 against about 9.79 at the equator and up there: 0.2 % of 14,400 ft. A sortie has 3,000 ft.
  Fall dragless, round;
  dragless.drag_coefficient = 0.0;
  dragless.constant_gravity_mps2 = round.constant_gravity_mps2 = kStandardGravity_mps2;
  round.earth = kRound;
  const char* why = "the program's earth is flat, at rest, with 9.80665 m/s2 at every height";
  const auto altitude_ft = [](const Fall& fall) { return -fallen(fall, 30.0).position_E_m.z / kFoot; };
  evidence::show({"NESC-2015", "case 01 at 30 s, tool 04", "read"},
                 "case 01 over the program's own earth, altitude", altitude_ft(dragless), 15598.90435, "ft",
                 why);
  evidence::show({"NESC-2015", "case 04 at 30 s, tool 04", "read"},
                 "case 04 over the program's own earth, altitude", altitude_ft(round), 16231.30592, "ft",
                 why);
}
