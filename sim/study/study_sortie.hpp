#pragma once
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "sim/study/fly_many.hpp"
#include "sim/truth/judge.hpp"

namespace stallwright {

/// What a study keeps of one sortie: everything but its rows.
struct StudySortie {
  std::uint64_t seed = 0;
  std::string failure;  ///< why the card was not finished, or why no set points came; empty: all went well
  Judgement judgement;  ///< without sets when nothing could be reduced
  std::vector<PointTally> tallies;  ///< by card point
  std::vector<bool>
      wing_stalled;  ///< by card point: the wing stalled in truth while it was being held (wing_stalled_at)
};

/// For each steady point of the card: did the root of the wing stall on the way to the point or on it
/// (clearing turns, transit, settling, record)? Stalled is when less than half of its chord carries attached
/// flow in truth, for one sample at least; whether anybody aboard noticed does not count. Always false for
/// the slow points.
std::vector<bool> wing_stalled_at(const TestCard& card, const std::vector<LogRow>& log,
                                  const std::vector<TruthRow>& truth);

/// Flies, reduces and judges one sortie; its rows stay in the sink, which should be empty before. An
/// exception on the way becomes its `failure`.
StudySortie fly_and_judge(const SortieConfig& config, const std::vector<TrueSet>& truth, MemorySink& rows);

/// Told after each sortie how many are done, of how many, from whichever thread but never from two at once.
using StudyProgress = std::function<void(int done, int of)>;

/// Flies sorties k = 0, 1, ... of a base, each with its own seed, by fly_many, and hands each to `done` as that does; tells
/// the progress.
void fly_each_sortie(const SortieConfig& base, std::uint64_t first_seed, int sorties, int threads,
                     const StudyProgress& progress, const std::function<void(int, EndedSortie&)>& done);

/// Sorties with seeds first_seed, first_seed + 1, ... in that order, whatever the number of threads.
std::vector<StudySortie> fly_sorties(const SortieConfig& base, const std::vector<TrueSet>& truth, int sorties,
                                     std::uint64_t first_seed, int threads, const StudyProgress& progress);

}  // namespace stallwright
