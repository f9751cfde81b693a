#include "sim/study/study_sortie.hpp"

#include <algorithm>
#include <exception>
#include <mutex>
#include <set>

#include "sim/reduction/reduce.hpp"
#include "sim/threads/parallel.hpp"

namespace stallwright {

namespace {

/// A sortie that was cut short still has its set points up to then: they count like any other.
void take_judgement(const std::vector<LogRow>& log, const SortieConfig& config,
                    const std::vector<TrueSet>& truth, const SortieOutcome& outcome, StudySortie& out) {
  try {
    out.judgement =
        judge(reduce(log, config.card, config.instruments), truth, config.card, config.type, outcome);
  } catch (const std::exception& e) {
    out.failure += (out.failure.empty() ? "" : "; ") + std::string(e.what());
  }
}

}  // namespace

std::vector<bool> wing_stalled_at(const TestCard& card, const std::vector<LogRow>& log,
                                  const std::vector<TruthRow>& truth) {
  std::set<std::string> held;
  for (Phase p : kHeldPhases) held.insert(phase_name(p));
  std::vector<bool> stalled(card.points.size(), false);
  for (std::size_t i = 0; i < log.size() && i < truth.size(); ++i) {
    if (log[i].point < 1 || !held.contains(log[i].phase)) continue;
    const auto k = static_cast<std::size_t>(log[i].point - 1);
    if (k < stalled.size() && card.points[k].is_steady() && truth[i].attached_root < kStalledRoot)
      stalled[k] = true;
  }
  return stalled;
}

StudySortie fly_and_judge(const SortieConfig& config, const std::vector<TrueSet>& truth, MemorySink& rows) {
  StudySortie out;
  out.seed = config.seed;
  out.tallies.resize(config.card.points.size());
  out.wing_stalled.resize(config.card.points.size(), false);
  try {
    const SortieOutcome outcome = fly_sortie(config, rows);
    out.tallies = outcome.tallies;
    out.wing_stalled = wing_stalled_at(config.card, rows.log, rows.truth);
    if (!outcome.finished)
      out.failure = outcome.failure.empty() ? "the card was not finished" : outcome.failure;
    take_judgement(rows.log, config, truth, outcome, out);
  } catch (const std::exception& e) {
    out.failure = e.what();
  }
  return out;
}

void fly_each_sortie(const SortieConfig& base, std::uint64_t first_seed, int sorties, int threads,
                     const StudyProgress& progress, const std::function<void(int, EndedSortie&)>& done) {
  std::mutex guard;
  int told = 0;
  const auto config_of = [&](std::size_t k) {
    SortieConfig config = base;
    config.seed = first_seed + k;
    return config;
  };
  fly_many(static_cast<std::size_t>(std::max(0, sorties)), threads, config_of,
           [&](std::size_t k, EndedSortie& ended) {
             done(static_cast<int>(k), ended);
             if (!progress) return;
             const std::lock_guard<std::mutex> lock(guard);
             progress(++told, sorties);
           });
}

std::vector<StudySortie> fly_sorties(const SortieConfig& base, const std::vector<TrueSet>& truth, int sorties,
                                     std::uint64_t first_seed, int threads, const StudyProgress& progress) {
  std::vector<StudySortie> flown(static_cast<std::size_t>(std::max(0, sorties)));
  fly_each_sortie(base, first_seed, sorties, threads, progress, [&](int k, EndedSortie& ended) {
    StudySortie& out = flown[static_cast<std::size_t>(k)];
    out.seed = first_seed + static_cast<std::uint64_t>(k);
    out.failure = ended.failure;
    out.tallies = ended.outcome.tallies;
    out.tallies.resize(base.card.points.size());
    out.wing_stalled = ended.rows.wing_stalled_at(base.card);
    take_judgement(ended.rows.log, base, truth, ended.outcome, out);
  });
  return flown;
}

}  // namespace stallwright
