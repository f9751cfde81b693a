#pragma once
#include "sim/cli/flight_plan.hpp"
#include "sim/report/svg.hpp"

namespace stallwright::cli {

/// The envelope of mass over centre of gravity, with the loaded point in it and the neutral point of the simulator's
/// aeroplane behind it.
Svg envelope_chart(const FlightPlan& plan);

}  // namespace stallwright::cli
