#include <cmath>
#include <nlohmann/json.hpp>

#include "aircraft/math/units.hpp"
#include "sim/cli/flight_plan.hpp"
#include "sim/reduction/set_points_json.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright::cli {
namespace {

using Json = nlohmann::ordered_json;

std::string power_words(const TestPoint& point) {
  switch (point.power) {
    case PowerRule::level:
      return "level";
    case PowerRule::descent:
      return "down " + fixed(point.descent_fpm, 0) + " fpm";
    case PowerRule::idle:
      return "idle";
  }
  return "";
}

std::string how_words(const PlannedPoint& planned) {
  const TestPoint& point = planned.point;
  if (point.is_stall())
    return "from " + fixed(planned.speeds.entry_kt, 0) + ", lose " + shortest(point.entry_rate_ktps) +
           " kt/s to the break";
  if (!point.is_steady())
    return "from " + fixed(planned.speeds.entry_kt, 0) + " to " + fixed(planned.speeds.stop_kt, 0) +
           ", lose " + shortest(point.entry_rate_ktps) + " kt/s";
  return "record " + shortest(point.record_s) + " s";
}

std::string point_row(const std::string& name, const std::string& flaps, const std::string& power,
                      const std::string& speed, const std::string& band, const std::string& how) {
  return "  " + padded(name, 22, false) + padded(flaps, 6, true) + "  " + padded(power, 14, false) +
         padded(speed, 6, true) + padded(band, 15, true) + (how.empty() ? "" : "  " + how) + "\n";
}

std::string flaps_short(double flap_deg) { return flap_deg == 0.0 ? "up" : shortest(flap_deg) + "\u00b0"; }

std::string band_words(const PointSpeeds& speeds) {
  return fixed(speeds.band_low_kt, 1) + " to " + fixed(speeds.band_high_kt, 1);
}

std::string point_table(const FlightPlan& plan) {
  std::string text = "Speeds to fly, kt indicated (IAS = CAS assumed: apply your own correction card)\n";
  text += point_row("point", "flaps", "power", "speed", "band", "");
  for (const PlannedPoint& planned : plan.points)
    text += point_row(one_line(planned.point.name), flaps_short(planned.flap_deg), power_words(planned.point),
                      fixed(planned.speeds.set_up_kt(), 1), band_words(planned.speeds), how_words(planned));
  return text;
}

std::string limit_words(const FlightPlan& plan) {
  const AircraftType& type = plan.flight.type;
  const double mass_kg = plan.mass.mass_kg;
  std::string text = "Limits:  V_NE " + fixed(type.limits.v_ne_mps / kKnot, 0) + ", V_NO " +
                     fixed(type.limits.v_no_mps / kKnot, 0) + ", V_FE " +
                     fixed(type.limits.v_fe_mps / kKnot, 0) + ", V_A " +
                     fixed(type.limits.v_a_mps / kKnot, 0) + " kt (less when lighter)\n";
  return text + "Stall:   by the book at this mass, idle: " + fixed(book_stall_kt(type, 0, mass_kg), 1) +
         " kt flaps up, " + fixed(book_stall_kt(type, type.flaps.size() - 1, mass_kg), 1) +
         " kt flaps full\n";
}

std::string load_words(const FlightPlan& plan) {
  std::string text;
  const auto& stations = plan.flight.type.mass.stations;
  for (std::size_t i = 0; i < stations.size(); ++i)
    text += (i == 0 ? "" : ", ") + one_line(stations[i].name) + " " + shortest(plan.flight.loading.kg[i]);
  return text;
}

/// Cautions of the plan beside the general ones.
std::vector<std::string> day_questions() {
  return {"Smooth air: no gusts on the way up, early in the day (common practice).",
          "A qualified instructor on board who knows this aeroplane's stall, and has agreed to the card.",
          "Clear of cloud, traffic and built-up ground; clearing turns before each point.",
          "Below the floor: knock it off and recover, whatever is recorded by then."};
}

Json point_json(const PlannedPoint& planned) {
  const PointSpeeds& s = planned.speeds;
  return {{"name", planned.point.name},
          {"flap_deg", number_json(planned.flap_deg)},
          {"power", power_words(planned.point)},
          {"book_stall_kt", number_json(s.stall_kt)},
          {"target_kt", number_json(s.target_kt)},
          {"entry_kt", number_json(s.entry_kt)},
          {"stop_kt", number_json(s.stop_kt)},
          {"band_low_kt", number_json(s.band_low_kt)},
          {"band_high_kt", number_json(s.band_high_kt)},
          {"flap_limit_kt", number_json(s.flap_limit_kt)},
          {"entry_rate_ktps", number_json(planned.point.is_steady() ? kNone : planned.point.entry_rate_ktps)},
          {"record_s", number_json(planned.point.is_steady() ? planned.point.record_s : kNone)},
          {"note", s.note}};
}

}  // namespace

std::string plan_text(const FlightPlan& plan) {
  const AircraftType& type = plan.flight.type;
  std::string text = one_line(type.name) + " (invented), " + one_line(plan.flight.card.name) + ".\n\n";
  text += "Mass:    " + fixed(plan.mass.mass_kg, 0) + " kg of at most " + fixed(type.mass.max_kg, 0) +
          " kg (card speeds are given for " + fixed(type.mass.reference_kg, 0) + " kg)\n";
  text += filled("Load:    ", load_words(plan) + " kg");
  text += "Balance: " + fixed(plan.mass.cg.x_aft_m, 3) + " m aft of the datum, limits " +
          fixed(plan.cg_range.forward_m, 3) + " to " + fixed(plan.cg_range.aft_m, 3) + " m\n";
  text += "Heights: work at " + fixed(plan.working_altitude_ft, 0) + " ft on QNH " +
          fixed(plan.day.qnh_Pa / 100.0, 0) + " hPa, FLOOR " + fixed(plan.floor_altitude_ft, 0) +
          " ft (ground at " + fixed(plan.flight.card.terrain_ft, 0) + " ft)\n";
  text += "Density: altitude " + fixed(plan.density_altitude_ft, 0) + " ft (pressure altitude " +
          fixed(plan.pressure_altitude_ft, 0) + " ft, " + fixed(plan.temperature_C, 0) +
          " \u00b0C); true speed " + fixed(plan.true_per_indicated, 3) + " times indicated\n";
  text += limit_words(plan) + "\n" + point_table(plan) + "\nBefore you go\n";
  for (const GoItem& item : plan.items) text += filled(item.ok ? "  yes  " : "  NO   ", item.text);
  for (const std::string& question : day_questions()) text += filled("  [ ]  ", question);
  text += plan.go() ? "\nPlan: go, if the open boxes can be ticked.\n" : "\nPlan: NO GO as it stands.\n";
  for (const std::string& caution : cautions()) text += filled("Caution: ", caution);
  return text;
}

std::string plan_json(const FlightPlan& plan) {
  const AircraftType& type = plan.flight.type;
  Json points = Json::array(), items = Json::array(), loading = Json::array();
  for (const PlannedPoint& planned : plan.points) points.push_back(point_json(planned));
  for (const GoItem& item : plan.items) items.push_back({{"ok", item.ok}, {"text", item.text}});
  for (std::size_t i = 0; i < type.mass.stations.size(); ++i)
    loading.push_back(
        {{"station", type.mass.stations[i].name}, {"kg", number_json(plan.flight.loading.kg[i])}});
  return json_text({{"format", "stallwright-plan-1"},
                    {"aircraft", type.name},
                    {"card", plan.flight.card.name},
                    {"loading", loading},
                    {"mass_kg", number_json(plan.mass.mass_kg)},
                    {"reference_mass_kg", number_json(type.mass.reference_kg)},
                    {"cg_aft_m", number_json(plan.mass.cg.x_aft_m)},
                    {"cg_forward_limit_m", number_json(plan.cg_range.forward_m)},
                    {"cg_aft_limit_m", number_json(plan.cg_range.aft_m)},
                    {"qnh_hPa", number_json(plan.day.qnh_Pa / 100.0)},
                    {"temperature_offset_K", number_json(plan.day.temperature_offset_K)},
                    {"working_altitude_ft", number_json(plan.working_altitude_ft)},
                    {"floor_altitude_ft", number_json(plan.floor_altitude_ft)},
                    {"pressure_altitude_ft", number_json(plan.pressure_altitude_ft)},
                    {"density_altitude_ft", number_json(plan.density_altitude_ft)},
                    {"points", points},
                    {"go", plan.go()},
                    {"items", items},
                    {"cautions", cautions()}});
}

}  // namespace stallwright::cli
