#include <utility>

#include "sim/lanes/lane_loops.hpp"
#include "tests/bench/counted_number.hpp"
#include "tests/bench/plain_noise.hpp"

namespace stallwright::random {

inline std::array<bench::Counted, 2> normal_pair(const NoiseKey<bench::Counted>& key, Channel channel,
                                                 const bench::Counted& tick, std::uint32_t index = 0) {
  return bench::plain_normal_pair(key, channel, tick, index);
}

}  // namespace stallwright::random

namespace stallwright::bench {

LaneKernel counted_kernel() { return lanes::kernel<Counted>("counted"); }

Operations counted_operations() { return std::exchange(so_far, Operations{}); }

}  // namespace stallwright::bench
