#include "sim/study/criteria.hpp"

#include <algorithm>
#include <cmath>

#include "sim/report/number_text.hpp"

namespace stallwright {
namespace {

std::string percent(double share) { return fixed(100.0 * share, 0) + " %"; }

/// "78 % of 18"
std::string share_found(const StudyRow& row) {
  return row.found > 0 ? percent(row.coverage()) + " of " + std::to_string(row.found) : "none found";
}

std::string row_name(const StudyRow& row) {
  return row.name + ", flaps " + shortest(row.flap_deg) + "\u00b0";
}

Criterion coverage_everywhere(const Study& study) {
  int asked = 0, kept = 0;
  std::string broken;
  for (const StudyAir& air : study.airs)
    for (const StudyRow& row : air.rows) {
      const CoverageCall call = coverage_call(row, air.air);
      if (call == CoverageCall::not_asked) continue;
      ++asked;
      if (call == CoverageCall::holds || call == CoverageCall::conservative)
        ++kept;
      else
        broken += "; " + air.air.name + ", " + row_name(row) + ": " + share_found(row);
    }
  return {
      "95 % intervals hold the truth in 90 % of sorties or more, or the share has 95 % within its own 95 % "
      "interval: " +
          std::to_string(kept) + " of " + std::to_string(asked) + " points" + broken,
      kept == asked};
}

/// Airs of the study that have a severity, by rising severity, each once.
std::vector<const StudyAir*> by_severity(const Study& study) {
  std::vector<const StudyAir*> airs;
  for (const StudyAir& air : study.airs)
    if (air.air.severity) airs.push_back(&air);
  std::stable_sort(airs.begin(), airs.end(),
                   [](const StudyAir* a, const StudyAir* b) { return a->air.severity < b->air.severity; });
  airs.erase(
      std::unique(airs.begin(), airs.end(),
                  [](const StudyAir* a, const StudyAir* b) { return a->air.severity == b->air.severity; }),
      airs.end());
  return airs;
}

void add_rising_means(const Study& study, std::vector<Criterion>& out) {
  const std::vector<const StudyAir*> airs = by_severity(study);
  if (airs.size() < 2) return;
  for (std::size_t r = 0; r < airs.front()->rows.size(); ++r) {
    if (airs.front()->rows[r].is_stall) continue;
    Criterion c{"RMS error of the window mean rises with the air, " + row_name(airs.front()->rows[r]) + ":",
                true};
    double before = -1.0;
    for (const StudyAir* air : airs) {
      const double rms = air->rows[r].other_rms_kt[1];
      c.holds = c.holds && rms > before;
      c.text += (before < 0.0 ? " " : " < ") + fixed(rms, 2);
      before = rms;
    }
    c.text += " kt";
    out.push_back(c);
  }
}

}  // namespace

CoverageCall coverage_call(const StudyRow& row, const AirPreset& air) {
  if (row.is_stall || !air.severity || *air.severity == Severity::kSevere) return CoverageCall::not_asked;
  const bool easy = row.name == "fast reference" || row.name == "approach";
  if (*air.severity == Severity::kModerate && !easy) return CoverageCall::not_asked;
  if (row.found == 0) return CoverageCall::none_found;
  if (row.coverage() < kLeastCoverage && row.coverage_interval.upper < kStatedCoverage)
    return CoverageCall::below;
  return row.coverage() > kMostCoverage ? CoverageCall::conservative : CoverageCall::holds;
}

std::string coverage_word(CoverageCall call) {
  switch (call) {
    case CoverageCall::not_asked:
      return kNoNumber;
    case CoverageCall::none_found:
      return "NONE";
    case CoverageCall::below:
      return "BELOW";
    case CoverageCall::holds:
      return "holds";
    case CoverageCall::conservative:
      return "wide";
  }
  return "";
}

std::vector<Criterion> study_criteria(const Study& study) {
  std::vector<Criterion> out{coverage_everywhere(study)};
  add_rising_means(study, out);
  int stalls = 0, waits = 0, true_stalls = 0, true_waits = 0, flown = 0, failed = 0;
  for (const StudyAir& air : study.airs) {
    stalls += air.unintended_stall_sorties;
    waits += air.of_them_wait;
    true_stalls += air.wing_stalled_sorties;
    true_waits += air.of_those_wait;
    flown += static_cast<int>(air.sorties.size());
    failed += air.failed;
  }
  out.push_back({"an unintended stall ends in the verdict to wait for better air: " + std::to_string(waits) +
                     " of " + std::to_string(stalls) +
                     " sorties; so does a wing that stalled in truth at a steady point: " +
                     std::to_string(true_waits) + " of " + std::to_string(true_stalls),
                 waits == stalls && true_waits == true_stalls});
  out.push_back({"the card was finished: " + std::to_string(flown - failed) + " of " + std::to_string(flown) +
                     " sorties",
                 failed == 0});
  return out;
}

std::string conservative_note(const StudyRow& row, const AirPreset& air) {
  if (coverage_call(row, air) != CoverageCall::conservative) return "";
  std::string text = air.name + ", " + row_name(row) + ": covered in " + fixed(100.0 * row.coverage(), 1) +
                     " %; wide through '" + row.surplus.name + "' (" + percent(row.surplus.variance_share) +
                     " of the variance; without it covered in " + percent(row.surplus.coverage_without) + ")";
  if (row.dominant.name != row.surplus.name)
    text += "; largest part '" + row.dominant.name + "' (" + percent(row.dominant.variance_share) + ")";
  return text;
}

}  // namespace stallwright
