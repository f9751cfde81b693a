#include "render/flight/pace.hpp"

#include <algorithm>
#include <cmath>

#include "sim/crew/pilot.hpp"

namespace stallwright {
namespace {

constexpr double kMostOwed_s = 0.25, kMean_s = 2.0;

}  // namespace

int Pace::due(double elapsed_s, double rate) {
  // Whoever asks for more is not told for seconds that the machine is too slow.
  if (rate > 0.0 && rate != rate_) {
    achieved_ *= rate / rate_;
    rate_ = rate;
  }
  owed_s_ += std::max(elapsed_s, 0.0) * rate;
  const double most = kMostOwed_s * std::max(rate, 1.0);
  if (owed_s_ > most) {
    given_up_s_ += owed_s_ - most;
    owed_s_ = most;
  }
  const int ticks = static_cast<int>(owed_s_ / kTick_s + 1e-9);
  owed_s_ -= ticks * kTick_s;
  return ticks;
}

void Pace::flown(int ticks, double elapsed_s) {
  if (elapsed_s <= 0.0) return;
  const double now = ticks * kTick_s / elapsed_s;
  achieved_ += (now - achieved_) * (1.0 - std::exp(-elapsed_s / kMean_s));
}

}  // namespace stallwright
