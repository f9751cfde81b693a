#include "sim/report/sortie_json.hpp"

#include <cmath>
#include <nlohmann/json.hpp>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/units.hpp"
#include "sim/reduction/set_points_json.hpp"

namespace stallwright {
namespace {

using Json = nlohmann::ordered_json;

Json air_json(const FlownSortie& flown) {
  const AirPreset& air = flown.config.air;
  Json json = {{"name", flown.air},
               {"preset", air.name},
               {"file", "air.toml"},
               {"sigma_kt", number_json(gust_sigma_kt(flown.config))},
               {"temperature_offset_K", number_json(air.day.temperature_offset_K)},
               {"qnh_hPa", number_json(air.day.qnh_Pa / 100.0)},
               {"wind_from_deg", number_json(air.wind.from_rad / math::kDegree)},
               {"wind_kt", number_json(air.wind.speed_mps / kKnot)}};
  if (air.convection) json["local_hour"] = number_json(air.convection->hour);
  if (air.turbulence != TurbulenceModel::kDryden) json["turbulence"] = turbulence_model_name(air.turbulence);
  if (!air.gusts.empty()) json["discrete_gusts"] = air.gusts.size();
  return json;
}

Json loading_json(const SortieConfig& config) {
  Json loading = Json::array();
  for (std::size_t i = 0; i < config.loading.kg.size(); ++i)
    loading.push_back(
        {{"station", config.type.mass.stations[i].name}, {"kg", number_json(config.loading.kg[i])}});
  return loading;
}

Json mass_json(const FlownSortie& flown) {
  const AircraftType& type = flown.config.type;
  const MassProperties mass = mass_properties(type, flown.config.loading);
  const CgRange range = envelope_range(type, mass.mass_kg);
  return {{"true_kg", number_json(mass.mass_kg)},
          {"stated_kg", number_json(flown.outcome.entered_mass_kg)},
          {"reference_kg", number_json(type.mass.reference_kg)},
          {"cg_aft_m", number_json(mass.cg.x_aft_m)},
          {"cg_forward_limit_m", number_json(range.forward_m)},
          {"cg_aft_limit_m", number_json(range.aft_m)}};
}

Json points_json(const FlownSortie& flown) {
  Json points = Json::array();
  const TestCard& card = flown.config.card;
  for (std::size_t k = 0; k < flown.outcome.tallies.size() && k < card.points.size(); ++k) {
    const PointTally& tally = flown.outcome.tallies[k];
    const double flap_rad = flown.config.type.flaps.at(card.points[k].flap_setting).deflection_rad;
    points.push_back({{"name", card.points[k].name},
                      {"flap_deg", number_json(flap_rad / math::kDegree)},
                      {"recorded", tally.recorded},
                      {"forced", tally.forced},
                      {"flagged", tally.flagged},
                      {"given_up", tally.given_up},
                      {"timeouts", tally.timeouts},
                      {"unintended_stalls", tally.unintended_stalls},
                      {"knocked_off", tally.knocked_off},
                      {"no_break", tally.no_break}});
  }
  return points;
}

Json events_json(const SortieOutcome& outcome) {
  Json events = Json::array();
  for (const Event& event : outcome.events)
    events.push_back({{"time_s", number_json(event.time_s)},
                      {"point", event.point},
                      {"kind", event.kind},
                      {"text", event.text}});
  return events;
}

Json taught_json(const FlownSortie& flown) {
  if (!flown.taught) return nullptr;
  return {{"file", "taught.json"}, {"power", power_name(flown.taught->power)}};
}

Json ended_json(const FlownSortie& flown) {
  if (!flown.ended) return nullptr;
  return {{"finished", flown.outcome.finished},
          {"failure", flown.outcome.failure},
          {"numeric_failure", flown.outcome.failure_kind == SortieOutcome::Failure::not_finite},
          {"time_s", number_json(flown.outcome.ended_s)}};
}

}  // namespace

double gust_sigma_kt(const SortieConfig& config) {
  return turbulence_scales(config.air.intensity(), config.card.working_height_ft * kFoot).sigma_u_mps / kKnot;
}

std::string sortie_to_json(const FlownSortie& flown) {
  const SortieConfig& config = flown.config;
  return json_text(
      {{"format", std::string(kSortieFormat)},
       {"version", flown.version},
       {"aircraft", {{"key", config.type.key}, {"name", config.type.name}, {"file", "aircraft.toml"}}},
       {"card", {{"key", config.card.key}, {"name", config.card.name}, {"file", "card.toml"}}},
       {"air", air_json(flown)},
       {"pilot", config.pilot.name},
       {"sensors", config.instruments.name},
       {"seed", config.seed},
       {"airframe_seed", config.airframe_seed},
       {"instrument_seed", config.instrument_seed ? Json(*config.instrument_seed) : Json(nullptr)},
       {"sortie", config.sortie},
       {"loading", loading_json(config)},
       {"mass", mass_json(flown)},
       {"taught", taught_json(flown)},
       {"ended", ended_json(flown)},
       {"events", events_json(flown.outcome)},
       {"points", points_json(flown)}});
}

}  // namespace stallwright
