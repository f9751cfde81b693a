#include "sim/truth/error_split.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "aircraft/math/units.hpp"
#include "sim/air/airspeed.hpp"
#include "sim/motion/flight.hpp"
#include "sim/sortie/card_speeds.hpp"

namespace stallwright {
namespace {

const TestPoint* point_of(const TestCard& card, const LogRow& row) {
  const auto k = static_cast<std::size_t>(row.point - 1);
  return row.point > 0 && k < card.points.size() ? &card.points[k] : nullptr;
}

/// The same point in another link of the chain.
const SetPoint* same_point(const SetPoints& link, std::size_t set, const SetPoint& as) {
  if (set >= link.sets.size()) return nullptr;
  for (const SetPoint& p : link.sets[set].points)
    if (p.is_stall == as.is_stall && (p.is_stall || p.card_point == as.card_point)) return &p;
  return nullptr;
}

double reading_of(const SetPoint& p, const std::string& name) {
  if (name == "spot") return p.spot.ratio;
  if (name == "window_mean") return p.window_mean.ratio;
  if (name == "lift_corrected") return p.lift_corrected.ratio;
  if (name == "break") return p.at_break.ratio;
  if (name == "peak") return p.peak.ratio;
  if (name == "max_lift") return p.max_lift.ratio;
  return p.ratio;
}

/// A point with too few steady flights around it, near what power or elevator can do, stays without.
void add_surface(const Aircraft& aircraft, const TestCard& card, const TruePoint& point, const StillAir& air,
                 SplitReference& reference) {
  try {
    reference.around.emplace(point.card_point,
                             SteadySurface(aircraft, card.points[point.card_point], point.at, air));
  } catch (const std::runtime_error&) {
  }
}

struct Chain {
  const SetPoint *seen, *ideal, *smooth, *at_rest;
  bool whole() const {
    return seen && ideal && smooth && at_rest && seen->found() && ideal->found() && smooth->found() &&
           at_rest->found();
  }
};

/// One reading along the chain.
///   measured  as it was judged: usually what `seen` gives
ErrorSplit split_of(const Chain& chain, const std::string& reading, double measured, double true_ratio,
                    const KnotsMap& map) {
  const auto kt = [&](const SetPoint* p) { return map.speed_kt(reading_of(*p, reading)); };
  const double seen = kt(chain.seen), ideal = kt(chain.ideal), smooth = kt(chain.smooth),
               truth = map.speed_kt(true_ratio);
  // However a stall is read, one entered infinitely slowly would break, and peak, where lift is largest.
  const double at_rest = chain.seen->is_stall ? map.speed_kt(chain.at_rest->ratio) : kt(chain.at_rest);
  ErrorSplit s;
  s.sensor_kt = seen - ideal;
  s.air_kt = ideal - smooth;
  const double otherwise_reduced = map.speed_kt(measured) - seen;
  if (chain.seen->is_stall) {
    s.hold_kt = 0.0;
    s.entry_kt = smooth - at_rest;
    s.remainder_kt = at_rest - truth + otherwise_reduced;
  } else {
    s.hold_kt = at_rest - truth;
    s.entry_kt = 0.0;
    s.remainder_kt = smooth - at_rest + otherwise_reduced;
  }
  return s;
}

/// In every recorded row; otherwise a missing twin would pass for air without bumps.
bool twin_flew(const std::vector<LogRow>& log, const std::vector<TruthRow>& truth) {
  for (std::size_t i = 0; i < log.size() && i < truth.size(); ++i)
    if (log[i].recording != 0 && std::isnan(truth[i].smooth_ratio)) return false;
  return true;
}

}  // namespace

SplitReference split_reference(const Aircraft& aircraft, const TestCard& card,
                               const std::vector<TrueSet>& truth, const StillAir& air) {
  SplitReference reference;
  for (const TrueSet& set : truth)
    for (const TruePoint& point : set.points)
      if (!point.is_stall) add_surface(aircraft, card, point, air, reference);
  return reference;
}

std::vector<LogRow> ideal_rows(const std::vector<LogRow>& log, const std::vector<TruthRow>& truth,
                               const TestCard& card, const AircraftType& type, double mass_kg) {
  std::vector<LogRow> rows(log.begin(), log.begin() + static_cast<long>(std::min(log.size(), truth.size())));
  std::vector<double> target_kt;
  for (const TestPoint& point : card.points)
    target_kt.push_back(as_printed(point_speeds(point, type, mass_kg).target_kt, 3));
  for (std::size_t i = 0; i < rows.size(); ++i) {
    LogRow& row = rows[i];
    row.mass_kg = as_printed(mass_kg, 1);
    if (row.target_kt > 0.0 && point_of(card, row) != nullptr)
      row.target_kt = target_kt[static_cast<std::size_t>(row.point - 1)];
    row.ratio = truth[i].static_ratio;
    row.impact_pressure_pa = truth[i].ideal_impact_pa;
    row.ias_kt = cas_of_impact_pressure(row.impact_pressure_pa) / kKnot;
    row.forward_mps2 = truth[i].ideal_forward_mps2;
    row.right_mps2 = truth[i].ideal_right_mps2;
    row.down_mps2 = truth[i].ideal_down_mps2;
  }
  return rows;
}

std::vector<LogRow> smooth_rows(const std::vector<LogRow>& ideal, const std::vector<TruthRow>& truth) {
  std::vector<LogRow> rows = ideal;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].recording == 0) continue;
    rows[i].ratio = truth[i].smooth_ratio;
    rows[i].impact_pressure_pa = truth[i].smooth_impact_pa;
    rows[i].ias_kt = cas_of_impact_pressure(rows[i].impact_pressure_pa) / kKnot;
    rows[i].forward_mps2 = truth[i].smooth_forward_mps2;
    rows[i].right_mps2 = truth[i].smooth_right_mps2;
    rows[i].down_mps2 = truth[i].smooth_down_mps2;
  }
  return rows;
}

std::vector<LogRow> static_rows(const std::vector<LogRow>& smooth, const std::vector<TruthRow>& truth,
                                const TestCard& card, const Aircraft& aircraft,
                                const std::vector<TrueSet>& true_sets, const SplitReference& reference) {
  std::vector<LogRow> rows = smooth;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    LogRow& row = rows[i];
    const TestPoint* point = point_of(card, row);
    if (row.recording == 0 || point == nullptr) continue;
    if (point->is_stall()) {
      const auto set = std::find_if(true_sets.begin(), true_sets.end(),
                                    [&](const TrueSet& s) { return s.flap_setting == point->flap_setting; });
      if (set == true_sets.end()) continue;
      row.forward_mps2 = row.right_mps2 = 0.0;
      row.down_mps2 = -set->map.lift_area_m2(row.ratio) * row.impact_pressure_pa / row.mass_kg;
    } else if (const auto surface = reference.around.find(static_cast<std::size_t>(row.point - 1));
               surface != reference.around.end()) {
      const double lift_area = lift_area_m2(row);
      row.ratio = surface->second.ratio(lift_area, truth[i].smooth_thrust_n / row.impact_pressure_pa);
      row.target_kt = point_speeds(*point, aircraft.type, aircraft.mass.mass_kg).target_kt;
      row.mass_kg = surface->second.lift_area_m2() * impact_pressure_of_cas(row.target_kt * kKnot) /
                    kStandardGravity_mps2;
      row.forward_mps2 = row.right_mps2 = 0.0;
      row.down_mps2 = -lift_area * row.impact_pressure_pa / row.mass_kg;
    }
  }
  return rows;
}

void split_errors(Judgement& judgement, const std::vector<LogRow>& log, const std::vector<TruthRow>& truth,
                  const TestCard& card, const Aircraft& aircraft, const InstrumentGrade& instruments,
                  const std::vector<TrueSet>& true_sets, const SplitReference& reference,
                  double assumed_lag_s) {
  if (!twin_flew(log, truth)) return;
  const std::vector<LogRow> ideal_log = ideal_rows(log, truth, card, aircraft.type, aircraft.mass.mass_kg);
  const std::vector<LogRow> smooth_log = smooth_rows(ideal_log, truth);
  ReductionTerms terms;
  terms.lift_lag_s = assumed_lag_s;
  const SetPoints seen = reduce(log, card, instruments, terms);
  terms.breaks = &seen;
  const SetPoints ideal = reduce(ideal_log, card, instruments, terms);
  const SetPoints smooth = reduce(smooth_log, card, instruments, terms);
  terms.lift_lag_s = 0.0;
  const SetPoints at_rest =
      reduce(static_rows(smooth_log, truth, card, aircraft, true_sets, reference), card, instruments, terms);

  for (std::size_t k = 0; k < judgement.sets.size() && k < true_sets.size(); ++k)
    for (JudgedPoint& point : judgement.sets[k].points) {
      const Chain chain{same_point(seen, k, point.measured), same_point(ideal, k, point.measured),
                        same_point(smooth, k, point.measured), same_point(at_rest, k, point.measured)};
      if (!point.measured.found() || !std::isfinite(point.true_ratio) || !chain.whole()) continue;
      if (!point.measured.is_stall && !reference.around.contains(point.measured.card_point)) continue;
      const KnotsMap& map = true_sets[k].map;
      point.split = split_of(chain, "adopted", point.measured.ratio, point.true_ratio, map);
      for (ReadingError& reading : point.readings)
        reading.split = split_of(chain, reading.name, reading.ratio, point.true_ratio, map);
    }
}

}  // namespace stallwright
