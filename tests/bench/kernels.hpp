#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "sim/lanes/lane_group.hpp"

namespace stallwright::bench {

/// One lane, our own scalar code but for the elementary functions, which are the C library's.
LaneKernel libm_kernel();
/// The same, built so that the compiler takes no two numbers at once: scalar in every loop.
LaneKernel libm_scalar_kernel();

/// Operations of the source, one for each aeroplane; those that a compiler folds are counted too.
struct Operations {
  std::uint64_t additions = 0, multiplications = 0, divisions = 0, roots = 0;
  std::uint64_t comparisons = 0, selections = 0;
  std::uint64_t bit_steps = 0;  ///< scalings by a power of two, splittings of a number
  std::uint64_t arithmetic() const { return additions + multiplications + divisions + roots; }
};

/// One lane of a number type that counts what it does.
LaneKernel counted_kernel();
/// Since the last call.
Operations counted_operations();

/// Names of all that can be timed: the product's kernels, "scalar" first, and "libm" and "libm-scalar".
std::vector<std::string> kernel_names();
/// Throws std::invalid_argument for any other name.
LaneKernel kernel_named(const std::string& name);

}  // namespace stallwright::bench
