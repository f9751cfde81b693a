// Variance of the mean of a correlated signal. source: BENDAT-PIERSOL
#include <catch2/catch.hpp>
#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "sim/reduction/intervals.hpp"
#include "sim/reduction/series.hpp"
#include "sim/reduction/uncertainty.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;

namespace {

const evidence::Published kMeans{"BENDAT-PIERSOL", "statistical errors, mean of a correlated record",
                                 "worked by hand"};

std::string text(double x) { return std::to_string(x).substr(0, 4); }

// Exact samples of a stationary first-order Gauss-Markov signal of unit variance, step = interval / T.
std::vector<double> sampled_signal(std::mt19937_64& bits, std::size_t n, double step) {
  std::normal_distribution<double> normal;
  const double phi = std::exp(-step);
  const double drive = std::sqrt(-std::expm1(-2.0 * step));
  std::vector<double> y(n);
  double state = normal(bits);
  for (double& sample : y) {
    sample = state;
    state = phi * state + drive * normal(bits);
  }
  return y;
}

}  // namespace

// var(mean) = (s2/n) (1 + 2 sum (1 - k/n) rho_k) for any stationary series; the closed form is its sum.
TEST_CASE("the sampled closed form is the sum over the lags", "[reduction][published]") {
  for (const double step : {1e-9, 1e-5, 0.02, 0.5, 3.0})
    for (const std::size_t n : {std::size_t{1}, std::size_t{2}, std::size_t{17}, std::size_t{400}}) {
      double sum = 1.0;
      for (std::size_t k = 1; k < n; ++k)
        sum += 2.0 * (1.0 - static_cast<double>(k) / static_cast<double>(n)) *
               std::exp(-step * static_cast<double>(k));
      const double exact = 4.0 * sum / static_cast<double>(n);
      const std::string step_text =
          step < 1e-3 ? "1e-" + std::to_string(std::lround(-std::log10(step))) : text(step);
      evidence::hold(kMeans,
                     "variance of the mean of " + std::to_string(n) + " samples, step " + step_text + " T",
                     sampled_mean_variance({4.0, 2.0}, n, 2.0 * step), exact, 1e-10 * exact, "1", "rounding");
    }
}

// Tolerance: the 99.9 % chi-square interval of a variance from 20,000 independent windows, about 3.3 %.
TEST_CASE("the variance of simulated window means agrees with the closed form within its sampling interval",
          "[reduction][published]") {
  constexpr int kWindows = 20000;
  const double windows_in_T = GENERATE(0.5, 4.0, 20.0);
  constexpr std::size_t kSamples = 80;
  const double step = windows_in_T / kSamples;
  std::mt19937_64 bits(20240501);
  double squares = 0.0;
  for (int i = 0; i < kWindows; ++i) {
    const double m = mean(sampled_signal(bits, kSamples, step));
    squares += m * m;  // the true mean is zero and known, so there are kWindows degrees of freedom
  }
  const Interval interval = variance_interval(squares / kWindows, kWindows, 0.999);
  INFO("window of " << windows_in_T << " T: " << interval.lower << " .. " << interval.upper);
  const double sampled = sampled_mean_variance({1.0, 1.0}, kSamples, step);
  CHECK(interval.contains(sampled));
  const std::string window = " of a window of " + text(windows_in_T) + " T";
  evidence::hold(kMeans, "simulated variance of the mean" + window, squares / kWindows, sampled,
                 std::max(sampled - interval.lower * sampled * kWindows / squares,
                          interval.upper * sampled * kWindows / squares - sampled),
                 "1", "99.9 % interval of 20000 windows, its wider side");
  // Watching without a break differs by (step^2)/12 of the variance at zero lag and less: under 1 % here.
  evidence::hold(kMeans, "variance of the mean watched without a break" + window,
                 window_mean_variance({1.0, 1.0}, windows_in_T), sampled, 0.01 * sampled, "1",
                 "1 %: samples, not a line");
}

// For many samples the variance of the mean tends to (s2/n)(1 + phi)/(1 - phi); the remainder falls as 1/n.
TEST_CASE("a long first-order series has the autocorrelation time (1 + phi)/(1 - phi)",
          "[reduction][published]") {
  const double step = GENERATE(0.1, 0.7, 2.0);
  const double phi = std::exp(-step);
  const double factor = (1.0 + phi) / (1.0 - phi);
  constexpr std::size_t kMany = 100000000;
  evidence::hold(kMeans, "autocorrelation time in samples, closed form, step " + text(step) + " T",
                 sampled_mean_variance({1.0, 1.0}, kMany, step) * kMany, factor, 1e-6 * factor, "1",
                 "the rest falls as 1/n");
  // The estimate from one series of 50,000: its relative deviation is sqrt(2 (2M+1)/n), under 5 % here; four
  // of them and the window's own excess of up to 10 %.
  std::mt19937_64 bits(7);
  const CorrelatedMean estimate = correlated_mean(sampled_signal(bits, 50000, step));
  evidence::hold({"GEYER-1992", "initial positive sequence", "from memory"},
                 "autocorrelation time in samples, from 50000 of them, step " + text(step) + " T",
                 estimate.autocorrelation_time, factor, 0.25 * factor, "1",
                 "four spreads of the estimate, and its window");
}

// u^2 against the closed form, averaged over 1,000 windows, and coverage of t intervals. The bounds are the
// figures stated in series.hpp widened by the sampling interval of this many windows.
TEST_CASE("the uncertainty of the mean of one record covers the true mean of a first-order signal",
          "[reduction][published]") {
  struct Case {
    double windows_in_T, least_coverage, most_coverage;
  };
  const auto test = GENERATE(Case{10.0, 0.90, 0.96}, Case{20.0, 0.92, 0.97}, Case{50.0, 0.93, 0.98});
  constexpr int kWindows = 1000;
  constexpr std::size_t kSamples = 500;
  const double step = test.windows_in_T / kSamples;
  std::mt19937_64 bits(99);
  double u_squared = 0.0;
  int covered = 0;
  for (int i = 0; i < kWindows; ++i) {
    const CorrelatedMean estimate = correlated_mean(sampled_signal(bits, kSamples, step));
    u_squared += estimate.standard_uncertainty * estimate.standard_uncertainty / kWindows;
    const double k = coverage_factor(0.95, estimate.dof);
    if (std::abs(estimate.mean) <= k * estimate.standard_uncertainty) ++covered;
  }
  INFO("window of " << test.windows_in_T << " T: " << covered << " of " << kWindows << " covered");
  const double exact = sampled_mean_variance({1.0, 1.0}, kSamples, step);
  const std::string window = ", windows of " + text(test.windows_in_T) + " T";
  evidence::hold(kMeans, "mean squared uncertainty of a mean" + window, u_squared, exact, 0.35 * exact, "1",
                 "35 %: the bias that series.hpp states");
  CHECK(covered >= test.least_coverage * kWindows);
  CHECK(covered <= test.most_coverage * kWindows);
  evidence::hold(kMeans, "share of 95 % intervals that hold the true mean" + window, 1.0 * covered / kWindows,
                 0.95, std::max(0.95 - test.least_coverage, test.most_coverage - 0.95), "1",
                 "short windows cover a little less, as series.hpp states");
}
