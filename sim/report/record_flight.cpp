// The page to keep: what was flown, with which load and in which air.
#include <cmath>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/units.hpp"
#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/record_parts.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright::record {
namespace {

using html::element;
using html::text_element;

std::string fact(std::string_view name, const std::string& value) {
  return element("div", text_element("dt", name) + text_element("dd", value));
}

std::string air_words(const Debrief& debrief) {
  const AirPreset& air = debrief.flown.config.air;
  std::string words = debrief.flown.air;
  if (air.convection) words += "; local solar time " + clock_text(air.convection->hour);
  words += "; gusts \u03c3 " + page_fixed(debrief.page.summary.sigma_kt, 1) + " kt";
  if (air.turbulence == TurbulenceModel::kVonKarman) words += " (von Karman)";
  if (!air.gusts.empty()) words += ", and " + std::to_string(air.gusts.size()) + " by the air file";
  words += "; QNH " + page_fixed(air.day.qnh_Pa / 100.0, 1) + " hPa; temperature " +
           page_signed(air.day.temperature_offset_K, 1) + " K from standard; ";
  if (air.wind.speed_mps == 0.0) return words + "no wind";
  return words + "wind " + page_fixed(air.wind.from_rad / math::kDegree, 0) + "\u00b0 " +
         page_fixed(air.wind.speed_mps / kKnot, 0) + " kt";
}

std::string flap_settings(const Judgement& judgement) {
  std::string words;
  for (const JudgedSet& set : judgement.sets)
    words += (words.empty() ? "" : ", ") + (set.flap_deg == 0.0 ? "up" : shortest(set.flap_deg) + "\u00b0");
  return words.empty() ? kNoNumber : words;
}

std::string how_it_ended(const FlownSortie& flown) {
  if (!flown.ended) return "cut off in the air";
  const std::string time = page_fixed(flown.outcome.ended_s, 0) + " s";
  return flown.outcome.finished ? "flown to its end, " + time
                                : "ended early at " + time + ": " + flown.outcome.failure;
}

/// What must not be lost between folder and file: how often it went wrong.
std::string mishaps(const Debrief& debrief) {
  if (!debrief.flown.ended) return "not counted: the sortie was cut off";
  int stalls = 0, knocked = 0, forced = 0, given_up = 0;
  for (const PointTally& t : debrief.flown.outcome.tallies) {
    stalls += t.unintended_stalls;
    knocked += t.knocked_off;
    forced += t.forced;
    given_up += t.given_up;
  }
  return "unintended stalls " + std::to_string(stalls) + ", knocked off " + std::to_string(knocked) +
         ", recorded off condition " + std::to_string(forced) + ", points given up " +
         std::to_string(given_up);
}

std::string seeds(const SortieConfig& config) {
  return std::to_string(config.seed) + "; airframe " + std::to_string(config.airframe_seed) +
         (config.instrument_seed ? "; instruments " + std::to_string(*config.instrument_seed) : "") +
         (config.sortie != 0 ? "; sortie number " + std::to_string(config.sortie) : "");
}

std::string versions(const std::string& flown_with) {
  const std::string flown = "Stallwright " + (flown_with.empty() ? std::string(kNoNumber) : flown_with);
  return flown_with == STALLWRIGHT_VERSION ? flown : flown + "; judged with " STALLWRIGHT_VERSION;
}

std::string limits_text(double value, double low, double high) {
  return value < low || value > high ? " OUTSIDE" : "";
}

}  // namespace

std::string flight(const Debrief& debrief) {
  const SortieConfig& config = debrief.flown.config;
  std::string facts = fact("Aeroplane", config.type.name + " (invented), key " + config.type.key);
  facts += fact("Card", config.card.name + ", key " + config.card.key);
  facts += fact("Flaps", flap_settings(debrief.page.judgement) + " (a set of points each)");
  facts += fact("Air", air_words(debrief));
  facts += fact("Hands", config.by_hand ? "a person's" : config.pilot.name + " (simulated pilot)");
  facts += fact("Sensors", config.instruments.name);
  facts += fact("Seed", seeds(config));
  facts += fact("Sortie", how_it_ended(debrief.flown));
  facts += fact("Mishaps", mishaps(debrief));
  facts += fact("Made with", versions(debrief.flown.version));
  return element("dl", facts);
}

std::string loading(const Debrief& debrief) {
  const AircraftType& type = debrief.flown.config.type;
  const Loading& load = debrief.flown.config.loading;
  const MassProperties mass = mass_properties(type, load);
  const CgRange range = envelope_range(type, mass.mass_kg);
  html::Table table;
  table.headings = {"loading", "as flown", "limits"};
  table.numeric = {false, true, true};
  for (std::size_t i = 0; i < load.kg.size(); ++i)
    table.rows.push_back({escaped(type.mass.stations[i].name + ", kg"), page_fixed(load.kg[i], 1),
                          "to " + page_fixed(type.mass.stations[i].max_kg, 1)});
  table.rows.push_back({"<strong>Mass, kg</strong>",
                        page_fixed(mass.mass_kg, 1) + limits_text(mass.mass_kg, 0.0, type.mass.max_kg),
                        "to " + page_fixed(type.mass.max_kg, 1)});
  const double cg_m = mass.cg.x_aft_m;
  table.rows.push_back({"<strong>Cg, m aft of the datum</strong>",
                        page_fixed(cg_m, 3) + limits_text(cg_m, range.forward_m, range.aft_m),
                        page_fixed(range.forward_m, 3) + " to " + page_fixed(range.aft_m, 3)});
  table.rows.push_back(
      {"Mass as the pilot entered it, kg", page_fixed(debrief.flown.outcome.entered_mass_kg, 1), ""});
  return element("div", table.str());
}

}  // namespace stallwright::record
