#pragma once
#include <cstdint>

#include "tests/bench/kernels.hpp"
#include "tests/bench/samples.hpp"
#include "tests/bench/timed.hpp"

namespace stallwright::bench {

struct StepsRun {
  Spent spent;
  std::uint64_t aeroplane_steps = 0;
};

/// Steps of the flight alone, air and controls held: the kernel's second_step in air that is brought, nothing brought.
/// Each pack of lanes goes all its steps before the next, as in a study.
StepsRun flight_steps(const LaneKernel& kernel, const Samples& from, std::size_t aeroplanes, int steps);

/// Ticks of two steps with air and instruments: all of a sortie but pilot, card and rows.
StepsRun kernel_ticks(const LaneKernel& kernel, const Samples& from, std::size_t aeroplanes, int ticks);

}  // namespace stallwright::bench
