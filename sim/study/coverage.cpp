#include "sim/study/coverage.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/math/angle.hpp"
#include "sim/study/budget_shares.hpp"

namespace stallwright {
namespace {

/// The set points that a card asks for, as `reduce` and `find_truth` sort them.
std::vector<StudyRow> empty_rows(const TestCard& card, const AircraftType& type) {
  std::vector<std::size_t> flaps;
  for (const TestPoint& point : card.points)
    if (std::find(flaps.begin(), flaps.end(), point.flap_setting) == flaps.end())
      flaps.push_back(point.flap_setting);
  std::vector<StudyRow> rows;
  for (std::size_t set = 0; set < flaps.size(); ++set) {
    StudyRow stall;
    stall.set = set;
    stall.name = "stall";
    stall.is_stall = true;
    stall.flap_deg = type.flaps.at(flaps[set]).deflection_rad / math::kDegree;
    for (std::size_t k = 0; k < card.points.size(); ++k) {
      const TestPoint& point = card.points[k];
      if (point.flap_setting != flaps[set]) continue;
      if (point.is_stall()) stall.card_points.push_back(k);
      if (!point.is_steady()) continue;
      StudyRow row = stall;
      row.name = point.name;
      row.is_stall = false;
      row.card_points = {k};
      rows.push_back(row);
    }
    if (!stall.card_points.empty()) rows.push_back(stall);
  }
  return rows;
}

/// The row's set point in one sortie; none when it was not found.
const JudgedPoint* point_of(const StudyRow& row, const StudySortie& sortie) {
  if (row.set >= sortie.judgement.sets.size()) return nullptr;
  for (const JudgedPoint& p : sortie.judgement.sets[row.set].points) {
    const bool same = row.is_stall ? p.measured.is_stall
                                   : !p.measured.is_stall && p.measured.card_point == row.card_points[0];
    if (same && p.measured.found() && std::isfinite(p.error_kt)) return &p;
  }
  return nullptr;
}

double root_mean_square(const std::vector<double>& values) {
  double sum = 0.0;
  for (double v : values) sum += v * v;
  return std::sqrt(sum / static_cast<double>(values.size()));
}

void add_errors(StudyRow& row, const std::vector<const JudgedPoint*>& points) {
  if (points.empty()) return;
  std::vector<double> errors;
  std::array<std::vector<double>, 2> others;
  row.mean_error_kt = row.mean_expanded_kt = row.largest_error_kt = 0.0;
  for (const JudgedPoint* p : points) {
    const double each = 1.0 / static_cast<double>(points.size());
    errors.push_back(p->error_kt);
    row.mean_error_kt += p->error_kt * each;
    row.mean_expanded_kt += p->expanded_kt * each;
    row.largest_error_kt = std::max(row.largest_error_kt, std::abs(p->error_kt));
    row.covered += p->covered ? 1 : 0;
    row.covered_type_a += covered_by_type_a(*p) ? 1 : 0;
    for (std::size_t i = 0; i < others.size() && i < p->readings.size(); ++i) {
      row.other_names[i] = p->readings[i].name;
      others[i].push_back(p->readings[i].error_kt);
    }
  }
  row.rms_error_kt = root_mean_square(errors);
  for (std::size_t i = 0; i < others.size(); ++i)
    if (!others[i].empty()) row.other_rms_kt[i] = root_mean_square(others[i]);
  row.coverage_interval = clopper_pearson(row.covered, row.found);
  const std::vector<BudgetShare> shares = budget_shares(points);
  row.dominant = dominant_share(shares);
  row.surplus = surplus_share(shares);
}

/// Counts both how often and in how many sorties.
void add_tallies(StudyRow& row, const StudySortie& sortie) {
  PointTally here;
  bool stalled = false;
  for (std::size_t k : row.card_points) {
    const PointTally& t = sortie.tallies.at(k);
    here.recorded += t.recorded;
    here.forced += t.forced;
    here.flagged += t.flagged;
    here.given_up += t.given_up;
    here.timeouts += t.timeouts;
    here.unintended_stalls += t.unintended_stalls;
    here.knocked_off += t.knocked_off;
    here.no_break += t.no_break;
    stalled = stalled || sortie.wing_stalled.at(k);
  }
  const auto count = [](int& total, int& in_sorties, int n) {
    total += n;
    in_sorties += n > 0 ? 1 : 0;
  };
  row.total.recorded += here.recorded;
  count(row.total.timeouts, row.timed_out, here.timeouts);
  count(row.total.flagged, row.flagged, here.flagged);
  count(row.total.forced, row.forced, here.forced);
  count(row.total.given_up, row.given_up, here.given_up);
  count(row.total.unintended_stalls, row.unintended_stalls, here.unintended_stalls);
  count(row.total.knocked_off, row.knocked_off, here.knocked_off);
  count(row.total.no_break, row.no_break, here.no_break);
  row.wing_stalled += stalled ? 1 : 0;
}

void add_verdicts(StudyAir& out) {
  for (const StudySortie& s : out.sorties) {
    if (!s.failure.empty()) ++out.failed;
    if (s.judgement.sets.empty()) continue;
    ++out.verdicts.at(static_cast<std::size_t>(s.judgement.verdict));
    const bool wait = s.judgement.verdict == Verdict::wait_for_better_air;
    const bool noticed = std::any_of(s.tallies.begin(), s.tallies.end(),
                                     [](const PointTally& t) { return t.unintended_stalls > 0; });
    const bool stalled =
        std::find(s.wing_stalled.begin(), s.wing_stalled.end(), true) != s.wing_stalled.end();
    out.unintended_stall_sorties += noticed ? 1 : 0;
    out.of_them_wait += noticed && wait ? 1 : 0;
    out.wing_stalled_sorties += stalled ? 1 : 0;
    out.of_those_wait += stalled && wait ? 1 : 0;
  }
}

}  // namespace

std::vector<StudyRow> study_rows(const TestCard& card, const AircraftType& type,
                                 const std::vector<StudySortie>& sorties) {
  std::vector<StudyRow> rows = empty_rows(card, type);
  for (StudyRow& row : rows) {
    std::vector<const JudgedPoint*> points;
    for (const StudySortie& sortie : sorties) {
      ++row.sorties;
      add_tallies(row, sortie);
      if (const JudgedPoint* p = point_of(row, sortie)) points.push_back(p);
    }
    row.found = static_cast<int>(points.size());
    add_errors(row, points);
  }
  return rows;
}

Study run_study(const StudyConfig& config, const StudyProgress& progress) {
  Study study;
  study.config = config;
  const Aircraft aircraft = make_aircraft(config.base.type, config.base.loading, config.base.airframe_seed);
  const int all = config.sorties * static_cast<int>(config.airs.size());
  for (const AirPreset& air : config.airs) {
    StudyAir out;
    out.air = air;
    SortieConfig base = config.base;
    base.air = air;
    const std::vector<TrueSet> truth = find_truth(aircraft, base.card, working_air(base.card, air.day));
    const int before = config.sorties * static_cast<int>(study.airs.size());
    const StudyProgress here = [&](int done, int) {
      if (progress) progress(before + done, all);
    };
    out.sorties = fly_sorties(base, truth, config.sorties, config.first_seed, config.threads, here);
    out.rows = study_rows(base.card, base.type, out.sorties);
    add_verdicts(out);
    study.airs.push_back(std::move(out));
  }
  return study;
}

}  // namespace stallwright
