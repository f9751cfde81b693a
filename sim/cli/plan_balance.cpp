#include "sim/cli/plan_balance.hpp"

#include <algorithm>

#include "aircraft/math/units.hpp"
#include "sim/air/airspeed.hpp"
#include "sim/motion/performance.hpp"

namespace stallwright::cli {
namespace {

TrimCondition at(double cas_kt, TrimCondition::Power power, const WorkingAir& where) {
  TrimCondition c;
  c.true_airspeed_mps = tas_of_cas(cas_kt * kKnot, where.air);
  c.power = power;
  c.altitude_m = where.altitude_m;
  c.density_kgpm3 = where.air.density_kgpm3;
  return c;
}

/// Change of elevator with lift coefficient between two idle speeds, rad. Not of stick: its two halves are geared apart.
double elevator_slope(const Aircraft& aircraft, const WorkingAir& where) {
  const double stall_kt = book_stall_kt(aircraft.type, 0, aircraft.mass.mass_kg);
  double elevator[2] = {}, inverse_square[2] = {};
  for (const int i : {0, 1}) {
    const double cas_kt = (i == 0 ? 1.6 : 1.3) * stall_kt;
    const auto trim = steady_flight(aircraft, at(cas_kt, TrimCondition::Power::throttle, where));
    if (!trim) return kUnset;
    elevator[i] = trim->state.airframe.elevator_rad;
    inverse_square[i] = 1.0 / (cas_kt * cas_kt);
  }
  // In units of the lift coefficient at the book's stall speed; only the ratio of two slopes counts.
  return (elevator[1] - elevator[0]) / ((inverse_square[1] - inverse_square[0]) * stall_kt * stall_kt);
}

}  // namespace

double slow_speed_kt(const Aircraft& aircraft, const TestCard& card) {
  constexpr double kNoPoint = 1.15;
  double slowest = kUnset;
  for (const TestPoint& point : card.points) {
    if (!point.is_steady() || point.flap_setting != 0) continue;
    slowest = std::fmin(slowest, point_speeds(point, aircraft.type, aircraft.mass.mass_kg).target_kt);
  }
  return slowest == slowest ? slowest : kNoPoint * book_stall_kt(aircraft.type, 0, aircraft.mass.mass_kg);
}

BalanceTrims balance_trims(const std::string& name, const Aircraft& aircraft, double slow_kt,
                           const WorkingAir& where) {
  BalanceRow row{name, aircraft.mass.cg.x_aft_m};
  if (const auto slow = steady_flight(aircraft, at(slow_kt, TrimCondition::Power::path, where)))
    row.stick_slow = slow->controls.stick_aft;
  const StallFigure stall = stall_figure(aircraft, 0.0);
  row.stick_stall = stall.stick_aft;
  row.stall_kt = stall.speed_mps / kKnot;
  row.stop_ends_it = stall.limit == StallFigure::Limit::elevator;
  return {row, elevator_slope(aircraft, where)};
}

std::array<Aircraft, 3> balance_aircraft(const Aircraft& aircraft) {
  const AircraftType& type = aircraft.type;
  const double mass_kg = aircraft.mass.mass_kg;
  const CgRange range = envelope_range(type, mass_kg);
  return {make_aircraft(type, ballasted(type, mass_kg, range.forward_m), 0), aircraft,
          make_aircraft(type, ballasted(type, mass_kg, range.aft_m), 0)};
}

Balance balance_of(double slow_kt, const std::array<BalanceTrims, 3>& trims, double mean_chord_m) {
  Balance balance;
  balance.slow_kt = slow_kt;
  const double ahead = trims.front().elevator_slope, behind = trims.back().elevator_slope;
  const double forward_m = trims.front().row.cg_aft_m, aft_m = trims.back().row.cg_aft_m;
  balance.neutral_point_m = forward_m + (aft_m - forward_m) * ahead / (ahead - behind);
  for (std::size_t i = 0; i < trims.size(); ++i) {
    balance.rows[i] = trims[i].row;
    balance.rows[i].static_margin = (balance.neutral_point_m - trims[i].row.cg_aft_m) / mean_chord_m;
  }
  return balance;
}

}  // namespace stallwright::cli
