// One kernel; built once for each kind of processor into a library of its own, of which nothing but the entry is seen:
// inline code of another level must never take the place of this one's.
#include "aircraft/math/lanes.hpp"
#include "sim/lanes/lane_loops.hpp"
#include "sim/random/philox_lanes.hpp"

using Number = stallwright::math::Lanes<STALLWRIGHT_LANES>;

extern "C" void STALLWRIGHT_LANE_ENTRY(stallwright::LaneKernel& kernel) {
  kernel = stallwright::lanes::kernel<Number>(STALLWRIGHT_LANE_LEVEL);
}
