#include "sim/reduction/set_points_json.hpp"

#include <nlohmann/json.hpp>

namespace stallwright {
namespace {

using Json = nlohmann::ordered_json;

Json reading_json(const Reading& reading) {
  return {{"ratio", number_json(reading.ratio)},
          {"u", number_json(reading.u)},
          {"type_a_u", number_json(reading.type_a_u)},
          {"dof", number_json(reading.dof)}};
}

Json readings_json(const SetPoint& point) {
  if (point.is_stall)
    return {{"break", reading_json(point.at_break)},
            {"peak", reading_json(point.peak)},
            {"max_lift", reading_json(point.max_lift)}};
  return {{"spot", reading_json(point.spot)},
          {"window_mean", reading_json(point.window_mean)},
          {"lift_corrected", reading_json(point.lift_corrected)}};
}

const char* shared_key(Shared shared) {
  switch (shared) {
    case Shared::record:
      return "record";
    case Shared::sortie:
      return "sortie";
    case Shared::installation:
      return "installation";
  }
  return "";
}

Json budget_json(const std::vector<BudgetLine>& budget) {
  Json lines = Json::array();
  for (const BudgetLine& line : budget)
    lines.push_back({{"name", line.name},
                     {"kind", std::string(1, line.kind)},
                     {"u_ratio", number_json(line.u_ratio)},
                     {"dof", number_json(line.dof)},
                     {"shared", shared_key(line.shared)},
                     {"note", line.note}});
  return lines;
}

Json window_json(const RecordWindow& window, bool is_stall) {
  Json json = {{"point", window.point},
               {"repeat", window.repeat},
               {"attempt", window.attempt},
               {"begin_s", number_json(window.begin_s)},
               {"end_s", number_json(window.end_s)},
               {"button_s", number_json(window.button_s)},
               {"left_band", window.left_band},
               {"forced", window.forced},
               {"load_factor_sd", number_json(window.load_factor_sd)}};
  if (window.sortie > 0) json["sortie"] = window.sortie;
  if (is_stall) {
    json["broke"] = window.broke;
    json["break_s"] = number_json(window.break_s);
    json["break_sign"] = window.break_sign;
    json["entry_rate_ktps"] = number_json(window.entry_rate_ktps);
  }
  return json;
}

Json set_json(const SetPointSet& set) {
  Json points = Json::array();
  for (const SetPoint& point : set.points) points.push_back(set_point_json(point));
  return {{"flap_deg", number_json(set.flap_deg)},
          {"mass_kg", number_json(set.mass_kg)},
          {"order_ok", set.order_ok},
          {"order_notes", set.order_notes},
          {"slope_per_x", number_json(set.slope_per_x)},
          {"points", std::move(points)}};
}

}  // namespace

Json number_json(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

std::string json_text(const Json& value) {
  return value.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Json set_point_json(const SetPoint& point) {
  Json windows = Json::array();
  for (const RecordWindow& window : point.windows) windows.push_back(window_json(window, point.is_stall));
  return {{"name", point.name},
          {"ratio", number_json(point.ratio)},
          {"u", number_json(point.u)},
          {"dof", number_json(point.dof)},
          {"interval_95", Json::array({number_json(point.interval_low), number_json(point.interval_high)})},
          {"speed_kt", number_json(point.speed_kt)},
          {"target_kt", number_json(point.target_kt)},
          {"slope_per_kt", number_json(point.slope_per_kt)},
          {"card_point", point.card_point},
          {"budget", budget_json(point.budget)},
          {"flags", point.flags},
          {"readings", readings_json(point)},
          {"windows", std::move(windows)}};
}

std::string set_points_to_json(const SetPoints& set_points) {
  Json sets = Json::array();
  for (const SetPointSet& set : set_points.sets) sets.push_back(set_json(set));
  return json_text({{"format", std::string(kSetPointsFormat)},
                    {"card", set_points.card},
                    {"aircraft", set_points.aircraft},
                    {"warnings", set_points.warnings},
                    {"sets", std::move(sets)}});
}

}  // namespace stallwright
