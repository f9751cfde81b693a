// From the folder of a verifying sortie to what came of it.
#include <nlohmann/json.hpp>

#include "aircraft/input_error.hpp"
#include "sim/reduction/set_points_json.hpp"
#include "sim/report/flown_summary.hpp"
#include "sim/report/verification_report.hpp"
#include "sim/report/whole_file.hpp"
#include "sim/truth/truth_log.hpp"

namespace stallwright {
namespace {

using Json = nlohmann::ordered_json;

Json unit_json(const WarningUnit& unit) {
  Json warnings = Json::array();
  for (const WarningUnit::SetPoint& w : unit.warnings)
    warnings.push_back({{"flap_deg", number_json(w.flap_deg)}, {"ratio", number_json(w.ratio)}});
  return {{"smoothing_s", unit.smoothing_s},
          {"delay_s", unit.delay_s},
          {"hysteresis_ratio", unit.hysteresis_ratio},
          {"warnings", std::move(warnings)}};
}

Json point_json(const VerifiedPoint& v) {
  return {{"name", v.name},
          {"flap_deg", number_json(v.flap_deg)},
          {"taught_flap_deg", number_json(v.taught_flap_deg)},
          {"power", power_name(v.power)},
          {"bank_deg", number_json(v.bank_deg)},
          {"slow_run", v.slow_run},
          {"in_use", v.in_use},
          {"tone_kt", number_json(v.tone_kt)},
          {"stall_kt", number_json(v.stall_kt)},
          {"margin_kt", number_json(v.margin_kt)},
          {"taught_kt", number_json(v.taught_kt)},
          {"nuisance_tones", v.nuisance_tones},
          {"ok", v.ok},
          {"text", v.text}};
}

/// The runs and the approach as windows, for the picture of the flight.
SetPoints windows_of(const std::vector<LogRow>& rows, const TestCard& card) {
  SetPointSet set;
  for (const Record& record : find_records(rows)) {
    SetPoint point;
    point.name = card.points[record.point].name;
    RecordWindow window;
    window.point = record.point;
    window.begin_s = rows[record.begin].t_s;
    window.end_s = rows[record.end - 1].t_s;
    point.windows.push_back(window);
    set.points.push_back(point);
  }
  SetPoints windows;
  windows.sets.push_back(set);
  return windows;
}

}  // namespace

std::string verification_to_json(const VerificationDebrief& debrief) {
  Json points = Json::array();
  for (const VerifiedPoint& v : debrief.verification.points) points.push_back(point_json(v));
  const SortieConfig& config = debrief.flown.config;
  return json_text({{"format", std::string(kVerificationFormat)},
                    {"aircraft", config.type.name},
                    {"card", config.card.name},
                    {"pass", debrief.verification.pass},
                    {"fly_again", debrief.verification.fly_again},
                    {"sentence", debrief.verification.sentence},
                    {"unit", unit_json(config.unit)},
                    {"points", std::move(points)}});
}

VerificationDebrief make_verification(const std::filesystem::path& folder) {
  VerificationDebrief out;
  out.flown = read_sortie(folder);
  const SortieConfig& config = out.flown.config;
  if (!config.card.verifies || !out.flown.taught)
    throw InputError(folder.string() +
                     ": expected a sortie flown with a verifying card and taught set points, found " +
                     config.card.name);
  FlightLog log = read_flight_log(folder / "log.csv", config.card);
  read_tones(folder / "log.csv", log.rows);
  const Aircraft aircraft = make_aircraft(config.type, config.loading, config.airframe_seed);
  out.verification = verify(log.rows, config.card, config.type,
                            stalls_of_runs(config.card, aircraft, working_air(config.card, config.air.day)),
                            *out.flown.taught);
  if (!out.flown.ended || !out.flown.outcome.finished) {
    out.verification.pass = false;
    out.verification.sentence = "the card was not flown to its end: " + out.verification.sentence;
  }
  out.page.summary = flown_summary(out.flown, log.rows);
  out.page.history = flown_history(out.flown, log.rows, read_truth_log(folder / "truth.csv"),
                                   windows_of(log.rows, config.card));
  return out;
}

VerificationDebrief verify_folder(const std::filesystem::path& folder) {
  const VerificationDebrief debrief = make_verification(folder);
  const std::string page = verification_page(debrief);
  write_whole_file(folder / "verification.json", verification_to_json(debrief));
  write_whole_file(folder / "verification.html", page);
  return debrief;
}

}  // namespace stallwright
