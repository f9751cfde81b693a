#include "sim/truth/judge.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "aircraft/math/units.hpp"
#include "sim/sortie/card_speeds.hpp"
#include "sim/truth/decide.hpp"

namespace stallwright {
namespace {

TrueSet true_set(const Aircraft& aircraft, const TestCard& card, std::size_t flap_setting,
                 const StillAir& air) {
  const AircraftType& type = aircraft.type;
  const double flap_rad = type.flaps[flap_setting].deflection_rad;
  TrueSet set;
  set.flap_setting = flap_setting;
  set.flap_deg = flap_rad / math::kDegree;
  set.mass_kg = aircraft.mass.mass_kg;

  double fastest_kt = 1.5 * book_stall_kt(type, flap_setting, aircraft.mass.mass_kg);
  for (const TestPoint& p : card.points)
    if (p.flap_setting == flap_setting && p.is_steady())
      fastest_kt = std::max(fastest_kt, point_speeds(p, type, aircraft.mass.mass_kg).target_kt + 3.0);
  set.map = KnotsMap(aircraft, flap_rad, air, fastest_kt * kKnot);

  bool stall_wanted = false;
  std::size_t stall_point = 0;
  for (std::size_t k = 0; k < card.points.size(); ++k) {
    const TestPoint& p = card.points[k];
    if (p.flap_setting != flap_setting) continue;
    if (p.is_stall() && !stall_wanted) {
      stall_wanted = true;
      stall_point = k;
    }
    if (!p.is_steady()) continue;
    TruePoint t;
    t.card_point = k;
    t.name = p.name;
    t.at = steady_at(aircraft, flap_rad, p.power, p.descent_fpm * kFootPerMinute, air,
                     point_speeds(p, type, aircraft.mass.mass_kg).target_kt * kKnot);
    if (!t.at.found)
      throw std::runtime_error("point " + p.name +
                               ": this aeroplane has no steady flight at the card's speed");
    t.ratio_per_rad = set.map.ratio_per_rad(t.at.ratio);
    set.points.push_back(t);
  }
  if (stall_wanted) {
    TruePoint t;
    t.card_point = stall_point;
    t.name = "stall";
    t.is_stall = true;
    t.at = set.map.stall();
    t.ratio_per_rad = set.map.ratio_per_rad(t.at.ratio);
    set.points.push_back(t);
  }
  return set;
}

ReadingError reading_error(const std::string& name, const Reading& reading, const TruePoint& truth,
                           const KnotsMap& map) {
  ReadingError e;
  e.name = name;
  e.ratio = reading.ratio;
  e.u = reading.u;
  e.error_ratio = reading.ratio - truth.at.ratio;
  e.error_deg = e.error_ratio / truth.ratio_per_rad / math::kDegree;
  e.error_kt = map.speed_kt(reading.ratio) - map.speed_kt(truth.at.ratio);
  return e;
}

JudgedPoint judge_point(const SetPoint& measured, const TrueSet& set) {
  JudgedPoint j;
  j.measured = measured;
  const auto truth = std::find_if(set.points.begin(), set.points.end(), [&](const TruePoint& t) {
    return t.is_stall == measured.is_stall && (t.is_stall || t.card_point == measured.card_point);
  });
  if (truth == set.points.end()) return j;
  j.true_ratio = truth->at.ratio;
  j.true_speed_kt = set.map.speed_kt(truth->at.ratio);
  j.true_alpha_deg = truth->at.alpha_rad / math::kDegree;
  j.true_margin_kt = j.true_speed_kt - set.map.stall_speed_kt();
  if (!measured.found()) return j;
  const ReadingError adopted =
      reading_error("adopted", {measured.ratio, measured.u, kNone, kNone}, *truth, set.map);
  j.error_ratio = adopted.error_ratio;
  j.error_deg = adopted.error_deg;
  j.error_kt = adopted.error_kt;
  j.measured_speed_kt = set.map.speed_kt(measured.ratio);
  j.margin_kt = j.measured_speed_kt - set.map.stall_speed_kt();
  j.expanded_kt =
      0.5 * std::abs(set.map.speed_kt(measured.interval_high) - set.map.speed_kt(measured.interval_low));
  j.covered = measured.interval_low <= truth->at.ratio && truth->at.ratio <= measured.interval_high;
  if (measured.is_stall) {
    j.readings = {reading_error("break", measured.at_break, *truth, set.map),
                  reading_error("peak", measured.peak, *truth, set.map),
                  reading_error("max_lift", measured.max_lift, *truth, set.map)};
  } else {
    j.readings = {reading_error("spot", measured.spot, *truth, set.map),
                  reading_error("window_mean", measured.window_mean, *truth, set.map),
                  reading_error("lift_corrected", measured.lift_corrected, *truth, set.map)};
  }
  return j;
}

}  // namespace

StillAir working_air(const TestCard& card, const Day& day) {
  StillAir air;
  air.altitude_m = (card.terrain_ft + card.working_height_ft) * kFoot;
  const AtmosphereState<double> state = AirColumn(day).at(air.altitude_m);
  air.density_kgpm3 = state.density_kgpm3;
  air.pressure_pa = state.pressure_Pa;
  return air;
}

std::vector<TrueSet> find_truth(const Aircraft& aircraft, const TestCard& card, const StillAir& air) {
  std::vector<TrueSet> sets;
  for (const TestPoint& point : card.points) {
    const bool known = std::any_of(sets.begin(), sets.end(),
                                   [&](const TrueSet& s) { return s.flap_setting == point.flap_setting; });
    if (!known) sets.push_back(true_set(aircraft, card, point.flap_setting, air));
  }
  return sets;
}

Judgement judge(const SetPoints& measured, const std::vector<TrueSet>& truth, const TestCard& card,
                const AircraftType& type, const SortieOutcome& outcome) {
  Judgement out;
  for (std::size_t k = 0; k < measured.sets.size() && k < truth.size(); ++k) {
    const SetPointSet& set = measured.sets[k];
    JudgedSet judged;
    judged.flap_deg = type.flaps[truth[k].flap_setting].deflection_rad / math::kDegree;
    judged.mass_kg = truth[k].mass_kg;
    judged.stall_speed_kt = truth[k].map.stall_speed_kt();
    judged.order_ok = set.order_ok;
    for (const SetPoint& p : set.points) judged.points.push_back(judge_point(p, truth[k]));
    out.sets.push_back(judged);
  }
  decide(out, measured, card, outcome);
  return out;
}

}  // namespace stallwright
