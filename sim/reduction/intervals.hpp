#pragma once

#include <cstdint>

namespace stallwright {

/// Closed interval.
struct Interval {
  double lower;
  double upper;

  bool contains(double value) const { return value >= lower && value <= upper; }
  double half_width() const { return 0.5 * (upper - lower); }
};

/// `confidence` is two-sided and lies strictly between 0 and 1; otherwise, or with counts that are
/// impossible, the functions throw std::invalid_argument.

/// Binomial proportion, Clopper and Pearson: k successes of n, a = 1 - confidence,
///   lower = Beta^-1(a/2; k, n - k + 1),  upper = Beta^-1(1 - a/2; k + 1, n - k)     [CLOPPER-PEARSON-1934]
/// Covers with at least the stated confidence at any true proportion. n >= 1.
Interval clopper_pearson(std::int64_t successes, std::int64_t trials, double confidence = 0.95);

/// Binomial proportion, Wilson's score interval, z the normal quantile:
///   (k + z^2/2)/(n + z^2) +- z/(n + z^2) sqrt(k(n - k)/n + z^2/4)                    [WILSON-1927]
/// Covers with about the stated confidence; shorter than Clopper and Pearson's.
Interval wilson(std::int64_t successes, std::int64_t trials, double confidence = 0.95);

/// Variance of normal data from a sample variance s2 with dof degrees of freedom:
///   dof s2 / chi2(1 - a/2; dof) .. dof s2 / chi2(a/2; dof);  dof > 0, need not be whole.
Interval variance_interval(double sample_variance, double dof, double confidence = 0.95);

}  // namespace stallwright
