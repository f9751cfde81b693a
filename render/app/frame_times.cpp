#include "render/app/frame_times.hpp"

#include <algorithm>
#include <array>
#include <cstdio>

namespace stallwright::app {
namespace {

constexpr std::size_t kMost = 100000, kWindow = 120, kLeast = 30;

}  // namespace

FrameTimes::FrameTimes() { all_.reserve(kMost); }

void FrameTimes::add(double ms) {
  if (all_.size() == kMost) return;
  all_.push_back(static_cast<float>(ms));
  recent_ = std::min(recent_ + 1, kWindow);
}

double FrameTimes::recent_median() const {
  if (recent_ < kLeast) return 0.0;
  std::array<float, kWindow> last;
  std::copy(all_.end() - static_cast<long>(recent_), all_.end(), last.begin());
  const auto middle = last.begin() + static_cast<long>(recent_ / 2);
  std::nth_element(last.begin(), middle, last.begin() + static_cast<long>(recent_));
  return static_cast<double>(*middle);
}

std::string FrameTimes::summary() const {
  std::vector<float> sorted = all_;
  std::sort(sorted.begin(), sorted.end());
  char text[120] = "no frames";
  if (!sorted.empty())
    std::snprintf(text, sizeof text, "%zu frames, median %.1f ms, 99th percentile %.1f ms", sorted.size(),
                  static_cast<double>(sorted[sorted.size() / 2]),
                  static_cast<double>(sorted[sorted.size() * 99 / 100]));
  return text;
}

}  // namespace stallwright::app
