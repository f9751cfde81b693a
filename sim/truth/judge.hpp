#pragma once
#include <vector>

#include "sim/reduction/set_points.hpp"
#include "sim/sortie/sortie.hpp"
#include "sim/truth/knots_map.hpp"
#include "sim/truth/static_response.hpp"

namespace stallwright {

/// The truth of one set point, before anybody measured it.
struct TruePoint {
  std::size_t card_point = 0;
  std::string name;
  bool is_stall = false;
  StaticPoint at;                ///< the steady flight that defines it
  double ratio_per_rad = kNone;  ///< d(ratio)/d(alpha) along the 1 g trim curve there
};

/// The truth of one flap setting of a card, for one aeroplane as loaded. Does not depend on the sortie's seed or air.
struct TrueSet {
  std::size_t flap_setting = 0;
  double flap_deg = 0.0, mass_kg = 0.0;
  std::vector<TruePoint> points;  ///< steady points in card order, then the stall
  KnotsMap map;                   ///< ratio to speed, one for measured and true values
};

/// Truth of every set of a card: static response of the installed probe and pitot-static system at the point's flap
/// and power rule, mass and cg as loaded, load factor 1, at the card speed x sqrt(m/m_ref) unless a flap limit binds;
/// the stall at quasi-static maximum lift, idle.
/// Throws std::runtime_error if a point has no steady flight.
std::vector<TrueSet> find_truth(const Aircraft& aircraft, const TestCard& card, const StillAir& air);

/// Still air at the working height of a card on a day.
StillAir working_air(const TestCard& card, const Day& day);

/// Holds set points against the truth and decides. Steady points without truth, or never recorded, stay in the list
/// with NaN errors.
Judgement judge(const SetPoints& measured, const std::vector<TrueSet>& truth, const TestCard& card,
                const AircraftType& type, const SortieOutcome& outcome);

}  // namespace stallwright
