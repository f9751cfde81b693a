#include "render/view/replay_track.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/units.hpp"
#include "sim/air/wind.hpp"

namespace stallwright::view {
namespace {

using math::kDegree;

double mix(double a, double b, double share) { return a + share * (b - a); }

Readings<double> mix(const Readings<double>& a, const Readings<double>& b, double share) {
  Readings<double> out = a;
  const auto between = [&](double Readings<double>::*member) {
    out.*member = mix(a.*member, b.*member, share);
  };
  for (const auto member : {&Readings<double>::impact_pressure_pa,
                            &Readings<double>::indicated_airspeed_mps,
                            &Readings<double>::pressure_altitude_m,
                            &Readings<double>::indicated_altitude_m,
                            &Readings<double>::vertical_speed_mps,
                            &Readings<double>::probe_ratio,
                            &Readings<double>::pitch_rad,
                            &Readings<double>::bank_rad,
                            &Readings<double>::heading_rad,
                            &Readings<double>::roll_rate_radps,
                            &Readings<double>::pitch_rate_radps,
                            &Readings<double>::yaw_rate_radps,
                            &Readings<double>::forward_mps2,
                            &Readings<double>::right_mps2,
                            &Readings<double>::down_mps2,
                            &Readings<double>::gps_speed_mps,
                            &Readings<double>::gps_altitude_m,
                            &Readings<double>::outside_air_K,
                            &Readings<double>::propeller_radps,
                            &Readings<double>::stick_aft,
                            &Readings<double>::stick_right,
                            &Readings<double>::pedal_right,
                            &Readings<double>::throttle,
                            &Readings<double>::flap_rad})
    between(member);
  return out;
}

/// From north, 0 to 2 pi.
double compass(double rad) {
  const double turn = 2.0 * math::kPi;
  const double rest = std::fmod(rad, turn);
  return rest < 0.0 ? rest + turn : rest;
}

Needles needles_at(const Readings<double>& seen) {
  Needles n;
  n.airspeed_kt = seen.indicated_airspeed_mps / kKnot;
  n.altitude_ft = seen.indicated_altitude_m / kFoot;
  n.vertical_speed_fpm = seen.vertical_speed_mps / kFootPerMinute;
  n.pitch_deg = seen.pitch_rad / kDegree;
  n.bank_deg = seen.bank_rad / kDegree;
  n.heading_deg = seen.heading_rad / kDegree;
  n.turn_rate_degps = seen.yaw_rate_radps / kDegree;
  n.rpm = seen.propeller_radps * 60.0 / (2.0 * math::kPi);
  n.probe_ratio = seen.probe_ratio;
  n.started = true;
  return n;
}

bool is_danger(const std::string& kind) { return kind == "unintended stall" || kind == "knock it off"; }

}  // namespace

ReplayTrack::ReplayTrack(const std::filesystem::path& folder)
    : flown_(read_sortie(folder)), no_set_points_(std::make_shared<const std::vector<SetPointSoFar>>()) {
  read_log(folder / "log.csv");
  read_truth(folder / "truth.csv");
  add_up_places();
  find_records();
  const std::vector<TestPoint>& points = flown_.config.card.points;
  for (const stallwright::Event& e : flown_.outcome.events)
    events_.push_back(
        {e.time_s, e.kind, e.text, e.point < points.size() ? points[e.point].name : "", is_danger(e.kind)});
}

Vec3<double> ReplayTrack::over_ground(const Row& row) const {
  double s = 0.0, c = 1.0;
  math::sincos(row.yaw_rad, s, c);
  if (!has_truth_) return {row.seen.gps_speed_mps * c, row.seen.gps_speed_mps * s, 0.0};
  const Quaternion<double> q = quaternion(EulerAngles<double>{row.yaw_rad, row.pitch_rad, row.roll_rad});
  const double terrain_m = flown_.config.card.terrain_ft * kFoot;
  const Vec3<double> wind = wind_velocity_E(flown_.config.air.wind, row.altitude_m - terrain_m);
  Vec3<double> over = rotation_EB(q) * row.through_air_B_mps + wind;
  over.z = -row.climb_mps;
  return over;
}

void ReplayTrack::add_up_places() {
  Vec3<double> before = over_ground(rows_.front());
  for (std::size_t i = 1; i < rows_.size(); ++i) {
    const Vec3<double> now = over_ground(rows_[i]);
    const double half = 0.5 * (rows_[i].t_s - rows_[i - 1].t_s);
    rows_[i].north_m = rows_[i - 1].north_m + half * (before.x + now.x);
    rows_[i].east_m = rows_[i - 1].east_m + half * (before.y + now.y);
    before = now;
  }
}

void ReplayTrack::find_records() {
  const std::vector<TestPoint>& points = flown_.config.card.points;
  for (std::size_t i = 0; i < rows_.size();) {
    std::size_t j = i;
    while (j < rows_.size() && rows_[j].recording && rows_[j].point == rows_[i].point &&
           rows_[j].repeat == rows_[i].repeat && rows_[j].attempt == rows_[i].attempt)
      ++j;
    const auto point = static_cast<std::size_t>(rows_[i].point);
    if (j > i && point > 0 && point <= points.size())
      records_.push_back({rows_[i].t_s, rows_[j - 1].t_s, points[point - 1].name});
    i = std::max(j, i + 1);
  }
}

Snapshot ReplayTrack::at(double time_s) const {
  const double t = std::clamp(time_s, begin_s(), end_s());
  const auto next = std::upper_bound(rows_.begin(), rows_.end(), t,
                                     [](double value, const Row& row) { return value < row.t_s; });
  const Row& a = next == rows_.begin() ? rows_.front() : *std::prev(next);
  const Row& b = next == rows_.end() ? rows_.back() : *next;
  const double share = b.t_s > a.t_s ? (t - a.t_s) / (b.t_s - a.t_s) : 0.0;
  Snapshot s;
  s.time_s = t;
  s.rigid.position_E_m = {mix(a.north_m, b.north_m, share), mix(a.east_m, b.east_m, share),
                          -mix(a.altitude_m, b.altitude_m, share)};
  s.rigid.attitude_EB =
      quaternion(EulerAngles<double>{mix(a.yaw_rad, b.yaw_rad, share), mix(a.pitch_rad, b.pitch_rad, share),
                                     mix(a.roll_rad, b.roll_rad, share)});
  s.readings = mix(a.seen, b.seen, share);
  s.readings.heading_rad = compass(s.readings.heading_rad);
  s.rigid.rate_B_radps = {s.readings.roll_rate_radps, s.readings.pitch_rate_radps, s.readings.yaw_rate_radps};
  const Vec3<double> ground = (1.0 - share) * over_ground(a) + share * over_ground(b);
  const Mat3<double> R_EB = rotation_EB(s.rigid.attitude_EB);
  s.rigid.velocity_B_mps = {dot(R_EB.column(0), ground), dot(R_EB.column(1), ground),
                            dot(R_EB.column(2), ground)};
  s.needles = needles_at(s.readings);
  s.controls = {s.readings.stick_aft, s.readings.stick_right, s.readings.pedal_right, s.readings.throttle,
                s.readings.flap_rad};
  s.marks = {a.point, a.repeat, a.attempt, a.target_kt, a.recording, a.forced, a.in_band, a.phase};
  s.altimeter_setting_hpa = flown_.config.air.day.qnh_Pa / 100.0;
  s.propeller_radps = s.readings.propeller_radps;
  s.power_share = s.readings.throttle;
  s.airspeed_mps = mix(a.tas_mps, b.tas_mps, share);
  s.horn = has_truth_ && a.alpha_rad > flown_.config.type.horn_alpha_rad;
  s.tone = a.tone;
  s.done = t >= end_s();
  for (const Event& e : events_) s.events += e.time_s <= t ? 1u : 0u;
  if (s.events > 0) s.last_event = flown_.outcome.events[s.events - 1];
  s.set_points = no_set_points_;
  return s;
}

}  // namespace stallwright::view
