#include "sim/threads/parallel.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace stallwright {

void for_each_index(int count, int threads, const std::function<void(int)>& work) {
  if (threads <= 0) threads = static_cast<int>(std::max(1u, std::thread::hardware_concurrency()));
  std::atomic<int> next{0};
  std::mutex guard;
  std::exception_ptr thrown;
  int thrown_at = count;
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
  {
    // The caller's thread serves too; the others are joined at the end of the block.
    std::vector<std::jthread> others;
    for (int i = 1; i < std::min(threads, count); ++i) others.emplace_back(serve);
    serve();
  }
  if (thrown) std::rethrow_exception(thrown);
}

}  // namespace stallwright
