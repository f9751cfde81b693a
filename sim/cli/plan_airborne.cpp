// The parts of the plan that are read in the air: floor, speeds, limits.
#include <algorithm>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "sim/cli/plan_sections.hpp"
#include "sim/report/number_text.hpp"

namespace stallwright::cli {
namespace {

std::string how_words(const PlannedPoint& planned) {
  const TestPoint& point = planned.point;
  if (point.is_stall()) return "lose " + shortest(point.entry_rate_ktps) + " kt/s to the break";
  if (!point.is_steady())
    return "to " + fixed(planned.speeds.stop_kt + planned.correction_kt(), 0) + ", lose " +
           shortest(point.entry_rate_ktps) + " kt/s";
  return "record " + shortest(point.record_s) + " s";
}

/// Bands go with the speed that the dial shows.
std::string band_words(const PlannedPoint& planned) {
  const double by = planned.correction_kt();
  return fixed(planned.speeds.band_low_kt + by, 1) + " to " + fixed(planned.speeds.band_high_kt + by, 1);
}

std::string ias_note(const FlightPlan& plan) {
  if (!plan.position_error_known)
    return "IAS = CAS assumed: the type file states no position error. Apply your own correction card.";
  double most = 0.0;
  for (const PlannedPoint& planned : plan.points) most = std::fmax(most, std::abs(planned.correction_kt()));
  return "IAS: what this type's dial shows at that CAS, by its position error at that angle of attack; for "
         "yours use the "
         "manual's correction card. A rehearsal holds the CAS figure on its dial, at most " +
         fixed(most, 1) + " kt away.";
}

std::string height_row(double feet) { return fixed(feet, 0) + " ft"; }

PlanTable stall_table(const FloorPlan& floor) {
  PlanTable table;
  table.caption = "Height lost, power off, simulated current pilot, calm air: the worse of two";
  table.headings = {"flaps", "entry, kt/s", "stalls", "from break, ft", "from idle, ft", "bank"};
  table.numeric = {false, true, true, true, true, true};
  for (const StallFlown& stall : floor.stalls)
    table.rows.push_back({flaps_short(stall.flap_deg), shortest(stall.entry_rate_ktps),
                          std::to_string(stall.flown), fixed(stall.recovery_ft, 0),
                          fixed(stall.from_entry_ft, 0), fixed(stall.greatest_bank_deg, 0) + "\u00b0"});
  return table;
}

std::vector<std::string> limit_row(const std::string& name, double cas_kt) {
  return {name, fixed(cas_kt, 0), ""};
}

}  // namespace

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

std::string flaps_short(double flap_deg) { return flap_deg == 0.0 ? "up" : shortest(flap_deg) + "\u00b0"; }

PlanSection floor_section(const FlightPlan& plan) {
  const TestCard& card = plan.flight.card;
  const FloorPlan& f = plan.floor;
  PlanSection section{"Floor", {}, {}, {}, 2, "floor keep"};
  section.lines.push_back("FLOOR " + fixed(f.indicated_ft, 0) + " ft. Begin no stall below " +
                          fixed(f.lowest_entry_indicated_ft, 0) + " ft.");
  section.lines.push_back(
      "On QNH " + fixed(plan.day.qnh_Pa / 100.0, 0) + " hPa; the floor is " + height_row(card.floor_ft) +
      " above ground at " + height_row(card.terrain_ft) + ". Needed: " + height_row(f.needed_ft) +
      ", the greater of " + height_row(kRecoveredBy_ft) +
      " (recovered by then: common practice for singles) and " + height_row(f.measured_need_ft) +
      ", which is " + shortest(kLateHand) + " times the " + height_row(f.recovery_ft) +
      " of the worst recovery shown here and " + height_row(kReserve_ft) +
      " in reserve (ours). A spin takes far more.");
  section.tables.push_back(stall_table(f));
  return section;
}

PlanSection speed_section(const FlightPlan& plan) {
  PlanTable table;
  table.caption = "At " + fixed(plan.mass.mass_kg, 0) + " kg, kt; slow points: the speed to begin at";
  table.headings = {"point", "flaps", "power", "CAS", "IAS", "band, IAS", "then"};
  table.numeric = {false, false, false, true, true, true, false};
  for (const PlannedPoint& p : plan.points)
    table.rows.push_back({p.point.name, flaps_short(p.flap_deg), power_words(p.point),
                          fixed(p.speeds.set_up_kt(), 1), fixed(p.speeds.set_up_kt() + p.correction_kt(), 1),
                          band_words(p), how_words(p)});
  return {"Speeds to fly", {table}, {ias_note(plan)}, {}, 2, "speeds keep"};
}

PlanSection limit_section(const FlightPlan& plan) {
  const AircraftType& type = plan.flight.type;
  PlanTable table;
  table.headings = {"limit", "kt CAS", "manual says"};
  table.numeric = {false, true, false};
  table.rows = {limit_row("V_NE", type.limits.v_ne_mps / kKnot),
                limit_row("V_NO", type.limits.v_no_mps / kKnot),
                limit_row("V_A at " + fixed(type.mass.max_kg, 0) + " kg", type.limits.v_a_mps / kKnot),
                limit_row("V_A as loaded, " + fixed(plan.mass.mass_kg, 0) + " kg", plan.v_a_kt),
                limit_row("V_FE", type.limits.v_fe_mps / kKnot)};
  for (const FlapSetting& flap : type.flaps)
    if (flap.deflection_rad > 0.0)
      table.rows.push_back(limit_row("flaps " + flaps_short(flap.deflection_rad / math::kDegree),
                                     flap.limit_speed_mps / kKnot));
  PlanSection section{"Limits", {table}, {}, {}, 2, "half"};
  section.lines.push_back(
      "V_A falls with the root of the mass: a light wing reaches its load factor before it stalls. "
      "Load factor " +
      shortest(type.limits.min_load_factor) + " to " + shortest(type.limits.max_load_factor) + ".");
  section.lines.push_back(std::string("Intentional stalls: the type file says ") +
                          (type.limits.stalls_permitted ? "permitted" : "NOT PERMITTED") +
                          "; your flight manual, at this mass and loading: ____________________");
  return section;
}

}  // namespace stallwright::cli
