#pragma once
#include <string>

#include "sim/reduction/set_points.hpp"

namespace stallwright::cli {

/// Set points as `reduce` prints them: ratio with its 95 % interval, degrees of freedom, speed, order, flags, how many
/// records a point would want that is known less well than `wanted_kt`, caution.
std::string set_point_listing(const SetPoints& set_points, const std::string& sensors, double wanted_kt);

/// Every point has its ratio and every set is in order.
bool all_found(const SetPoints& set_points);

}  // namespace stallwright::cli
