#include "sim/cli/flight_plan.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/units.hpp"
#include "sim/report/number_text.hpp"
#include "sim/sortie/card_check.hpp"

namespace stallwright::cli {
namespace {

/// At 8,000 ft the air has 0.79 of its density at sea level, and an engine that breathes it about three
/// quarters of its power (from memory): level points with flaps may not hold height. The choice of limit is
/// ours.
constexpr double kHighDensityAltitude_ft = 8000.0;

void add_limits(FlightPlan& plan) {
  for (const PlannedPoint& planned : plan.points)
    if (!planned.speeds.note.empty())
      plan.items.push_back({false, planned.point.name + ", flaps " + shortest(planned.flap_deg) +
                                       "\u00b0: " + planned.speeds.note});
}

void add_heights(FlightPlan& plan) {
  const TestCard& card = plan.flight.card;
  plan.items.push_back({true, "room from the working height down to the floor: " +
                                  fixed(card.working_height_ft - card.floor_ft, 0) + " ft"});
  plan.items.push_back({plan.density_altitude_ft < kHighDensityAltitude_ft,
                        "density altitude at the working height below " + fixed(kHighDensityAltitude_ft, 0) +
                            " ft, so that power is left: it is " + fixed(plan.density_altitude_ft, 0) +
                            " ft"});
}

}  // namespace

bool FlightPlan::go() const {
  return std::all_of(items.begin(), items.end(), [](const GoItem& item) { return item.ok; });
}

FlightPlan make_plan(const Flight& flight, const Day& day) {
  FlightPlan plan;
  plan.flight = flight;
  plan.day = day;
  plan.mass = mass_properties(flight.type, flight.loading);
  plan.cg_range = envelope_range(flight.type, plan.mass.mass_kg);
  plan.working_altitude_ft = flight.card.terrain_ft + flight.card.working_height_ft;
  plan.floor_altitude_ft = flight.card.terrain_ft + flight.card.floor_ft;

  const AtmosphereState<double> air = atmosphere(day, plan.working_altitude_ft * kFoot);
  plan.pressure_altitude_ft = pressure_altitude(air.pressure_Pa) / kFoot;
  plan.density_altitude_ft = density_altitude(air.density_kgpm3) / kFoot;
  plan.temperature_C = air.temperature_K - 273.15;
  plan.true_per_indicated = std::sqrt(ussa1976::kDensity / air.density_kgpm3);

  for (const TestPoint& point : flight.card.points)
    plan.points.push_back({point, flight.type.flaps[point.flap_setting].deflection_rad / math::kDegree,
                           point_speeds(point, flight.type, plan.mass.mass_kg)});

  plan.items.push_back({true, "mass and centre of gravity within the envelope"});
  const std::vector<std::string> problems = card_check(flight.card, flight.type);
  if (problems.empty()) plan.items.push_back({true, "the card fits the aeroplane"});
  for (const std::string& problem : problems)
    plan.items.push_back({false, "the card fits the aeroplane: " + problem});
  if (problems.empty()) add_limits(plan);
  add_heights(plan);
  return plan;
}

}  // namespace stallwright::cli
