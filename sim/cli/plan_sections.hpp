#pragma once
#include <string>
#include <vector>

#include "sim/cli/flight_plan.hpp"

/// What the plan says, in plain words and without any markup: text and page are both made from it.
namespace stallwright::cli {

/// A table; a column with an empty cell is one to write in.
struct PlanTable {
  std::string caption;
  std::vector<std::string> headings;
  std::vector<bool> numeric;
  std::vector<std::vector<std::string>> rows;
};

/// One part of the plan. Sheets: 1 before the flight, 2 in the air, 3 to write in.
struct PlanSection {
  std::string heading;
  std::vector<PlanTable> tables;
  std::vector<std::string> lines;
  std::vector<AirItem> air;  ///< to be observed, each with a blank
  int sheet = 1;
  std::string
      look{};  ///< class on the page: "balance" (the envelope is drawn here), "half" (two of them side by side), ...
};

/// What must be known at a glance, name and value: mass, load, balance, heights, density, stall.
struct PlanFact {
  std::string name, value;
};
std::vector<PlanFact> plan_facts(const FlightPlan& plan);

std::vector<PlanSection> plan_sections(const FlightPlan& plan);

/// Pieces of it.
PlanSection balance_section(const FlightPlan& plan);
PlanSection climb_section(const FlightPlan& plan);
PlanSection air_section(const FlightPlan& plan);
PlanSection floor_section(const FlightPlan& plan);
PlanSection speed_section(const FlightPlan& plan);
PlanSection limit_section(const FlightPlan& plan);
PlanSection manual_section(const FlightPlan& plan);
PlanSection knock_off_section(const FlightPlan& plan);
PlanSection record_section(const FlightPlan& plan);
PlanSection sign_off_section();

/// Boxes that only the crew can tick.
std::vector<std::string> crew_questions();

std::string power_words(const TestPoint& point);
std::string flaps_short(double flap_deg);  ///< "up", "15°"

}  // namespace stallwright::cli
