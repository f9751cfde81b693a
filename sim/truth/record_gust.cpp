#include "sim/truth/record_gust.hpp"

#include <algorithm>
#include <cmath>

#include "sim/reduction/flight_log.hpp"

namespace stallwright {

double record_gust_mps(const std::vector<LogRow>& log, const std::vector<TruthRow>& truth) {
  double most = kUnset;
  const std::size_t rows = std::min(log.size(), truth.size());
  for (std::size_t i = 0; i < rows;) {
    double sum = 0.0, squares = 0.0, count = 0.0;
    for (; i < rows && log[i].recording != 0; ++i) {
      sum += truth[i].gust_down_mps;
      squares += truth[i].gust_down_mps * truth[i].gust_down_mps;
      count += 1.0;
    }
    if (count >= 250.0) {
      const double mean = sum / count, rms = std::sqrt(std::max(squares / count - mean * mean, 0.0));
      most = most == most ? std::max(most, rms) : rms;
    }
    ++i;
  }
  return most;
}

RecordRms record_rms(const std::vector<LogRow>& log, const std::vector<TruthRow>& truth,
                     const TestCard& card) {
  double hold = 0.0, gust = 0.0, rows = 0.0, true_rows = 0.0;
  for (const Record& record : find_records(log)) {
    if (!card.points[record.point].is_steady()) continue;
    for (std::size_t i = record.begin; i < record.end; ++i) {
      const double off = log[i].ias_kt - log[i].target_kt;
      hold += off * off;
      rows += 1.0;
      if (i >= truth.size()) continue;
      gust += truth[i].gust_down_mps * truth[i].gust_down_mps;
      true_rows += 1.0;
    }
  }
  return {rows > 0.0 ? std::sqrt(hold / rows) : kUnset,
          true_rows > 0.0 ? std::sqrt(gust / true_rows) : kUnset};
}

}  // namespace stallwright
