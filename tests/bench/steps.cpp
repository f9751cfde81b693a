#include "tests/bench/steps.hpp"

#include <algorithm>
#include <bit>
#include <cstddef>
#include <stdexcept>

namespace stallwright::bench {
namespace {

using One = LaneGroup<double>;
constexpr std::size_t kNumbers = sizeof(One) / sizeof(double);

/// A cache line, and the widest vector.
struct alignas(64) Line {
  double numbers[8];
};

/// Numbers of one pack of lanes, on lines of its own.
std::size_t numbers_of_pack(std::size_t lanes) { return (kNumbers * lanes + 7) / 8 * 8; }

/// Packs of aeroplanes side by side, one pack after the other.
std::vector<Line> packed(const Samples& from, std::size_t aeroplanes, std::size_t lanes) {
  if (aeroplanes > from.aeroplanes.size() || aeroplanes % lanes != 0)
    throw std::invalid_argument("expected a whole number of packs, as many aeroplanes as there are samples");
  std::vector<Line> memory(numbers_of_pack(lanes) * (aeroplanes / lanes) / 8);
  for (std::size_t k = 0; k < aeroplanes; ++k) {
    const auto numbers = std::bit_cast<std::array<double, kNumbers>>(from.aeroplanes[k]);
    double* to = memory.front().numbers + numbers_of_pack(lanes) * (k / lanes) + k % lanes;
    for (std::size_t n = 0; n < kNumbers; ++n) to[n * lanes] = numbers[n];
  }
  return memory;
}

template <class Work>
StepsRun run(const LaneKernel& kernel, const Samples& from, std::size_t aeroplanes, int times, Work&& work) {
  const std::size_t lanes = static_cast<std::size_t>(kernel.lanes);
  std::vector<Line> memory = packed(from, aeroplanes, lanes);
  const Spent spent = timed([&] {
    double* pack = memory.front().numbers;
    for (std::size_t k = 0; k < aeroplanes / lanes; ++k, pack += numbers_of_pack(lanes))
      for (int time = 0; time < times; ++time) work(pack);
  });
  return {spent, aeroplanes * static_cast<std::uint64_t>(times)};
}

}  // namespace

StepsRun flight_steps(const LaneKernel& kernel, const Samples& from, std::size_t aeroplanes, int steps) {
  const LaneScene scene = from.scene(false);
  return run(kernel, from, aeroplanes, steps, [&](double* pack) { kernel.second_step(scene, pack); });
}

StepsRun kernel_ticks(const LaneKernel& kernel, const Samples& from, std::size_t aeroplanes, int ticks) {
  const LaneScene scene = from.scene(true);
  StepsRun out = run(kernel, from, aeroplanes, ticks, [&](double* pack) {
    kernel.observe(scene, pack);
    kernel.first_step(scene, pack);
    kernel.second_step(scene, pack);
  });
  out.aeroplane_steps *= kStepsPerTick;
  return out;
}

}  // namespace stallwright::bench
