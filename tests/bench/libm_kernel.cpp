// The order of these three lines matters; see libm_number.hpp.
// clang-format off
#include "tests/bench/libm_number.hpp"
#include "tests/bench/plain_noise.hpp"
#include "sim/lanes/lane_loops.hpp"
// clang-format on
#include "tests/bench/kernels.hpp"

namespace stallwright::random {

inline std::array<bench::Libm, 2> normal_pair(const NoiseKey<bench::Libm>& key, Channel channel,
                                              const bench::Libm& tick, std::uint32_t index = 0) {
  return bench::plain_normal_pair(key, channel, tick, index);
}

}  // namespace stallwright::random

namespace stallwright::bench {

#if defined(STALLWRIGHT_LIBM_SCALAR)
LaneKernel libm_scalar_kernel() { return lanes::kernel<Libm>("libm-scalar"); }
#else
LaneKernel libm_kernel() { return lanes::kernel<Libm>("libm"); }
#endif

}  // namespace stallwright::bench
