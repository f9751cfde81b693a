#pragma once
#include <functional>

namespace stallwright::bench {

/// How long a piece of work took.
struct Spent {
  double thread_ns = 0.0;  ///< processor time of the calling thread: what other programs take does not count
  double wall_ns = 0.0;
};
/// Every timed piece of work goes through here and nothing else does, so that callgrind can be told to count in it alone.
Spent timed(const std::function<void()>& work);

/// Frequency at which this processor runs now, Hz, from a chain of whole-number products of which each waits for the one
/// before; each takes 3 cycles on x86-64 processors of the last fifteen years (common practice). NaN on any other.
double clock_hz();

}  // namespace stallwright::bench
