#include "sim/study/bootstrap.hpp"

#include <algorithm>
#include <cmath>

#include "sim/reduction/set_points.hpp"

namespace stallwright {
namespace {

/// Fills the sample with values drawn with replacement, four draws from each block of random words.
void draw(const std::vector<double>& values, const random::Stream& stream, std::uint64_t resample,
          std::vector<double>& sample) {
  const std::uint64_t n = values.size();
  std::array<std::uint32_t, 4> words{};
  for (std::uint64_t i = 0; i < n; ++i) {
    if (i % 4 == 0) words = random::block(stream, (resample << 32) | (i / 4));
    // A word as a share of 2^32, times n: each value has the same chance but for one part in 2^32/n.
    sample[i] = values[(static_cast<std::uint64_t>(words[i % 4]) * n) >> 32];
  }
}

}  // namespace

double quantile(std::span<const double> rising, double p) {
  const double h = static_cast<double>(rising.size() - 1) * p;
  const auto below = static_cast<std::size_t>(std::floor(h));
  const std::size_t above = std::min(below + 1, rising.size() - 1);
  return rising[below] + (h - static_cast<double>(below)) * (rising[above] - rising[below]);
}

double root_mean_square(std::span<const double> values) {
  double sum = 0.0;
  for (const double v : values) sum += v * v;
  return std::sqrt(sum / static_cast<double>(values.size()));
}

std::vector<Interval> bootstrap_intervals(const std::vector<double>& values,
                                          const std::vector<Statistic>& statistics,
                                          const random::Stream& stream, int resamples, double confidence) {
  std::vector<Interval> out(statistics.size(), Interval{kNone, kNone});
  if (values.empty() || resamples < 1) return out;
  std::vector<std::vector<double>> seen(statistics.size());
  std::vector<double> sample(values.size());
  for (int r = 0; r < resamples; ++r) {
    draw(values, stream, static_cast<std::uint64_t>(r), sample);
    for (std::size_t s = 0; s < statistics.size(); ++s) seen[s].push_back(statistics[s](sample));
  }
  const double tail = 0.5 * (1.0 - confidence);
  for (std::size_t s = 0; s < statistics.size(); ++s) {
    std::sort(seen[s].begin(), seen[s].end());
    out[s] = {quantile(seen[s], tail), quantile(seen[s], 1.0 - tail)};
  }
  return out;
}

}  // namespace stallwright
