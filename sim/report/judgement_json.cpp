#include "sim/report/judgement_json.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "sim/reduction/set_points_json.hpp"

namespace stallwright {
namespace {

using Json = nlohmann::ordered_json;

/// `window mean` -> `window_mean`: readings are named in words, keys have no blanks.
std::string reading_key(std::string name) {
  std::replace(name.begin(), name.end(), ' ', '_');
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

Json split_json(const ErrorSplit& split) {
  return {{"sensor", number_json(split.sensor_kt)},
          {"air", number_json(split.air_kt)},
          {"hold", number_json(split.hold_kt)},
          {"entry_rate", number_json(split.entry_kt)},
          {"remainder", number_json(split.remainder_kt)}};
}

void add_reading_error(Json& readings, const ReadingError& error, const JudgedPoint& point) {
  Json& reading = readings[reading_key(error.name)];
  // The measured values stand there already when the name is one of the point's own readings.
  if (!reading.contains("ratio")) reading["ratio"] = number_json(error.ratio);
  if (!reading.contains("u")) reading["u"] = number_json(error.u);
  reading["true_ratio"] = number_json(point.true_ratio);
  reading["true_speed_kt"] = number_json(point.true_speed_kt);
  reading["error_ratio"] = number_json(error.error_ratio);
  reading["error_deg"] = number_json(error.error_deg);
  reading["error_kt"] = number_json(error.error_kt);
  reading["error_split_kt"] = split_json(error.split);
}

Json judged_point_json(const JudgedPoint& point) {
  Json json = set_point_json(point.measured);
  json["true_ratio"] = number_json(point.true_ratio);
  json["true_speed_kt"] = number_json(point.true_speed_kt);
  json["true_alpha_deg"] = number_json(point.true_alpha_deg);
  json["measured_speed_kt"] = number_json(point.measured_speed_kt);
  json["error_ratio"] = number_json(point.error_ratio);
  json["error_deg"] = number_json(point.error_deg);
  json["error_kt"] = number_json(point.error_kt);
  json["error_split_kt"] = split_json(point.split);
  json["expanded_kt"] = number_json(point.expanded_kt);
  json["margin_kt"] = number_json(point.margin_kt);
  json["true_margin_kt"] = number_json(point.true_margin_kt);
  json["covered"] = point.covered;
  for (const ReadingError& error : point.readings) add_reading_error(json["readings"], error, point);
  return json;
}

Json protection_json(const Protection& protection) {
  Json rows = Json::array();
  for (const ProtectionRow& row : protection.rows)
    rows.push_back({{"flap_deg", number_json(row.flap_deg)},
                    {"taught_flap_deg", number_json(row.taught_flap_deg)},
                    {"power", power_name(row.power)},
                    {"bank_deg", number_json(row.bank_deg)},
                    {"mass_kg", number_json(row.mass_kg)},
                    {"warning_kt", number_json(row.warning_kt)},
                    {"stall_kt", number_json(row.stall_kt)},
                    {"margin_kt", number_json(row.margin_kt)},
                    {"in_use", row.in_use},
                    {"note", row.note}});
  const ProtectionRow* least = protection.least();
  return {{"taught_margin_kt", number_json(protection.taught_margin_kt)},
          {"least_margin_kt", number_json(least ? least->margin_kt : kNone)},
          {"sentence", protection.sentence},
          {"rows", std::move(rows)}};
}

Json judged_set_json(const JudgedSet& set) {
  Json points = Json::array();
  for (const JudgedPoint& point : set.points) points.push_back(judged_point_json(point));
  return {{"flap_deg", number_json(set.flap_deg)},
          {"mass_kg", number_json(set.mass_kg)},
          {"order_ok", set.order_ok},
          {"stall_speed_kt", number_json(set.stall_speed_kt)},
          {"points", std::move(points)}};
}

}  // namespace

std::string_view verdict_key(Verdict verdict) {
  switch (verdict) {
    case Verdict::keep:
      return "keep";
    case Verdict::fly_again:
      return "fly_again";
    case Verdict::wait_for_better_air:
      return "wait_for_better_air";
  }
  return "";
}

std::string judgement_to_json(const Judgement& judgement, const Protection& protection,
                              const std::string& card, const std::string& aircraft) {
  Json sets = Json::array();
  for (const JudgedSet& set : judgement.sets) sets.push_back(judged_set_json(set));
  return json_text({{"format", std::string(kJudgementFormat)},
                    {"card", card},
                    {"aircraft", aircraft},
                    {"verdict", std::string(verdict_key(judgement.verdict))},
                    {"reason", judgement.reason},
                    {"fly_again", judgement.fly_again},
                    {"sets", std::move(sets)},
                    {"protection", protection_json(protection)}});
}

}  // namespace stallwright
