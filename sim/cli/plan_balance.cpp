#include "sim/cli/plan_balance.hpp"

#include <algorithm>

#include "aircraft/math/units.hpp"
#include "sim/air/airspeed.hpp"
#include "sim/motion/performance.hpp"

namespace stallwright::cli {
namespace {

double slow_speed_kt(const Aircraft& aircraft, const TestCard& card) {
  constexpr double kNoPoint = 1.15;
  double slowest = kUnset;
  for (const TestPoint& point : card.points) {
    if (!point.is_steady() || point.flap_setting != 0) continue;
    slowest = std::fmin(slowest, point_speeds(point, aircraft.type, aircraft.mass.mass_kg).target_kt);
  }
  return slowest == slowest ? slowest : kNoPoint * book_stall_kt(aircraft.type, 0, aircraft.mass.mass_kg);
}

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

BalanceRow row_of(const std::string& name, const Aircraft& aircraft, double slow_kt,
                  const WorkingAir& where) {
  BalanceRow row{name, aircraft.mass.cg.x_aft_m};
  if (const auto slow = steady_flight(aircraft, at(slow_kt, TrimCondition::Power::path, where)))
    row.stick_slow = slow->controls.stick_aft;
  const StallFigure stall = stall_figure(aircraft, 0.0);
  row.stick_stall = stall.stick_aft;
  row.stall_kt = stall.speed_mps / kKnot;
  row.stop_ends_it = stall.limit == StallFigure::Limit::elevator;
  return row;
}

}  // namespace

Balance balance_effects(const Aircraft& aircraft, const TestCard& card, const WorkingAir& where) {
  const double mass_kg = aircraft.mass.mass_kg;
  const CgRange range = envelope_range(aircraft.type, mass_kg);
  const auto moved = [&](double cg_m) {
    return make_aircraft(aircraft.type, ballasted(aircraft.type, mass_kg, cg_m), 0);
  };
  const Aircraft forward = moved(range.forward_m), aft = moved(range.aft_m);
  Balance balance;
  balance.slow_kt = slow_speed_kt(aircraft, card);
  balance.rows = {row_of("forward limit", forward, balance.slow_kt, where),
                  row_of("as loaded", aircraft, balance.slow_kt, where),
                  row_of("aft limit", aft, balance.slow_kt, where)};
  const double ahead = elevator_slope(forward, where), behind = elevator_slope(aft, where);
  balance.neutral_point_m = range.forward_m + (range.aft_m - range.forward_m) * ahead / (ahead - behind);
  for (BalanceRow& row : balance.rows)
    row.static_margin = (balance.neutral_point_m - row.cg_aft_m) / aircraft.mean_chord_m;
  return balance;
}

}  // namespace stallwright::cli
