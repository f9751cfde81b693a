#include "sim/report/decimate.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace stallwright {
namespace {

/// The samples of one pixel that must be seen.
struct Share {
  std::optional<std::size_t> first, lowest, highest, last, gap;

  void add(std::size_t i, std::span<const double> y) {
    if (!std::isfinite(y[i])) {
      if (!gap) gap = i;
      return;
    }
    if (!first) first = i;
    last = i;
    if (!lowest || y[i] < y[*lowest]) lowest = i;
    if (!highest || y[i] > y[*highest]) highest = i;
  }

  void move_to(std::vector<std::size_t>& chosen) {
    std::vector<std::size_t> mine;
    for (const auto& sample : {first, lowest, highest, last, gap})
      if (sample) mine.push_back(*sample);
    std::sort(mine.begin(), mine.end());
    mine.erase(std::unique(mine.begin(), mine.end()), mine.end());
    chosen.insert(chosen.end(), mine.begin(), mine.end());
    *this = {};
  }
};

}  // namespace

std::vector<std::size_t> samples_to_draw(std::span<const double> x, std::span<const double> y, double begin,
                                         double end, std::size_t bins) {
  std::vector<std::size_t> chosen;
  const std::size_t n = std::min(x.size(), y.size());
  if (bins == 0 || !(end > begin)) return chosen;
  const auto stop = x.begin() + static_cast<std::ptrdiff_t>(n);
  const std::size_t from = static_cast<std::size_t>(std::lower_bound(x.begin(), stop, begin) - x.begin());
  const std::size_t to = static_cast<std::size_t>(std::upper_bound(x.begin(), stop, end) - x.begin());
  if (to - from <= bins) {
    for (std::size_t i = from; i < to; ++i) chosen.push_back(i);
    return chosen;
  }
  Share share;
  std::size_t bin_now = 0;
  for (std::size_t i = from; i < to; ++i) {
    const double place = (x[i] - begin) / (end - begin) * static_cast<double>(bins);
    const std::size_t bin = std::min(bins - 1, static_cast<std::size_t>(place));
    if (bin != bin_now) share.move_to(chosen);
    bin_now = bin;
    share.add(i, y);
  }
  share.move_to(chosen);
  return chosen;
}

}  // namespace stallwright
