#include "aircraft/math/units.hpp"
#include "sim/cli/plan_sections.hpp"
#include "sim/cli/text_table.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright::cli {
namespace {

std::string load_words(const FlightPlan& plan) {
  std::string text;
  const auto& stations = plan.flight.type.mass.stations;
  for (std::size_t i = 0; i < stations.size(); ++i)
    text += (i == 0 ? "" : ", ") + one_line(stations[i].name) + " " + shortest(plan.flight.loading.kg[i]);
  return text + " kg";
}

std::string stall_words(const FlightPlan& plan) {
  const AircraftType& type = plan.flight.type;
  const auto speed = [&](std::size_t flap, double ias_kt) {
    const std::string ias = plan.position_error_known ? " (IAS " + fixed(ias_kt, 1) + ")" : "";
    return fixed(book_stall_kt(type, flap, plan.mass.mass_kg), 1) + " kt CAS" + ias;
  };
  return "by the book at this mass, idle: " + speed(0, plan.stall_up_ias_kt) + " flaps up, " +
         speed(type.flaps.size() - 1, plan.stall_full_ias_kt) + " flaps full";
}

std::string section_text(const PlanSection& section) {
  std::string text = "\n" + section.heading + "\n";
  for (const PlanTable& table : section.tables) {
    if (!table.caption.empty()) text += filled("  ", table.caption);
    text += text_table(table.headings, table.numeric, table.rows);
  }
  for (const std::string& line : section.lines) text += filled("  ", line);
  for (const AirItem& item : section.air)
    text += filled("  [ ]  ", item.what + ": " + item.wanted + "; observed ____________. Because: " +
                                  item.reason + " (" + item.basis + ").");
  return text;
}

}  // namespace

std::vector<PlanFact> plan_facts(const FlightPlan& plan) {
  const AircraftType& type = plan.flight.type;
  return {
      {"Mass", fixed(plan.mass.mass_kg, 0) + " kg of at most " + fixed(type.mass.max_kg, 0) +
                   " kg (card speeds are given for " + fixed(type.mass.reference_kg, 0) + " kg)"},
      {"Load", load_words(plan)},
      {"Balance", fixed(plan.mass.cg.x_aft_m, 3) + " m aft of the datum, limits " +
                      fixed(plan.cg_range.forward_m, 3) + " to " + fixed(plan.cg_range.aft_m, 3) + " m"},
      {"Heights", "work at " + fixed(plan.working_altitude_ft, 0) + " ft on QNH " +
                      fixed(plan.day.qnh_Pa / 100.0, 0) + " hPa, FLOOR " + fixed(plan.floor.indicated_ft, 0) +
                      " ft (ground at " + fixed(plan.flight.card.terrain_ft, 0) + " ft)"},
      {"Density", "altitude " + fixed(plan.density_altitude_ft, 0) + " ft (pressure altitude " +
                      fixed(plan.pressure_altitude_ft, 0) + " ft, " + fixed(plan.temperature_C, 0) +
                      " \u00b0C); true speed " + fixed(plan.true_per_indicated, 3) + " times indicated"},
      {"Stall", stall_words(plan)}};
}

std::string plan_text(const FlightPlan& plan) {
  std::string text =
      one_line(plan.flight.type.name) + " (invented), " + one_line(plan.flight.card.name) + ".\n\n";
  for (const PlanFact& fact : plan_facts(plan)) text += filled(padded(fact.name + ":", 9, false), fact.value);
  for (const PlanSection& section : plan_sections(plan)) text += section_text(section);
  text += "\nBefore you go\n";
  for (const GoItem& item : plan.items) text += filled(item.ok ? "  yes  " : "  NO   ", item.text);
  for (const std::string& question : crew_questions()) text += filled("  [ ]  ", question);
  text += plan.go() ? "\nPlan: go, if the open boxes can be ticked.\n" : "\nPlan: NO GO as it stands.\n";
  for (const std::string& caution : cautions()) text += filled("Caution: ", caution);
  return text;
}

}  // namespace stallwright::cli
