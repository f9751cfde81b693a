// What the crew fills in or goes by: the manual's own steps, knock-it-off, the record, the signatures.
#include "sim/cli/plan_sections.hpp"
#include "sim/report/number_text.hpp"

namespace stallwright::cli {
namespace {

std::string blank(std::size_t letters) { return std::string(letters, '_'); }

/// A row for each try of each point, in flying order.
std::vector<std::vector<std::string>> record_rows(const FlightPlan& plan) {
  std::vector<std::vector<std::string>> rows;
  for (const PlannedPoint& p : plan.points)
    for (int i = 1; i <= p.point.repeats; ++i)
      rows.push_back({p.point.name + ", " + flaps_short(p.flap_deg),
                      p.point.repeats > 1 ? std::to_string(i) : "",
                      fixed(p.speeds.set_up_kt() + p.correction_kt(), 0), "", "", "", "", "", "", ""});
  return rows;
}

}  // namespace

PlanSection manual_section(const FlightPlan& plan) {
  PlanTable table;
  table.caption = "As your flight manual says: copy its steps and figures here before the flight";
  table.headings = {"what", "page", "steps and figures of your manual"};
  table.numeric = {false, false, false};
  for (const char* what : {"checks before stalling", "height and place", "cabin and seats", "engine and fuel",
                           "stall recovery", "height it may cost", "spin recovery", "if flaps were out"})
    table.rows.push_back({what, "", ""});
  const bool turns = plan.flight.card.clearing_turns;
  return {
      "Checks and recovery",
      {table},
      {std::string("Clearing turns: ") +
       (turns
            ? "the card asks for them before each point, 90\u00b0 one way and back at up to 30\u00b0 of bank "
              "(common practice), no slower than 1.3 times the stall speed."
            : "the card does not ask for them; look out all the same.") +
       " Yours: " + blank(24)},
      {},
      2,
      "manual keep"};
}

PlanSection knock_off_section(const FlightPlan& plan) {
  PlanSection section{"Knock it off", {}, {}, {}, 2, "half list"};
  section.lines = {
      "Either of you says so, for whatever reason.",
      "At " + fixed(plan.floor.indicated_ft, 0) + " ft on the altimeter: recover and climb, recorded or not.",
      "A stall, horn or buffet that the point did not ask for.",
      "Bank past 30\u00b0, a wing or the nose going where nobody steered it, any sign of a spin.",
      "Faster than a flap's limit with it out; faster than V_NO.",
      "Traffic, cloud nearer than allowed, no clear horizon, ground or people below.",
      "Gusts: the band left again and again; a point has its attempts, then leave it.",
      "Engine, fuel, radio or gauges not as they should be; airspeed and angle that do not fit each other.",
      "Tired, cold, airsick, or behind the aeroplane."};
  return section;
}

PlanSection record_section(const FlightPlan& plan) {
  PlanTable table;
  table.headings = {"point",   "try",     "set IAS", "ratio", "IAS",
                    "alt, ft", "\u00b0C", "smooth",  "time",  "notes"};
  table.numeric = {false, false, true, false, false, false, false, false, false, false};
  table.rows = record_rows(plan);
  return {"Written down in the air",
          {table},
          {"Ratio: the probe ratio or set point that the system took. Smooth: 1 like glass, 2 a ripple, 3 "
           "bumps, 4 "
           "wait for another day."},
          {},
          3,
          "record"};
}

PlanSection sign_off_section() {
  return {"Signed",
          {},
          {"Pilot " + blank(28) + "  Instructor " + blank(28), "Date " + blank(14) + "  Aeroplane " +
                                                                   blank(14) + "  QNH " + blank(8) +
                                                                   "  Fuel at start " + blank(8)},
          {},
          3,
          "signed keep"};
}

std::vector<PlanSection> plan_sections(const FlightPlan& plan) {
  return {balance_section(plan), climb_section(plan), air_section(plan),       floor_section(plan),
          speed_section(plan),   limit_section(plan), knock_off_section(plan), manual_section(plan),
          record_section(plan),  sign_off_section()};
}

}  // namespace stallwright::cli
