#include "tests/bench/sorties.hpp"

#include <atomic>
#include <cmath>
#include <map>
#include <stdexcept>

#include "sim/lanes/lane_flight.hpp"
#include "sim/study/fly_many.hpp"
#include "tests/bench/samples.hpp"

namespace stallwright::bench {
namespace {

std::uint64_t steps_of(const SortieOutcome& outcome) {
  return static_cast<std::uint64_t>(std::lround(outcome.ended_s / kStep_s));
}

class Crew : public LaneCrew {
 public:
  Crew(const SortieConfig& config, int sorties)
      : config_(config), known_(known_aircraft(config)), left_(sorties) {}

  SeatedSortie next() override {
    if (left_ == 0) return {};
    const std::size_t number = static_cast<std::size_t>(left_--);
    config_.seed = number;
    return {number, std::make_unique<Sortie>(config_, known_), &rows_[number]};
  }
  void ended(SeatedSortie& seated, const std::string& failure) override {
    if (!failure.empty()) throw std::runtime_error(failure);
    steps_ += steps_of(seated.sortie->outcome());
    rows_.erase(seated.number);
  }
  std::uint64_t steps() const { return steps_; }

 private:
  SortieConfig config_;
  std::shared_ptr<const KnownAircraft> known_;
  int left_;
  std::map<std::size_t, RecordSink> rows_;
  std::uint64_t steps_ = 0;
};

}  // namespace

SortiesRun whole_sorties(const LaneKernel& kernel, const std::string& card, int sorties) {
  Crew crew(usual_sortie(card), sorties);
  const Spent spent = timed([&] { fly_in_lanes(kernel, crew); });
  return {spent, crew.steps(), sorties};
}

SortiesRun many_sorties(const std::string& card, int sorties, int threads) {
  const SortieConfig base = usual_sortie(card);
  std::atomic<std::uint64_t> steps{0};
  const auto config = [&](std::size_t k) {
    SortieConfig own = base;
    own.seed = k + 1;
    return own;
  };
  const auto done = [&](std::size_t, EndedSortie& sortie) { steps += steps_of(sortie.outcome); };
  const Spent spent = timed([&] { fly_many(static_cast<std::size_t>(sorties), threads, config, done); });
  return {spent, steps, sorties};
}

}  // namespace stallwright::bench
