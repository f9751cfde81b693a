#include "sim/report/flown_summary.hpp"

#include <set>
#include <tuple>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/units.hpp"
#include "sim/reduction/flight_log.hpp"
#include "sim/report/number_text.hpp"

namespace stallwright {
namespace {

std::string loading_words(const SortieConfig& config) {
  std::string words;
  for (std::size_t i = 0; i < config.loading.kg.size(); ++i)
    if (config.loading.kg[i] > 0.0)
      words += (words.empty() ? "" : ", ") + config.type.mass.stations[i].name + " " +
               shortest(config.loading.kg[i]) + " kg";
  return words.empty() ? "nobody and nothing on board" : words;
}

std::string day_words(const AirPreset& air) {
  std::string words = "QNH " + fixed(air.day.qnh_Pa / 100.0, 0) + " hPa, standard temperature";
  if (air.day.temperature_offset_K != 0.0)
    words.append(" ").append(signed_fixed(air.day.temperature_offset_K, 0)).append(" K");
  if (air.wind.speed_mps == 0.0) return words + ", no wind.";
  return words + ", wind " + fixed(air.wind.from_rad / math::kDegree, 0) + "\u00b0 " +
         fixed(air.wind.speed_mps / kKnot, 0) + " kt at " + fixed(air.wind.reference_height_m / kFoot, 0) +
         " ft.";
}

bool is_danger(const std::string& kind) { return kind == "unintended stall" || kind == "knock it off"; }

std::vector<SortieEvent> flown_events(const FlownSortie& flown, const std::vector<LogRow>& log) {
  std::vector<SortieEvent> events;
  for (const Event& event : flown.outcome.events)
    events.push_back({event.time_s, event.kind, flown.config.card.points.at(event.point).name, event.text,
                      is_danger(event.kind)});
  if (!flown.ended)
    events.push_back({log.empty() ? 0.0 : log.back().t_s, "cut off", "",
                      "the program was ended in the air; the log stops here and no counts were kept", true});
  else if (!flown.outcome.finished)
    events.push_back({flown.outcome.ended_s, "ended early", "", flown.outcome.failure, true});
  return events;
}

std::vector<PointCount> flown_counts(const FlownSortie& flown, const std::vector<LogRow>& log) {
  const std::vector<TestPoint>& points = flown.config.card.points;
  std::vector<std::set<std::pair<int, int>>> tries(points.size());
  for (const LogRow& row : log)
    if (row.point > 0) tries.at(static_cast<std::size_t>(row.point - 1)).insert({row.repeat, row.attempt});
  std::vector<int> recorded(points.size(), 0);
  for (const Record& record : find_records(log)) ++recorded[record.point];

  std::vector<PointCount> counts;
  for (std::size_t k = 0; k < points.size(); ++k) {
    PointTally tally;
    tally.recorded = recorded[k];
    if (k < flown.outcome.tallies.size()) tally = flown.outcome.tallies[k];
    PointCount count;
    count.point = points[k].name;
    count.flap_deg = flown.config.type.flaps.at(points[k].flap_setting).deflection_rad / math::kDegree;
    count.records_wanted = points[k].repeats;
    count.records = tally.recorded;
    count.attempts = static_cast<int>(tries[k].size());
    count.timeouts = tally.timeouts;
    count.left_band = tally.flagged;
    count.forced = tally.forced;
    count.given_up = tally.given_up;
    count.unintended_stalls = tally.unintended_stalls;
    count.knocked_off = tally.knocked_off;
    counts.push_back(count);
  }
  return counts;
}

}  // namespace

SortieSummary flown_summary(const FlownSortie& flown, const std::vector<LogRow>& log) {
  const SortieConfig& config = flown.config;
  SortieSummary summary;
  summary.aircraft = config.type.name;
  summary.aircraft_summary = config.type.summary;
  summary.card = config.card.name;
  summary.card_summary = config.card.summary;
  summary.air = flown.air;
  summary.air_text = day_words(config.air);
  summary.sigma_kt = gust_sigma_kt(config);
  summary.pilot = config.pilot.name;
  summary.sensors = config.instruments.name;
  summary.seed = config.seed;
  summary.mass_kg = flown.outcome.entered_mass_kg;
  summary.reference_mass_kg = config.type.mass.reference_kg;
  summary.loading = loading_words(config);
  summary.working_altitude_ft = config.card.terrain_ft + config.card.working_height_ft;
  summary.floor_altitude_ft = config.card.terrain_ft + config.card.floor_ft;
  summary.wanted_uncertainty_kt = config.card.wanted_uncertainty_kt;
  summary.wanted_margin_kt = config.card.wanted_margin_kt;
  summary.version = flown.version;
  summary.events = flown_events(flown, log);
  summary.counts = flown_counts(flown, log);
  return summary;
}

}  // namespace stallwright
