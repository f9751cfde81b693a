#pragma once
#include <cstdint>
#include <string>

#include "tests/bench/kernels.hpp"
#include "tests/bench/timed.hpp"

namespace stallwright::bench {

struct SortiesRun {
  Spent spent;
  std::uint64_t aeroplane_steps = 0;
  int sorties = 0;
};

/// Whole sorties on this thread, each with its own seed, from the trimmed start to the end of the card: flight, air,
/// instruments, pilot, card, and the rows of records. The aeroplane itself is made before the clock starts, as a study makes
/// it once.
SortiesRun whole_sorties(const LaneKernel& kernel, const std::string& card, int sorties);

/// The same by fly_many, with the kernel that the product chooses, on so many threads; the aeroplane is made within.
SortiesRun many_sorties(const std::string& card, int sorties, int threads);

}  // namespace stallwright::bench
