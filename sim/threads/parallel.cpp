#include "sim/threads/parallel.hpp"

#include <oneapi/tbb/global_control.h>
#include <oneapi/tbb/parallel_for.h>
#include <oneapi/tbb/task_arena.h>

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>

namespace stallwright {

void for_each_index(int count, int threads, const std::function<void(int)>& work) {
  if (threads <= 0) threads = oneapi::tbb::this_task_arena::max_concurrency();
  std::atomic<int> next{0};
  std::mutex guard;
  std::exception_ptr thrown;
  int thrown_at = count;
  // Each thread takes the next number, so that numbers are begun in order: who writes results in order then has few open.
  const auto serve = [&] {
    for (int k = next++; k < count; k = next++) {
      try {
        work(k);
      } catch (...) {
        next = count;
        const std::lock_guard<std::mutex> lock(guard);
        if (k < thrown_at) {
          thrown_at = k;
          thrown = std::current_exception();
        }
      }
    }
  };
  const int servers = std::min(threads, count);
  // As many as asked for, even where the machine has fewer processors.
  using oneapi::tbb::global_control;
  const auto most =
      static_cast<std::size_t>(std::max(servers, oneapi::tbb::this_task_arena::max_concurrency()));
  const global_control allowed(global_control::max_allowed_parallelism, most);
  oneapi::tbb::task_arena arena(std::max(1, servers));
  arena.execute([&] {
    oneapi::tbb::parallel_for(
        0, servers, [&](int) { serve(); }, oneapi::tbb::simple_partitioner{});
  });
  if (thrown) std::rethrow_exception(thrown);
}

}  // namespace stallwright
