#include "sim/cli/flight_plan.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/units.hpp"
#include "sim/report/number_text.hpp"
#include "sim/sortie/card_check.hpp"
#include "sim/threads/parallel.hpp"

namespace stallwright::cli {
namespace {

std::string point_words(const PlannedPoint& planned) {
  return planned.point.name + ", flaps " + shortest(planned.flap_deg) + "\u00b0: ";
}

void add_card(FlightPlan& plan) {
  const std::vector<std::string> problems = card_check(plan.flight.card, plan.flight.type);
  if (problems.empty()) plan.items.push_back({true, "the card fits the aeroplane"});
  for (const std::string& problem : problems)
    plan.items.push_back({false, "the card fits the aeroplane: " + problem});
  if (!problems.empty()) return;
  for (const PlannedPoint& planned : plan.points)
    if (!planned.speeds.note.empty())
      plan.items.push_back({false, point_words(planned) + planned.speeds.note});
}

void add_power(FlightPlan& plan) {
  const double clean_fpm = plan.climb.front().rate_fpm;
  plan.items.push_back({clean_fpm >= kLeastClimb_fpm,
                        "at least " + fixed(kLeastClimb_fpm, 0) +
                            " ft/min of climb left at the working height, flaps up, full power: it is " +
                            fixed(clean_fpm, 0) + " ft/min"});
  for (const PlannedPoint& planned : plan.points)
    if (!(planned.throttle <= 1.0))
      plan.items.push_back(
          {false, point_words(planned) + "full power does not hold it at the working height"});
}

void add_floor(FlightPlan& plan) {
  const TestCard& card = plan.flight.card;
  const FloorPlan& floor = plan.floor;
  plan.items.push_back({floor.floor_ok(card), "the card's floor, " + fixed(card.floor_ft, 0) +
                                                  " ft above ground, is no lower than the " +
                                                  fixed(floor.needed_ft, 0) + " ft that are needed"});
  plan.items.push_back({floor.room_ok(card), "room from the working height down to the floor, " +
                                                 fixed(card.working_height_ft - card.floor_ft, 0) +
                                                 " ft, for the most that a stall used up, " +
                                                 fixed(floor.from_entry_ft, 0) + " ft"});
  for (const StallFlown& stall : floor.stalls)
    if (!stall.failure.empty())
      plan.items.push_back({false, "a stall with flaps " + shortest(stall.flap_deg) +
                                       "\u00b0 was recovered from in the simulator: " + stall.failure});
}

void set_day(FlightPlan& plan, const WorkingAir& where) {
  plan.pressure_altitude_ft = pressure_altitude(where.air.pressure_Pa) / kFoot;
  plan.density_altitude_ft = density_altitude(where.air.density_kgpm3) / kFoot;
  plan.temperature_C = where.air.temperature_K - 273.15;
  plan.true_per_indicated = std::sqrt(ussa1976::kDensity / where.air.density_kgpm3);
}

/// The card with those of its points that this aeroplane has a flap setting for; card_check tells of the others.
TestCard flyable_card(TestCard card, const AircraftType& type) {
  std::erase_if(card.points, [&](const TestPoint& point) { return point.flap_setting >= type.flaps.size(); });
  return card;
}

/// All that takes trims and flights, as tasks that write each to a place of its own and so may share the processors.
void fly_the_numbers(FlightPlan& plan, const TestCard& card, const WorkingAir& where) {
  const AircraftType& type = plan.flight.type;
  const Aircraft aircraft = make_aircraft(type, plan.flight.loading, 0);
  const std::array<Aircraft, 3> balanced = balance_aircraft(aircraft);
  const double slow_kt = slow_speed_kt(aircraft, card);
  const std::vector<TestPoint> stalls = stalls_of(card);
  const std::vector<std::size_t> settings = climb_settings(card);
  std::array<BalanceTrims, 3> trims;
  std::vector<StallFlown> flown(stalls.size());
  plan.climb.resize(settings.size());
  plan.points.resize(card.points.size());

  std::vector<std::function<void()>> tasks;
  for (std::size_t i = 0; i < stalls.size(); ++i)
    tasks.emplace_back(
        [&, i] { flown[i] = fly_stall(type, plan.flight.loading, card, plan.day, stalls[i]); });
  constexpr std::array<const char*, 3> kWhere = {"forward limit", "as loaded", "aft limit"};
  for (std::size_t i = 0; i < balanced.size(); ++i)
    tasks.emplace_back([&, i] { trims[i] = balance_trims(kWhere[i], balanced[i], slow_kt, where); });
  for (std::size_t i = 0; i < settings.size(); ++i)
    tasks.emplace_back([&, i] { plan.climb[i] = climb_row(aircraft, settings[i], where); });
  for (std::size_t i = 0; i < card.points.size(); ++i)
    tasks.emplace_back([&, i] { plan.points[i] = planned_point(aircraft, card.points[i], where); });
  tasks.emplace_back([&] { plan.stall_up_ias_kt = book_stall_ias_kt(aircraft, 0, where); });
  tasks.emplace_back(
      [&] { plan.stall_full_ias_kt = book_stall_ias_kt(aircraft, type.flaps.size() - 1, where); });
  for_each_index(static_cast<int>(tasks.size()), 0, [&](int k) { tasks[static_cast<std::size_t>(k)](); });

  plan.balance = balance_of(slow_kt, trims, aircraft.mean_chord_m);
  plan.floor = plan_floor(card, plan.day, std::move(flown));
}

}  // namespace

bool FlightPlan::go() const {
  return std::all_of(items.begin(), items.end(), [](const GoItem& item) { return item.ok; });
}

FlightPlan make_plan(const Flight& flight, const Day& day, const ConvectiveDay& fair_day) {
  const AircraftType& type = flight.type;
  const TestCard card = flyable_card(flight.card, type);
  FlightPlan plan;
  plan.flight = flight;
  plan.day = day;
  plan.mass = mass_properties(type, flight.loading);
  plan.cg_range = envelope_range(type, plan.mass.mass_kg);
  plan.working_altitude_ft = card.terrain_ft + card.working_height_ft;
  plan.floor_altitude_ft = card.terrain_ft + card.floor_ft;
  const double altitude_m = plan.working_altitude_ft * kFoot;
  const WorkingAir where{altitude_m, atmosphere(day, altitude_m)};
  set_day(plan, where);

  plan.position_error_known = has_position_error(type);
  fly_the_numbers(plan, card, where);
  plan.v_a_kt = type.limits.v_a_mps / kKnot * std::sqrt(plan.mass.mass_kg / type.mass.max_kg);
  plan.air_items = air_to_wait_for({card, fair_day});

  plan.items.push_back({true, "mass and centre of gravity within the envelope"});
  add_card(plan);
  add_power(plan);
  add_floor(plan);
  return plan;
}

}  // namespace stallwright::cli
