// The parts of the plan that are for the ground: balance, climb, and the air to wait for.
#include <cmath>

#include "sim/cli/plan_sections.hpp"
#include "sim/report/number_text.hpp"

namespace stallwright::cli {
namespace {

std::string stick_words(double stick) {
  if (!std::isfinite(stick)) return kNoNumber;
  const std::string share = fixed(100.0 * std::abs(stick), 0) + " %";
  return share + (stick < 0.0 ? " forward" : " aft");
}

std::string stick_left(const BalanceRow& row) {
  if (row.stop_ends_it) return "none: stop first";
  return std::isfinite(row.stick_stall) ? fixed(100.0 * (1.0 - row.stick_stall), 0) + " %" : kNoNumber;
}

std::string trade_words(const Balance& balance) {
  const BalanceRow &ahead = balance.rows.front(), &behind = balance.rows.back();
  const double moves = ahead.stick_slow - behind.stick_slow, slower = ahead.stall_kt - behind.stall_kt;
  return "From the forward to the aft limit the stick at " + fixed(balance.slow_kt, 0) + " kt moves " +
         fixed(100.0 * std::abs(moves), 0) + " % of its way from neutral to the stop " +
         (moves < 0.0 ? "aft" : "forward") + ", the stall comes " + fixed(std::abs(slower), 1) + " kt " +
         (slower < 0.0 ? "faster" : "slower") + ", and the static margin goes from " +
         fixed(100.0 * ahead.static_margin, 0) + " to " + fixed(100.0 * behind.static_margin, 0) +
         " % of the mean chord.";
}

}  // namespace

PlanSection balance_section(const FlightPlan& plan) {
  const Balance& b = plan.balance;
  PlanTable table;
  table.caption = "This type in the simulator at " + fixed(plan.mass.mass_kg, 0) + " kg, flaps up";
  table.headings = {"centre of gravity", "m aft",          "stick, level " + fixed(b.slow_kt, 0) + " kt",
                    "at the stall",      "aft stick left", "stall, kt CAS",
                    "static margin"};
  table.numeric = {false, true, true, true, true, true, true};
  for (const BalanceRow& row : b.rows)
    table.rows.push_back({row.where, fixed(row.cg_aft_m, 3), stick_words(row.stick_slow),
                          stick_words(row.stick_stall), stick_left(row), fixed(row.stall_kt, 1),
                          fixed(100.0 * row.static_margin, 0) + " %"});
  PlanSection section{"Mass and balance", {table}, {trade_words(b)}, {}, 1, "balance keep"};
  section.lines.push_back(
      "Forward: a steadier and heavier stick, a faster stall, a nose that drops by itself, perhaps too "
      "little "
      "stick for a full stall. Aft: a light stick that asks for small hands, a slower stall, a nose that "
      "must be "
      "pushed, a spin that is harder to stop. Never outside either limit (common practice).");
  section.lines.push_back(
      "The wing stalls at one angle of attack wherever the load sits; load again as today "
      "when a set point is checked.");
  return section;
}

PlanSection climb_section(const FlightPlan& plan) {
  PlanTable table;
  table.caption = "Best climb at full power, working height, this mass";
  table.headings = {"flaps", "ft/min", "at kt CAS"};
  table.numeric = {false, true, true};
  for (const ClimbRow& row : plan.climb)
    table.rows.push_back({flaps_short(row.flap_deg), fixed(row.rate_fpm, 0), fixed(row.speed_kt, 0)});
  PlanSection section{"Height, density and climb", {table}, {}, {}, 1, "climb keep"};
  section.lines.push_back("Pressure altitude " + fixed(plan.pressure_altitude_ft, 0) +
                          " ft, density altitude " + fixed(plan.density_altitude_ft, 0) + " ft at " +
                          fixed(plan.temperature_C, 0) +
                          " \u00b0C; at the field, by your own chart: ______ ft.");
  return section;
}

PlanSection air_section(const FlightPlan& plan) {
  return {"The air to wait for",
          {},
          {"One no is enough to stay on the ground; early morning is the usual time "
           "(common practice)."},
          plan.air_items,
          1,
          "air"};
}

std::vector<std::string> crew_questions() {
  return {"A qualified instructor on board who knows this aeroplane's stall, and has agreed to the card.",
          "Clear of cloud, traffic and built-up ground; clearing turns before each point.",
          "Smooth air: no gusts on the way up, early in the day (common practice).",
          "Below the floor: knock it off and recover, whatever is recorded by then."};
}

}  // namespace stallwright::cli
