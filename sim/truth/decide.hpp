#pragma once
#include "sim/reduction/set_points.hpp"
#include "sim/sortie/sortie.hpp"

namespace stallwright {

/// Above this the air is rough: standard deviation of the load factor within a record. Smooth air gives 0.01 to 0.05
/// with any of the three pilots, light turbulence 0.04 to 0.11, moderate 0.09 to 0.28 (MIL-F-8785C at 3,000 ft, flown
/// with the three types).
inline constexpr double kRough = 0.09;

/// Rms of the vertical gusts in a record below which the air cannot have made it rough: light turbulence has about 0.8 m/s.
inline constexpr double kSmoothGust_mps = 0.25;

/// Fills in the verdict, its reason and which points to fly again. In this order, the first that holds:
/// Where the truth says that the air was smooth in every record (kSmoothGust_mps), a load factor that swings comes from the
/// hand: nothing below is then laid to the air.
///   0. the flight ended before the card did: fly again;
///   1. the wing let go without being asked to: wait for better air if it was rough anywhere, else fly again;
///      or the air was rough (kRough) where a point could not be brought on condition, came out less certain than the
///      card wants or could not be had at all, or on the way to a stall: wait for better air;
///   2. a point is missing, or its set is out of order: fly those again;
///   3. a point's 95 % interval is wider than the card wants: fly it again;
///   4. the set points, held against the truth, leave less warning than the card wants, or err by more: fly again;
///   5. otherwise: keep.
void decide(Judgement& judgement, const SetPoints& measured, const TestCard& card,
            const SortieOutcome& outcome);

}  // namespace stallwright
