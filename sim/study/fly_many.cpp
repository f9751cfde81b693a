#include "sim/study/fly_many.hpp"

#include <algorithm>
#include <exception>
#include <mutex>
#include <thread>

#include "sim/lanes/lane_flight.hpp"
#include "sim/threads/parallel.hpp"

namespace stallwright {
namespace {

/// What every thread takes from.
class Roster {
 public:
  Roster(std::size_t count, const std::function<SortieConfig(std::size_t)>& config,
         const std::atomic<bool>* stop)
      : count_(count), config_(config), stop_(stop) {}

  bool stopped() const { return given_up_ || (stop_ != nullptr && *stop_); }
  void give_up() { given_up_ = true; }

  /// The number of the next sortie; none left: count.
  std::size_t next() { return stopped() ? count_ : std::min(count_, next_++); }
  std::size_t count() const { return count_; }
  SortieConfig config(std::size_t k) const { return config_(k); }

  std::shared_ptr<const KnownAircraft> known(const SortieConfig& config) {
    const std::lock_guard<std::mutex> lock(guard_);
    const auto found =
        std::find_if(known_.begin(), known_.end(), [&](const auto& known) { return serves(*known, config); });
    if (found != known_.end()) return *found;
    if (known_.size() == kKept) known_.erase(known_.begin());
    known_.push_back(known_aircraft(config));
    return known_.back();
  }

 private:
  static constexpr std::size_t kKept = 8;
  std::size_t count_;
  const std::function<SortieConfig(std::size_t)>& config_;
  const std::atomic<bool>* stop_;
  std::atomic<std::size_t> next_{0};
  std::atomic<bool> given_up_{false};
  std::mutex guard_;
  std::vector<std::shared_ptr<const KnownAircraft>> known_;
};

/// Seats the sorties of one thread's lanes.
class Seats : public LaneCrew {
 public:
  Seats(Roster& roster, int lanes, const std::function<void(std::size_t, EndedSortie&)>& done)
      : roster_(roster), done_(done), rows_(static_cast<std::size_t>(lanes) + 1) {}

  SeatedSortie next() override {
    for (std::size_t k = roster_.next(); k < roster_.count(); k = roster_.next()) {
      SortieConfig config = roster_.config(k);
      config.smooth_twin = false;  // no error is taken apart here, and it costs a sixth of the time
      try {
        SeatedSortie seated{k, std::make_unique<Sortie>(config, roster_.known(config)), free_rows()};
        return seated;
      } catch (const std::exception& e) {
        EndedSortie ended;
        ended.failure = e.what();
        done_(k, ended);
      }
    }
    return {};
  }

  void ended(SeatedSortie& seated, const std::string& failure) override {
    EndedSortie ended;
    Rows& rows = rows_of(seated.sink);
    ended.rows = std::move(rows.sink);
    if (failure.empty()) ended.outcome = seated.sortie->outcome();
    ended.failure = failure.empty() ? ended.outcome.failure : failure;
    if (failure.empty() && !ended.outcome.finished && ended.failure.empty())
      ended.failure = "the card was not finished";
    done_(seated.number, ended);
    rows.sink = std::move(ended.rows);  // the next sortie finds room made
    rows.sink.forget();
    rows.taken = false;
  }

  bool stopped() const override { return roster_.stopped(); }

 private:
  struct Rows {
    RecordSink sink;
    bool taken = false;
  };
  SortieSink* free_rows() {
    const auto rows = std::find_if(rows_.begin(), rows_.end(), [](const Rows& r) { return !r.taken; });
    rows->taken = true;
    return &rows->sink;
  }
  Rows& rows_of(const SortieSink* sink) {
    return *std::find_if(rows_.begin(), rows_.end(), [&](const Rows& r) { return &r.sink == sink; });
  }

  Roster& roster_;
  const std::function<void(std::size_t, EndedSortie&)>& done_;
  std::vector<Rows> rows_;  ///< one a lane, and one for whoever waits
};

}  // namespace

void fly_many(std::size_t count, int threads, const std::function<SortieConfig(std::size_t)>& config,
              const std::function<void(std::size_t, EndedSortie&)>& done, const std::atomic<bool>* stop) {
  if (threads <= 0) threads = static_cast<int>(std::max(1u, std::thread::hardware_concurrency()));
  const LaneKernel kernel = chosen_lane_kernel();
  Roster roster(count, config, stop);
  for_each_index(threads, threads, [&](int) {
    Seats seats(roster, kernel.lanes, done);
    try {
      fly_in_lanes(kernel, seats);
    } catch (...) {
      roster.give_up();
      throw;
    }
  });
}

}  // namespace stallwright
