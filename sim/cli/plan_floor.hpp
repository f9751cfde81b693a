#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "aircraft/mass_properties.hpp"
#include "sim/air/standard_atmosphere.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright::cli {

/// Common practice for single-engine aeroplanes: recovered from a stall by this height above ground, ft.
inline constexpr double kRecoveredBy_ft = 1500.0;
/// What must be left below a late recovery, and how many times the measured height a late or rough one takes. Ours.
inline constexpr double kReserve_ft = 500.0, kLateHand = 2.0;

/// The greatest height of several power-off stalls flown by the simulated current pilot in calm air.
struct StallFlown {
  double flap_deg = 0.0, entry_rate_ktps = 1.0;
  int flown = 0;                   ///< stalls that were flown to the climb away
  double recovery_ft = kUnset;     ///< from the break to the lowest point
  double from_entry_ft = kUnset;   ///< from closing the throttle to the lowest point
  double greatest_bank_deg = 0.0;  ///< on the way
  std::string failure;             ///< why no figure came of it
};

/// Heights above ground that the day asks for.
struct FloorPlan {
  std::vector<StallFlown> stalls;
  double recovery_ft = kUnset, from_entry_ft = kUnset;  ///< the greatest of all; NaN: none was flown
  double measured_need_ft = kUnset;                     ///< kLateHand x recovery + kReserve_ft
  double needed_ft = kRecoveredBy_ft;                   ///< the greater of that and common practice
  double lowest_entry_ft = kUnset;  ///< close the throttle no lower: card's floor and `from_entry_ft`
  double indicated_ft = kUnset;     ///< the card's floor on an altimeter set to QNH, rounded up to 10 ft
  double lowest_entry_indicated_ft = kUnset;
  bool floor_ok(const TestCard& card) const { return card.floor_ft >= needed_ft; }
  bool room_ok(const TestCard& card) const { return card.working_height_ft >= lowest_entry_ft; }
};

/// The stalls to fly for a card: its own, no two alike, and one of 1 kt/s in each flap setting that has none.
std::vector<TestPoint> stalls_of(const TestCard& card);

/// Flies a stall power off, twice: the simulated current pilot, standard instruments, calm air of the day's density at
/// the card's working height, seed 1, the airframe that `rehearse` flies. The same plan gives the same numbers.
StallFlown fly_stall(const AircraftType& type, const Loading& loading, const TestCard& card, const Day& day,
                     const TestPoint& point);

/// On an altimeter whose QNH comes from a station on the ground below: right there, and above it by as much as the
/// day's air makes it. In cold air it shows more height than there is, so the reading to keep is higher; the bonus of a
/// warm day is not taken.
double indicated_for(const TestCard& card, const Day& day, double height_ft);

FloorPlan plan_floor(const TestCard& card, const Day& day, std::vector<StallFlown> stalls);

}  // namespace stallwright::cli
