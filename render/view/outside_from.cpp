#include "render/view/outside_from.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "render/flight/seat.hpp"
#include "render/view/sun.hpp"
#include "sim/air/wind.hpp"

namespace stallwright::view {
namespace {

constexpr double kMostShake_m = 0.015;
// A head follows the seat's shake as a mass on a spring of some 3 Hz would: displacement = acceleration over w^2.
constexpr double kNeck_radps = 2.0 * math::kPi * 3.0;
// And it nods on its neck, which the far horizon shows: the picture of a shifted eye alone would stand still.
constexpr double kNeck_m = 0.2, kMostNod_deg = 1.0;

double mixed(double a, double b, double share) { return a + (b - a) * share; }

double shaken(double mps2) {
  return std::clamp(mps2 / (kNeck_radps * kNeck_radps), -kMostShake_m, kMostShake_m);
}

double nod_deg(double down_mps2) {
  return std::clamp(shaken(down_mps2) / kNeck_m / math::kDegree, -kMostNod_deg, kMostNod_deg);
}

}  // namespace

Vec3<double> eye_place(const SortieConfig& config) { return head_place(config.type, config.loading); }

OutsideView outside_of(const SortieConfig& config, double hour) {
  OutsideView view;
  const SunPosition sun = sun_over_the_place(hour);
  view.sun_azimuth_deg = sun.azimuth_deg;
  view.sun_elevation_deg = std::max(sun.elevation_deg, 2.0);
  view.terrain_m = config.card.terrain_ft * kFoot;
  const Vec3<double> wind = wind_velocity_E(config.air.wind, 1500.0);
  view.wind_E_mps = {wind.x, wind.y};
  // Morning haze burns off; where the sun stirs the air there are more clouds, and their base rises.
  view.visibility_m = 22000.0 + 2500.0 * std::clamp(hour - 6.0, 0.0, 8.0);
  if (config.air.convection) {
    view.cloud_cover = std::clamp(0.05 * (hour - 8.0), 0.0, 0.35);
    view.cloud_base_m = 1300.0 + 60.0 * std::clamp(hour - 9.0, 0.0, 6.0);
  } else {
    view.cloud_cover = 0.12;
  }
  view.world_seed = 1;  // the place is the same on every day
  const AircraftType& type = config.type;
  const Station3& seat = type.mass.stations.front().at;
  view.eye_to_nose_m = std::max(seat.x_aft_m - type.propeller.hub.x_aft_m - 0.2, 0.8);
  view.high_wing = type.wing.stations.front().rise_m > 0.3;
  view.half_span_m = type.wing.stations.back().span_m;
  view.wing_chord_m = type.wing.stations.front().chord_m;
  return view;
}

void place_eye(const Seen& seen, const Vec3<double>& eye_B_m, double look_right_deg, double look_up_deg,
               OutsideView& view) {
  const RigidState<double>&a = seen.before.rigid, &b = seen.now.rigid;
  const double s = seen.share;
  const double dot = a.attitude_EB.w * b.attitude_EB.w + a.attitude_EB.x * b.attitude_EB.x +
                     a.attitude_EB.y * b.attitude_EB.y + a.attitude_EB.z * b.attitude_EB.z;
  const double side = dot < 0.0 ? -1.0 : 1.0;
  Quaternion<double> q{
      mixed(a.attitude_EB.w, side * b.attitude_EB.w, s), mixed(a.attitude_EB.x, side * b.attitude_EB.x, s),
      mixed(a.attitude_EB.y, side * b.attitude_EB.y, s), mixed(a.attitude_EB.z, side * b.attitude_EB.z, s)};
  q = normalised(q);
  const Vec3<double>& shake = seen.now.seat_shake_mps2;
  const Vec3<double> head = eye_B_m + Vec3<double>{shaken(shake.x), shaken(shake.y), shaken(shake.z)};
  const Vec3<double> eye = a.position_E_m + (b.position_E_m - a.position_E_m) * s + rotation_EB(q) * head;
  view.eye_E_m = {eye.x, eye.y, eye.z};
  view.attitude_EB = {q.w, q.x, q.y, q.z};
  view.look_right_deg = look_right_deg;
  view.look_up_deg = look_up_deg - nod_deg(shake.z);
  view.time_s = mixed(seen.before.time_s, seen.now.time_s, s);
  view.propeller_rps = seen.now.propeller_radps / (2.0 * math::kPi);
  view.propeller_turns = std::fmod(view.time_s * view.propeller_rps, 1.0);
}

}  // namespace stallwright::view
