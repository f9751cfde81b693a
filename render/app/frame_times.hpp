#pragma once
#include <string>
#include <vector>

namespace stallwright::app {

/// How long frames took, ms: the last 120 for choosing the detail of the world, all of them (to 100,000) for the figures that
/// `--times` prints.
class FrameTimes {
 public:
  FrameTimes();
  void add(double ms);
  /// Of the last 120; 0 before there are 30.
  double recent_median() const;
  void forget_recent() { recent_ = 0; }
  /// "1200 frames, median 14.2 ms, 99th percentile 20.1 ms"
  std::string summary() const;

 private:
  std::vector<float> all_;
  std::size_t recent_ = 0;
};

}  // namespace stallwright::app
