#pragma once
#include <vector>

#include "sim/cli/plan_speeds.hpp"

namespace stallwright::cli {

/// What full power gives at the working height in one flap setting, at the mass of the day.
struct ClimbRow {
  double flap_deg = 0.0;
  double rate_fpm = kUnset;  ///< best rate of climb; negative: it comes down
  double speed_kt = kUnset;  ///< CAS of it, below the flap limit
};

/// Least climb with the flaps up that we would go with: back up 600 ft in three minutes. Our choice; a service ceiling is
/// where 100 ft/min are left (common practice).
inline constexpr double kLeastClimb_fpm = 200.0;

/// Flaps up first, then each other setting that the card uses.
std::vector<std::size_t> climb_settings(const TestCard& card);
ClimbRow climb_row(const Aircraft& aircraft, std::size_t flap_setting, const WorkingAir& where);

}  // namespace stallwright::cli
