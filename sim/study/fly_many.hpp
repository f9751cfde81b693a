#pragma once
#include <atomic>
#include <cstddef>
#include <functional>
#include <string>

#include "sim/study/record_sink.hpp"

namespace stallwright {

/// A sortie that has ended, one way or the other.
struct EndedSortie {
  std::string
      failure;  ///< text of an exception, or why the outcome says that the card was not finished; else empty
  SortieOutcome outcome;
  RecordSink rows;  ///< of its records, as far as it was flown
};

/// Flies sorties k = 0 .. count - 1, without smooth twins, on up to `threads` threads; 0 or less: as many as the machine
/// has; on each as many at once as chosen_lane_kernel() has lanes. What each sortie's rows are depends on neither. Quickest
/// where neighbours share aeroplane, loading, card, day and air.
///   config  of sortie k; called once for each, from any thread
///   done    called from the flying thread as each sortie ends, in no fixed order: never twice for one k, but possibly
///           for several k at once. It may take what it wants out of the sortie, which goes when it returns.
///   stop    once it is true no new sortie is begun and those under way are dropped without `done`
/// An exception that `config` or `done` throws ends the handing out and is thrown on.
void fly_many(std::size_t count, int threads, const std::function<SortieConfig(std::size_t)>& config,
              const std::function<void(std::size_t, EndedSortie&)>& done,
              const std::atomic<bool>* stop = nullptr);

}  // namespace stallwright
