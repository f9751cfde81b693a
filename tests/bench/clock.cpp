#include <cstdint>
#include <ctime>
#include <limits>

#include "tests/bench/timed.hpp"

extern "C" [[gnu::noinline]] void stallwright_bench_timed(const std::function<void()>& work) {
  work();
  asm volatile("");
}

namespace stallwright::bench {
namespace {

double now_ns(clockid_t clock) {
  timespec t{};
  clock_gettime(clock, &t);
  return static_cast<double>(t.tv_sec) * 1e9 + static_cast<double>(t.tv_nsec);
}

}  // namespace

Spent timed(const std::function<void()>& work) {
  const double wall = now_ns(CLOCK_MONOTONIC), thread = now_ns(CLOCK_THREAD_CPUTIME_ID);
  stallwright_bench_timed(work);
  return {now_ns(CLOCK_THREAD_CPUTIME_ID) - thread, now_ns(CLOCK_MONOTONIC) - wall};
}

double clock_hz() {
#if defined(__x86_64__)
  constexpr int kRounds = 4'000'000, kProducts = 10, kCycles = 3;
  std::uint64_t x = 3;
  const Spent spent = timed([&] {
    for (int k = 0; k < kRounds; ++k) asm volatile(".rept 10\n imul %0, %0\n .endr" : "+r"(x));
  });
  return 1e9 * kRounds * kProducts * kCycles / spent.thread_ns;
#else
  return std::numeric_limits<double>::quiet_NaN();
#endif
}

}  // namespace stallwright::bench
