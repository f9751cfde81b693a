#pragma once
#include <cmath>
#include <cstddef>
#include <vector>

namespace stallwright::published {

/// Overlapping Allan deviation of a sampled signal, averaged over m samples  [IEEE-952]:
///   sigma^2 = sum over k of (mean of samples k+m .. k+2m-1 less mean of samples k .. k+m-1)^2 / (2 (n - 2m + 1))
/// Unit of the signal; m from 1 to half the length. Its relative standard error is about 1/sqrt(2 (n/m - 1)) for a random
/// walk; for white noise sqrt(3/(4 n)) at m = 1, where differences share samples, and 1/sqrt(3 n/m) at large m.
inline double allan_deviation(const std::vector<double>& y, std::size_t m) {
  std::vector<double> sums(y.size() + 1, 0.0);
  // The mean is taken off, so that long sums lose no digits.
  double mean = 0.0;
  for (const double value : y) mean += value / static_cast<double>(y.size());
  for (std::size_t i = 0; i < y.size(); ++i) sums[i + 1] = sums[i] + (y[i] - mean);
  double squares = 0.0;
  const std::size_t count = y.size() - 2 * m + 1;
  for (std::size_t k = 0; k < count; ++k) {
    const double difference = (sums[k + 2 * m] - 2.0 * sums[k + m] + sums[k]) / static_cast<double>(m);
    squares += difference * difference;
  }
  return std::sqrt(0.5 * squares / static_cast<double>(count));
}

/// Allan deviation of a random walk of k units per root second that is summed sample by sample:
///   k sqrt(tau/3 (1 + 1/(2 m^2))),  m = tau over the sample interval;  k sqrt(tau/3) for many samples  [IEEE-952]
inline double walk_deviation(double k, double tau_s, double sample_s) {
  const double m = tau_s / sample_s;
  return k * std::sqrt(tau_s / 3.0 * (1.0 + 0.5 / (m * m)));
}

}  // namespace stallwright::published
