#include "sim/reduction/series.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

namespace stallwright {
namespace {

void require_length(std::span<const double> y, std::size_t least) {
  if (y.size() < least) throw std::invalid_argument("series: too few samples for this statistic");
}

// Neumaier's compensated sum: the part that rounding drops is carried along and added at the end.
class CompensatedSum {
 public:
  void add(double term) {
    const double next = sum_ + term;
    lost_ += std::abs(sum_) >= std::abs(term) ? (sum_ - next) + term : (term - next) + sum_;
    sum_ = next;
  }
  double value() const { return sum_ + lost_; }

 private:
  double sum_ = 0.0;
  double lost_ = 0.0;
};

// y - y_0 is exact for samples near each other, so the mean taken off is that of the differences.
std::vector<double> deviations(std::span<const double> y) {
  CompensatedSum offset;
  for (const double value : y) offset.add(value - y.front());
  const double mean_offset = offset.value() / static_cast<double>(y.size());
  std::vector<double> d;
  d.reserve(y.size());
  for (const double value : y) d.push_back((value - y.front()) - mean_offset);
  return d;
}

double lagged_products(std::span<const double> d, std::size_t lag) {
  CompensatedSum sum;
  for (std::size_t i = 0; i + lag < d.size(); ++i) sum.add(d[i] * d[i + lag]);
  return sum.value();
}

void require_valid(const GaussMarkov& signal, double window_s) {
  if (!(signal.variance >= 0.0) || !(signal.correlation_time_s > 0.0) || !(window_s >= 0.0))
    throw std::invalid_argument("Gauss-Markov signal: variance, correlation time or window out of range");
}

}  // namespace

double mean(std::span<const double> y) {
  require_length(y, 1);
  CompensatedSum offset;
  for (const double value : y) offset.add(value - y.front());
  return y.front() + offset.value() / static_cast<double>(y.size());
}

double sample_sd(std::span<const double> y) {
  require_length(y, 2);
  return std::sqrt(lagged_products(deviations(y), 0) / static_cast<double>(y.size() - 1));
}

double autocorrelation(std::span<const double> y, std::size_t lag) {
  require_length(y, lag + 1);
  if (lag == 0) return 1.0;
  const std::vector<double> d = deviations(y);
  const double total = lagged_products(d, 0);
  return total > 0.0 ? lagged_products(d, lag) / total : 0.0;
}

CorrelatedMean correlated_mean(std::span<const double> y) {
  require_length(y, 4);
  const double n = static_cast<double>(y.size());
  const std::vector<double> d = deviations(y);
  const double total = lagged_products(d, 0);
  const double sd = std::sqrt(total / (n - 1.0));
  if (!(total > 0.0)) return {mean(y), sd, 1.0, n, 0.0, n - 1.0, 0};

  // Sum of r_k over |k| <= M, pair by pair; the pair of lags 0 and 1 is always positive.
  double correlation_sum = -1.0;
  std::size_t last_lag = 0;
  for (std::size_t k = 0; k + 1 <= std::max<std::size_t>(1, y.size() / 2); k += 2) {
    const double pair = (lagged_products(d, k) + lagged_products(d, k + 1)) / total;
    if (!(pair > 0.0)) break;
    correlation_sum += 2.0 * pair;
    last_lag = k + 1;
  }
  // A series that alternates more than any random one could sum to nothing; one sample in n is the floor.
  correlation_sum = std::max(correlation_sum, 1.0 / n);

  const double m = static_cast<double>(last_lag);
  const double b = (2.0 * m + 1.0 - m * (m + 1.0) / n) / n;
  const double variance_of_mean = (total / n) * correlation_sum / (1.0 - b) / n;
  const double tau = variance_of_mean * n / (sd * sd);
  const double dof = std::max(1.0, n / (2.0 * m + 1.0) - 1.0);
  return {mean(y), sd, tau, n / tau, std::sqrt(variance_of_mean), dof, last_lag};
}

double window_mean_variance(const GaussMarkov& signal, double window_s) {
  require_valid(signal, window_s);
  const double x = window_s / signal.correlation_time_s;
  // Below 1e-4 the difference loses digits and the series is exact to x^3/60.
  if (x < 1e-4) return signal.variance * (1.0 - x / 3.0 + x * x / 12.0);
  return signal.variance * 2.0 * (x + std::expm1(-x)) / (x * x);
}

double sampled_mean_variance(const GaussMarkov& signal, std::size_t n, double interval_s) {
  require_valid(signal, interval_s);
  if (n == 0) throw std::invalid_argument("Gauss-Markov signal: mean of no samples");
  const double count = static_cast<double>(n);
  const double step = interval_s / signal.correlation_time_s;
  // (n^2 - 1)/(3n) is the mean distance of two samples: the first term of the series in step.
  if (count * step < 1e-6) return signal.variance * (1.0 - step * (count * count - 1.0) / (3.0 * count));
  const double phi = std::exp(-step);
  const double one_minus_phi = -std::expm1(-step);
  const double one_minus_phi_n = -std::expm1(-step * count);
  return signal.variance / count *
         ((1.0 + phi) / one_minus_phi -
          2.0 * phi * one_minus_phi_n / (count * one_minus_phi * one_minus_phi));
}

}  // namespace stallwright
