#pragma once
#include "aircraft/math/elementary.hpp"
#include "aircraft/math/units.hpp"

// What the director asks of simulated and real hands alike.
namespace stallwright::director {

inline constexpr double kClearingTurn_rad = 90.0 * math::kDegree;  ///< two turns of 90 deg (common practice)
inline constexpr double kEntrySpeedBand_kt = 4.0;  ///< about the speed that a slow point begins at
inline constexpr double kEntryBank_rad = 5.0 * math::kDegree;

inline double wrapped_angle(double a) { return a - 2.0 * math::kPi * math::round(a / (2.0 * math::kPi)); }

}  // namespace stallwright::director
