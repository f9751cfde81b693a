// From a sortie folder to what the debrief says of it.
#include <algorithm>
#include <cmath>

#include "sim/reduction/reduce.hpp"
#include "sim/reduction/set_points_json.hpp"
#include "sim/report/flown_summary.hpp"
#include "sim/report/judgement_json.hpp"
#include "sim/report/record_page.hpp"
#include "sim/report/sortie_folder.hpp"
#include "sim/report/whole_file.hpp"
#include "sim/truth/error_split.hpp"
#include "sim/truth/record_gust.hpp"
#include "sim/truth/truth_log.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;

SetPoints set_points_of(const fs::path& folder, const FlightLog& log, const FlownSortie& flown) {
  std::error_code error;
  if (fs::exists(folder / "set-points.json", error)) return read_set_points(folder / "set-points.json");
  SetPoints reduced = reduce_log(log, flown.config.card, flown.config.instruments);
  reduced.aircraft = flown.config.type.name;
  // Through the text, so that the file and what is judged now agree to the last bit.
  return set_points_from_json(set_points_to_json(reduced), (folder / "set-points.json").string());
}

/// The map over all ratios that the debrief may show of a set: measured and true, and a tenth beyond.
KnotsScale knots_scale(const TrueSet& truth, const Judgement& judgement) {
  double low = truth.map.stall().ratio, high = low;
  const auto cover = [&](double ratio) {
    if (!std::isfinite(ratio)) return;
    low = std::min(low, ratio);
    high = std::max(high, ratio);
  };
  for (const TruePoint& point : truth.points) cover(point.at.ratio);
  for (const JudgedSet& set : judgement.sets)
    if (set.flap_deg == truth.flap_deg)
      for (const JudgedPoint& point : set.points) {
        cover(point.measured.interval_low);
        cover(point.measured.interval_high);
      }
  constexpr int kSteps = 100;
  const double beyond = 0.1 * (high - low);
  KnotsScale scale;
  scale.flap_deg = truth.flap_deg;
  for (int i = 0; i <= kSteps; ++i) {
    const double ratio = low - beyond + (high - low + 2.0 * beyond) * i / kSteps;
    scale.ratio.push_back(ratio);
    scale.speed_kt.push_back(truth.map.speed_kt(ratio));
  }
  return scale;
}

}  // namespace

SetPoints reduce_log(const FlightLog& log, const TestCard& card, const InstrumentGrade& instruments) {
  SetPoints set_points = reduce(log.rows, card, instruments);
  set_points.warnings.insert(set_points.warnings.begin(), log.warnings.begin(), log.warnings.end());
  return set_points;
}

Debrief make_debrief(const fs::path& folder) {
  Debrief debrief;
  debrief.flown = read_sortie(folder);
  const SortieConfig& config = debrief.flown.config;
  const FlightLog log = read_flight_log(folder / "log.csv", config.card);
  const std::vector<TruthRow> truth_rows = read_truth_log(folder / "truth.csv");

  DebriefInput& page = debrief.page;
  page.set_points = set_points_of(folder, log, debrief.flown);
  const Aircraft aircraft = make_aircraft(config.type, config.loading, config.airframe_seed);
  const StillAir air = working_air(config.card, config.air.day);
  const std::vector<TrueSet> truth = find_truth(aircraft, config.card, air);
  debrief.flown.outcome.record_gust_mps = record_gust_mps(log.rows, truth_rows);
  page.judgement = judge(page.set_points, truth, config.card, config.type, debrief.flown.outcome);
  split_errors(page.judgement, log.rows, truth_rows, config.card, aircraft, config.instruments, truth,
               split_reference(aircraft, config.card, truth, air));
  page.protection = protection(aircraft, config.airframe_seed, page.set_points, config.card, air);
  heed_protection(page.judgement, page.protection, config.card);
  page.summary = flown_summary(debrief.flown, log.rows);
  page.history = flown_history(debrief.flown, log.rows, truth_rows, page.set_points);
  for (const TrueSet& set : truth) page.scales.push_back(knots_scale(set, page.judgement));
  return debrief;
}

std::string judgement_text(const Debrief& debrief) {
  const SortieConfig& config = debrief.flown.config;
  return judgement_to_json(debrief.page.judgement, debrief.page.protection, config.card.name,
                           config.type.name);
}

Debrief debrief_folder(const fs::path& folder, const Who& given) {
  const Who who = with_given(read_who(folder), given);
  const Debrief debrief = make_debrief(folder);
  const std::string page = debrief_page(debrief.page);
  const std::string record = record_page(debrief, who);
  if (!fs::exists(folder / "set-points.json"))
    write_whole_file(folder / "set-points.json", set_points_to_json(debrief.page.set_points));
  write_whole_file(folder / "judgement.json", judgement_text(debrief));
  write_whole_file(folder / "debrief.html", page);
  if (!given.empty()) write_whole_file(folder / "who.json", who_to_json(who));
  write_whole_file(folder / "record.html", record);
  return debrief;
}

}  // namespace stallwright
