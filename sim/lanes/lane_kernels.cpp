#include <cstdlib>
#include <string>

#include "aircraft/input_error.hpp"
#include "sim/lanes/lane_group.hpp"
#include "sim/lanes/lane_loops.hpp"

#if defined(STALLWRIGHT_LANE_KERNELS)
extern "C" {
void stallwright_lanes_v2(stallwright::LaneKernel& kernel);
void stallwright_lanes_v3(stallwright::LaneKernel& kernel);
void stallwright_lanes_v4(stallwright::LaneKernel& kernel);
}
#endif

namespace stallwright {
namespace {

#if defined(STALLWRIGHT_LANE_KERNELS)
LaneKernel made(void (*entry)(LaneKernel&)) {
  LaneKernel kernel;
  entry(kernel);
  return kernel;
}

void add_x86_64(std::vector<LaneKernel>& kernels) {
  __builtin_cpu_init();
  if (__builtin_cpu_supports("sse4.2")) kernels.push_back(made(stallwright_lanes_v2));
  const bool v3 =
      __builtin_cpu_supports("avx2") && __builtin_cpu_supports("bmi2") && __builtin_cpu_supports("fma");
  if (v3) kernels.push_back(made(stallwright_lanes_v3));
  const bool v4 = v3 && __builtin_cpu_supports("avx512f") && __builtin_cpu_supports("avx512bw") &&
                  __builtin_cpu_supports("avx512cd") && __builtin_cpu_supports("avx512dq") &&
                  __builtin_cpu_supports("avx512vl");
  if (v4) kernels.push_back(made(stallwright_lanes_v4));
}
#endif

}  // namespace

std::vector<LaneKernel> lane_kernels() {
  std::vector<LaneKernel> kernels{lanes::kernel<double>("scalar")};
#if defined(STALLWRIGHT_LANE_KERNELS)
  add_x86_64(kernels);
#endif
  return kernels;
}

LaneKernel chosen_lane_kernel() {
  const std::vector<LaneKernel> kernels = lane_kernels();
  const char* wanted = std::getenv("STALLWRIGHT_LANES");
  if (wanted == nullptr || *wanted == '\0') return kernels.back();
  std::string names;
  for (const LaneKernel& kernel : kernels) {
    if (kernel.name == std::string(wanted)) return kernel;
    names += (names.empty() ? "" : ", ") + std::string(kernel.name);
  }
  throw InputError("STALLWRIGHT_LANES: expected one of " + names + ", which this processor has, found \"" +
                   wanted + "\"");
}

}  // namespace stallwright
