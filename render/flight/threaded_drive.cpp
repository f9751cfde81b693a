#include <algorithm>
#include <chrono>
#include <condition_variable>
#include <mutex>
#include <thread>

#include "render/flight/drive.hpp"
#include "render/flight/pace.hpp"

namespace stallwright {
namespace {

class ThreadedDrive : public Drive {
 public:
  explicit ThreadedDrive(std::unique_ptr<Flight> flight)
      : flight_(std::move(flight)),
        hands_(flight_->first_hands()),
        before_(flight_->snapshot()),
        now_(flight_->snapshot()),
        now_at_(Clock::now()),
        thread_([this] { run(); }) {}
  ~ThreadedDrive() override { finish(); }

  void hands(const Hands& hands) override {
    const std::lock_guard lock(mutex_);
    const Presses kept = hands_.presses;
    hands_ = hands;
    hands_.presses = both(kept, hands.presses);
  }
  void rate(double simulated_per_real) override {
    const std::lock_guard lock(mutex_);
    rate_ = simulated_per_real;
  }
  void pause(bool paused) override {
    const std::lock_guard lock(mutex_);
    paused_ = paused;
  }
  void frame(double) override {}
  void look(Seen& seen) override;
  void finish() override;
  Flight& flight() override { return *flight_; }

 private:
  using Clock = std::chrono::steady_clock;
  void run();
  bool fly_one();
  void fly(int ticks);
  Hands take_hands();

  std::unique_ptr<Flight> flight_;
  std::mutex mutex_;
  std::condition_variable wake_;
  Hands hands_;
  Snapshot before_, now_;
  Clock::time_point now_at_;
  Pace pace_;
  double rate_ = 1.0;
  bool paused_ = false, stop_ = false, over_ = false;
  std::string trouble_;
  std::thread thread_;  ///< last: it uses all the others
};

void ThreadedDrive::look(Seen& seen) {
  const std::lock_guard lock(mutex_);
  seen.before = before_;
  seen.now = now_;
  const double since_s = std::chrono::duration<double>(Clock::now() - now_at_).count();
  seen.share = paused_ ? 1.0 : std::clamp(since_s * rate_ / kTick_s, 0.0, 1.0);
  seen.achieved_rate = pace_.achieved();
  seen.given_up_s = pace_.given_up_s();
  seen.wanted_rate = rate_;
  seen.paused = paused_;
  seen.over = over_;
  seen.trouble = trouble_;
}

void ThreadedDrive::finish() {
  {
    const std::lock_guard lock(mutex_);
    stop_ = true;
  }
  wake_.notify_all();
  if (thread_.joinable()) thread_.join();
  flight_->leave();
}

Hands ThreadedDrive::take_hands() {
  const std::lock_guard lock(mutex_);
  const Hands hands = hands_;
  hands_.presses = {};
  return hands;
}

bool ThreadedDrive::fly_one() { return flight_->tick(take_hands()); }

/// Flies so many ticks. Only the exchange of hands and snapshots is locked, so a frame never waits for physics. Nobody above
/// this thread could catch an exception: it ends the flight, and says why.
void ThreadedDrive::fly(int ticks) {
  for (int k = 0; k < ticks; ++k) {
    bool goes_on = false;
    std::string thrown;
    try {
      goes_on = fly_one();
    } catch (const std::exception& e) {
      thrown = e.what();
    }
    const std::lock_guard lock(mutex_);
    before_ = now_;
    now_ = flight_->snapshot();
    now_at_ = Clock::now();
    trouble_ = thrown.empty() ? flight_->trouble() : thrown;
    over_ = !goes_on;
    if (over_ || stop_) return;
  }
}

void ThreadedDrive::run() {
  auto last = Clock::now();
  for (;;) {
    int ticks = 0;
    {
      std::unique_lock lock(mutex_);
      wake_.wait_for(lock, std::chrono::milliseconds(4), [this] { return stop_; });
      if (stop_ || over_) return;
      const auto now = Clock::now();
      const double elapsed_s = std::chrono::duration<double>(now - last).count();
      last = now;
      ticks = pace_.due(elapsed_s, paused_ ? 0.0 : rate_);
      if (!paused_) pace_.flown(ticks, elapsed_s);
    }
    fly(ticks);
  }
}

}  // namespace

Presses both(const Presses& a, const Presses& b) {
  return {a.record || b.record, a.record_anyway || b.record_anyway, a.area_clear || b.area_clear,
          a.knock_it_off || b.knock_it_off};
}

std::unique_ptr<Drive> threaded_drive(std::unique_ptr<Flight> flight) {
  return std::make_unique<ThreadedDrive>(std::move(flight));
}

}  // namespace stallwright
