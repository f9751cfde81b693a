#pragma once
#include <atomic>
#include <filesystem>

#include "sim/study/map/map_plan.hpp"
#include "sim/study/study_sortie.hpp"

namespace stallwright {

/// How a study is flown; none of it changes the result.
struct MapOrder {
  std::filesystem::path folder;
  int threads = 0;            ///< 0: as many as the machine has
  int shard = 1, shards = 1;  ///< only blocks whose index leaves the rest shard - 1 when divided by shards
  const std::atomic<bool>* stop = nullptr;  ///< finished blocks are kept, what is under way is dropped
  StudyProgress progress;                   ///< counts sorties
};

/// What became of it, in blocks.
struct MapRun {
  int wanted = 0;   ///< blocks of this shard
  int kept = 0;     ///< were there before
  int damaged = 0;  ///< were there, but not whole: flown again
  int flown = 0;
  int sorties = 0;  ///< of the blocks that were flown
  bool complete() const { return kept + flown == wanted; }
};

/// Throws InputError, one line, where the aeroplane cannot fly the card in some air of the study.
MapRun fly_map(const MapPlan& plan, const MapOrder& order);

}  // namespace stallwright
