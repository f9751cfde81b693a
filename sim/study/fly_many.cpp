#include "sim/study/fly_many.hpp"

#include <exception>

#include "sim/threads/parallel.hpp"

namespace stallwright {
namespace {

bool stopped(const std::atomic<bool>* stop) { return stop != nullptr && *stop; }

/// False when it was dropped on the way.
bool fly(const SortieConfig& config, const std::atomic<bool>* stop, EndedSortie& ended) {
  try {
    Sortie sortie(config);
    while (sortie.tick(ended.rows))
      if (stopped(stop)) return false;
    ended.outcome = sortie.outcome();
    ended.failure = ended.outcome.failure;
    if (!ended.outcome.finished && ended.failure.empty()) ended.failure = "the card was not finished";
  } catch (const std::exception& e) {
    ended.failure = e.what();
  }
  return true;
}

}  // namespace

void fly_many(std::size_t count, int threads, const std::function<SortieConfig(std::size_t)>& config,
              const std::function<void(std::size_t, EndedSortie&)>& done, const std::atomic<bool>* stop) {
  for_each_index(static_cast<int>(count), threads, [&](int index) {
    if (stopped(stop)) return;
    const auto k = static_cast<std::size_t>(index);
    SortieConfig one = config(k);
    one.smooth_twin = false;  // no error is taken apart here, and it costs a sixth of the time
    EndedSortie ended;
    if (fly(one, stop, ended)) done(k, ended);
  });
}

}  // namespace stallwright
