#include "sim/study/map/sortie_numbers.hpp"

#include <algorithm>
#include <cmath>
#include <exception>

#include "sim/reduction/repeats.hpp"
#include "sim/truth/record_gust.hpp"

namespace stallwright {
namespace {

int records_wanted_of(const JudgedPoint& p, double wanted_kt) {
  const double kt_per_ratio = 2.0 * p.expanded_kt / (p.measured.interval_high - p.measured.interval_low);
  return kt_per_ratio > 0.0 ? repeats_wanted(p.measured, wanted_kt, kt_per_ratio).records : 0;
}

std::optional<bool> out_of_order(const Judgement& judgement) {
  std::optional<bool> found;
  for (const JudgedSet& set : judgement.sets) {
    const bool complete = std::all_of(set.points.begin(), set.points.end(),
                                      [](const JudgedPoint& p) { return p.measured.found(); });
    if (complete) found = found.value_or(false) || !set.order_ok;
  }
  return found;
}

double least_warning_margin_kt(const Judgement& judgement) {
  double least = kNone;
  for (const JudgedSet& set : judgement.sets)
    for (const JudgedPoint& p : set.points)
      if (!p.measured.is_stall && p.measured.name == "warning" && std::isfinite(p.margin_kt))
        least = std::isfinite(least) ? std::min(least, p.margin_kt) : p.margin_kt;
  return least;
}

}  // namespace

SortieNumbers sortie_numbers(EndedSortie& ended, const SortieConfig& config,
                             const std::vector<TrueSet>& truth) {
  SortieNumbers out;
  out.failure = ended.failure;
  const std::vector<WindowLine> lines = window_lines(config.card);
  out.lines.resize(lines.size());
  const RecordRms rms = record_rms(ended.rows.log, ended.rows.truth, config.card);
  out.hold_rms_kt = rms.hold_kt;
  out.gust_rms_mps = rms.gust_mps;
  ended.outcome.record_gust_mps = record_gust_mps(ended.rows.log, ended.rows.truth);
  const auto take = [&](double share, const Judgement& judgement) {
    if (share == kWindowShares.front()) {
      out.verdict = judgement.verdict;
      out.out_of_order = out_of_order(judgement);
      out.warning_margin_kt = least_warning_margin_kt(judgement);
    }
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (lines[i].share != share) continue;
      if (const JudgedPoint* p = point_of(lines[i], judgement))
        out.lines[i] = {{true, p->covered, p->error_kt, p->expanded_kt},
                        records_wanted_of(*p, config.card.wanted_uncertainty_kt)};
    }
  };
  try {
    for_each_window(ended.rows.log, config, truth, ended.outcome, take);
  } catch (const std::exception& e) {
    // What the longer windows gave stays; without any, the sortie has failed.
    if (!out.verdict) out.failure += (out.failure.empty() ? "" : "; ") + std::string(e.what());
  }
  return out;
}

}  // namespace stallwright
