#include "sim/cli/study_progress.hpp"

#include <unistd.h>

#include <chrono>
#include <cmath>
#include <iostream>
#include <memory>

#include "sim/report/number_text.hpp"

namespace stallwright::cli {
namespace {

using Clock = std::chrono::steady_clock;

/// When the line was begun, and when it was last written: more than a few times a second nobody reads.
struct Times {
  Clock::time_point begun = Clock::now(), shown{};
};

double seconds(Clock::duration duration) { return std::chrono::duration<double>(duration).count(); }

void show(Times& times, int done, int of) {
  constexpr double kEvery_s = 0.2;
  const Clock::time_point now = Clock::now();
  if (done < of && seconds(now - times.shown) < kEvery_s) return;
  times.shown = now;
  std::cerr << "\r\033[K";
  if (done < of) {
    const double rate = done / std::max(1e-3, seconds(now - times.begun));
    std::cerr << done << " of " << of << " sorties, " << fixed(rate, rate < 10.0 ? 1 : 0) << " a second, "
              << duration_words((of - done) / rate) << " left";
  }
  std::cerr << std::flush;
}

}  // namespace

std::string duration_words(double time_s) {
  const long minutes = std::lround(time_s / 60.0);
  if (time_s < 90.0) return std::to_string(std::lround(time_s)) + " s";
  if (minutes < 60) return std::to_string(minutes) + " min";
  return std::to_string(minutes / 60) + " h " + std::to_string(minutes % 60) + " min";
}

void clear_progress_line() {
  if (::isatty(STDERR_FILENO) == 1) std::cerr << "\r\033[K" << std::flush;
}

StudyProgress progress_line() {
  if (::isatty(STDERR_FILENO) != 1) return {};
  const auto times = std::make_shared<Times>();
  return [times](int done, int of) { show(*times, done, of); };
}

}  // namespace stallwright::cli
