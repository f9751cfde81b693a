#pragma once
#include <functional>
#include <span>
#include <vector>

#include "sim/random/philox.hpp"
#include "sim/reduction/intervals.hpp"

namespace stallwright {

/// Quantile of a sample, Hyndman and Fan's type 7 (The American Statistician 50, 1996; from memory): with the values in
/// rising order x_1 .. x_n and h = (n - 1) p,
///   Q(p) = x_(1 + floor h) + (h - floor h) (x_(2 + floor h) - x_(1 + floor h))
///   rising  in rising order, one value at least;  p  0 to 1
double quantile(std::span<const double> rising, double p);

/// Root of the mean square.
double root_mean_square(std::span<const double> values);

/// A number made of a sample, whose values may be put into another order.
using Statistic = std::function<double(std::vector<double>& sample)>;

/// Percentile bootstrap: the values are drawn with replacement, as many as there are, `resamples` times, and the interval
/// goes from the (1 - confidence)/2 quantile of the statistic over these samples to the other end. One interval for each
/// statistic, all from the same samples. Every draw has a place of its own in the stream (tick: resample and draw), so the
/// result depends on values, stream and nothing else. No values: intervals of NaN.
std::vector<Interval> bootstrap_intervals(const std::vector<double>& values,
                                          const std::vector<Statistic>& statistics,
                                          const random::Stream& stream, int resamples = 1000,
                                          double confidence = 0.95);

}  // namespace stallwright
