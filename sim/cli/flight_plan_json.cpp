#include <nlohmann/json.hpp>

#include "aircraft/math/units.hpp"
#include "sim/cli/plan_sections.hpp"
#include "sim/reduction/set_points_json.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright::cli {
namespace {

using Json = nlohmann::ordered_json;

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
          {"ias_kt", number_json(planned.ias_kt)},
          {"throttle", number_json(planned.throttle)},
          {"flap_limit_kt", number_json(s.flap_limit_kt)},
          {"entry_rate_ktps", number_json(planned.point.is_steady() ? kNone : planned.point.entry_rate_ktps)},
          {"record_s", number_json(planned.point.is_steady() ? planned.point.record_s : kNone)},
          {"note", s.note}};
}

Json balance_json(const Balance& balance) {
  Json rows = Json::array();
  for (const BalanceRow& row : balance.rows)
    rows.push_back({{"where", row.where},
                    {"cg_aft_m", number_json(row.cg_aft_m)},
                    {"stick_aft_level", number_json(row.stick_slow)},
                    {"stick_aft_stall", number_json(row.stick_stall)},
                    {"stop_ends_it", row.stop_ends_it},
                    {"stall_kt", number_json(row.stall_kt)},
                    {"static_margin", number_json(row.static_margin)}});
  return {{"level_kt", number_json(balance.slow_kt)},
          {"neutral_point_m", number_json(balance.neutral_point_m)},
          {"at", rows}};
}

Json climb_json(const std::vector<ClimbRow>& climb) {
  Json rows = Json::array();
  for (const ClimbRow& row : climb)
    rows.push_back({{"flap_deg", number_json(row.flap_deg)},
                    {"rate_fpm", number_json(row.rate_fpm)},
                    {"speed_kt", number_json(row.speed_kt)}});
  return rows;
}

Json floor_json(const FloorPlan& floor, const TestCard& card) {
  Json stalls = Json::array();
  for (const StallFlown& stall : floor.stalls)
    stalls.push_back({{"flap_deg", number_json(stall.flap_deg)},
                      {"entry_rate_ktps", number_json(stall.entry_rate_ktps)},
                      {"flown", stall.flown},
                      {"recovery_ft", number_json(stall.recovery_ft)},
                      {"from_entry_ft", number_json(stall.from_entry_ft)},
                      {"greatest_bank_deg", number_json(stall.greatest_bank_deg)},
                      {"failure", stall.failure}});
  return {{"card_ft", number_json(card.floor_ft)},
          {"needed_ft", number_json(floor.needed_ft)},
          {"measured_need_ft", number_json(floor.measured_need_ft)},
          {"recovery_ft", number_json(floor.recovery_ft)},
          {"lowest_entry_ft", number_json(floor.lowest_entry_ft)},
          {"indicated_ft", number_json(floor.indicated_ft)},
          {"lowest_entry_indicated_ft", number_json(floor.lowest_entry_indicated_ft)},
          {"stalls", stalls}};
}

Json limits_json(const FlightPlan& plan) {
  const LimitsType& limits = plan.flight.type.limits;
  Json flaps = Json::array();
  for (const FlapSetting& flap : plan.flight.type.flaps)
    if (flap.deflection_rad > 0.0)
      flaps.push_back({{"flap_deg", number_json(flap.deflection_rad / math::kDegree)},
                       {"v_fe_kt", number_json(flap.limit_speed_mps / kKnot)}});
  return {{"v_ne_kt", number_json(limits.v_ne_mps / kKnot)},
          {"v_no_kt", number_json(limits.v_no_mps / kKnot)},
          {"v_fe_kt", number_json(limits.v_fe_mps / kKnot)},
          {"v_a_max_mass_kt", number_json(limits.v_a_mps / kKnot)},
          {"v_a_kt", number_json(plan.v_a_kt)},
          {"flaps", flaps},
          {"stalls_permitted", limits.stalls_permitted}};
}

Json air_json(const std::vector<AirItem>& air) {
  Json items = Json::array();
  for (const AirItem& item : air)
    items.push_back(
        {{"what", item.what}, {"wanted", item.wanted}, {"reason", item.reason}, {"basis", item.basis}});
  return items;
}

}  // namespace

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
                    {"balance", balance_json(plan.balance)},
                    {"qnh_hPa", number_json(plan.day.qnh_Pa / 100.0)},
                    {"temperature_offset_K", number_json(plan.day.temperature_offset_K)},
                    {"working_altitude_ft", number_json(plan.working_altitude_ft)},
                    {"floor_altitude_ft", number_json(plan.floor_altitude_ft)},
                    {"pressure_altitude_ft", number_json(plan.pressure_altitude_ft)},
                    {"density_altitude_ft", number_json(plan.density_altitude_ft)},
                    {"climb", climb_json(plan.climb)},
                    {"floor", floor_json(plan.floor, plan.flight.card)},
                    {"limits", limits_json(plan)},
                    {"position_error_known", plan.position_error_known},
                    {"book_stall_up_ias_kt", number_json(plan.stall_up_ias_kt)},
                    {"book_stall_full_ias_kt", number_json(plan.stall_full_ias_kt)},
                    {"points", points},
                    {"air", air_json(plan.air_items)},
                    {"go", plan.go()},
                    {"items", items},
                    {"cautions", cautions()}});
}

}  // namespace stallwright::cli
