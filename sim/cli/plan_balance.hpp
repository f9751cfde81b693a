#pragma once
#include <array>
#include <string>

#include "sim/cli/plan_speeds.hpp"

namespace stallwright::cli {

/// How the aeroplane of the plan handles with its centre of gravity at one place, at the mass of the day, flaps up. All
/// by trims of the simulator's aeroplane; stick as share of its aft travel, negative forward, 1 at the aft stop.
struct BalanceRow {
  std::string where;  ///< "forward limit", "as loaded", "aft limit"
  double cg_aft_m = kUnset;
  double stick_slow = kUnset;     ///< level, at the slow speed
  double stick_stall = kUnset;    ///< idle, at the stall
  double stall_kt = kUnset;       ///< idle, CAS, by the simulator and not by the book
  double static_margin = kUnset;  ///< stick fixed, share of the mean chord
  bool stop_ends_it = false;      ///< the aft stop comes before maximum lift
};

struct Balance {
  double slow_kt =
      kUnset;  ///< CAS: the slowest steady point with the flaps up, or 1.15 times the book's stall
  double neutral_point_m = kUnset;   ///< aft of the datum
  std::array<BalanceRow, 3> rows{};  ///< forward limit of this mass, as loaded, aft limit
};

/// One row for the aeroplane as it is made, with its elevator slope; rows are independent of each other.
///   elevator_slope  change of elevator with lift coefficient between idle flights at 1.6 and 1.3 times the book's stall
///   speed, rad; of the elevator, not of the stick, whose two halves are geared apart
struct BalanceTrims {
  BalanceRow row;
  double elevator_slope = kUnset;
};
BalanceTrims balance_trims(const std::string& name, const Aircraft& aircraft, double slow_kt,
                           const WorkingAir& where);

/// The slow speed of a card: see Balance.
double slow_speed_kt(const Aircraft& aircraft, const TestCard& card);

/// Aeroplanes at the forward limit of the mass, as loaded, and at the aft limit, even airframes.
std::array<Aircraft, 3> balance_aircraft(const Aircraft& aircraft);

/// Neutral point: the slope is taken as straight in the centre of gravity between the two limits, as it is for a linear
/// aeroplane (Cm_alpha is), and the neutral point is where it is nothing.
///   margin = (x_np - x_cg)/c,  c mean chord
Balance balance_of(double slow_kt, const std::array<BalanceTrims, 3>& trims, double mean_chord_m);

}  // namespace stallwright::cli
