#include <cmath>
#include <nlohmann/json.hpp>

#include "sim/cli/study_report.hpp"
#include "sim/study/criteria.hpp"

namespace stallwright::cli {
namespace {

using Json = nlohmann::ordered_json;

/// JSON has no NaN: what does not exist is null.
Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json share_json(const BudgetShare& share) {
  return {{"name", share.name},
          {"variance_share", number(share.variance_share)},
          {"coverage_without", number(share.coverage_without)}};
}

Json row_json(const StudyRow& row, const AirPreset& air) {
  Json others = Json::object();
  for (std::size_t i = 0; i < row.other_names.size(); ++i)
    if (!row.other_names[i].empty()) others[row.other_names[i]] = number(row.other_rms_kt[i]);
  return {{"name", row.name},
          {"flap_deg", row.flap_deg},
          {"sorties", row.sorties},
          {"found", row.found},
          {"missing", row.missing()},
          {"mean_error_kt", number(row.mean_error_kt)},
          {"rms_error_kt", number(row.rms_error_kt)},
          {"largest_error_kt", number(row.largest_error_kt)},
          {"mean_expanded_kt", number(row.mean_expanded_kt)},
          {"covered", row.covered},
          {"coverage_95", {number(row.coverage_interval.lower), number(row.coverage_interval.upper)}},
          {"coverage_call", coverage_word(coverage_call(row, air))},
          {"covered_by_type_a", row.covered_type_a},
          {"other_readings_rms_kt", others},
          {"dominant", share_json(row.dominant)},
          {"surplus", share_json(row.surplus)},
          {"sorties_with",
           {{"time_out", row.timed_out},
            {"flagged", row.flagged},
            {"forced", row.forced},
            {"given_up", row.given_up},
            {"unintended_stall", row.unintended_stalls},
            {"knocked_off", row.knocked_off},
            {"no_break", row.no_break},
            {"wing_stalled_in_truth", row.wing_stalled}}},
          {"in_all",
           {{"recorded", row.total.recorded},
            {"time_out", row.total.timeouts},
            {"flagged", row.total.flagged},
            {"forced", row.total.forced},
            {"given_up", row.total.given_up},
            {"unintended_stall", row.total.unintended_stalls},
            {"knocked_off", row.total.knocked_off},
            {"no_break", row.total.no_break}}}};
}

Json air_json(const StudyAir& air) {
  Json rows = Json::array(), failures = Json::array();
  for (const StudyRow& row : air.rows) rows.push_back(row_json(row, air.air));
  for (const StudySortie& s : air.sorties)
    if (!s.failure.empty()) failures.push_back({{"seed", s.seed}, {"failure", s.failure}});
  return {
      {"air", air.air.name},
      {"sorties", air.sorties.size()},
      {"verdicts",
       {{"keep", air.verdicts[0]}, {"fly_again", air.verdicts[1]}, {"wait_for_better_air", air.verdicts[2]}}},
      {"unintended_stall", {{"sorties", air.unintended_stall_sorties}, {"verdict_wait", air.of_them_wait}}},
      {"wing_stalled_in_truth", {{"sorties", air.wing_stalled_sorties}, {"verdict_wait", air.of_those_wait}}},
      {"failures", failures},
      {"rows", rows}};
}

}  // namespace

std::string study_json(const Study& study) {
  const SortieConfig& base = study.config.base;
  Json airs = Json::array(), criteria = Json::array();
  for (const StudyAir& air : study.airs) airs.push_back(air_json(air));
  for (const Criterion& c : study_criteria(study)) criteria.push_back({{"text", c.text}, {"holds", c.holds}});
  const Json out{{"format", "stallwright-study-1"},
                 {"version", STALLWRIGHT_VERSION},
                 {"aircraft", base.type.key},
                 {"card", base.card.key},
                 {"pilot", base.pilot.name},
                 {"sensors", base.instruments.name},
                 {"airframe_seed", base.airframe_seed},
                 {"first_seed", study.config.first_seed},
                 {"airs", airs},
                 {"criteria", criteria}};
  return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace stallwright::cli
