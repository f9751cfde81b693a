#include <catch2/catch.hpp>
#include <cmath>
#include <stdexcept>
#include <vector>

#include "sim/reduction/series.hpp"

using namespace stallwright;
using Catch::Matchers::WithinRel;

TEST_CASE("a mean keeps small differences on a large offset", "[reduction]") {
  const std::vector<double> y = {1e15 + 1.0, 1e15 + 3.0, 1e15 + 2.0};
  CHECK(mean(y) == 1e15 + 2.0);
  CHECK_THAT(sample_sd(y), WithinRel(1.0, 1e-15));
}

TEST_CASE("autocorrelation by hand for four samples", "[reduction]") {
  // Deviations -1.5 -0.5 0.5 1.5, squares 5: r1 = (0.75 - 0.25 + 0.75)/5, r2 = (-0.75 - 0.75)/5, r3 =
  // -2.25/5.
  const std::vector<double> y = {1, 2, 3, 4};
  CHECK(autocorrelation(y, 0) == 1.0);
  CHECK_THAT(autocorrelation(y, 1), WithinRel(0.25, 1e-14));
  CHECK_THAT(autocorrelation(y, 2), WithinRel(-0.30, 1e-14));
  CHECK_THAT(autocorrelation(y, 3), WithinRel(-0.45, 1e-14));
}

TEST_CASE("a constant series has a certain mean and no correlation", "[reduction]") {
  const std::vector<double> y(50, 0.1);
  CHECK(autocorrelation(y, 3) == 0.0);
  const CorrelatedMean m = correlated_mean(y);
  CHECK(m.mean == 0.1);
  CHECK(m.standard_uncertainty == 0.0);
  CHECK(m.autocorrelation_time == 1.0);
  CHECK(m.dof == 49.0);
}

TEST_CASE("the correlated mean by hand for a series that alternates in pairs", "[reduction]") {
  // 1 1 -1 -1 repeated, n = 12, sum of squares 12: lagged products over it r1 = 1/12, r2 = -10/12, r3 =
  // -1/12. The pair (r0, r1) is kept, (r2, r3) is negative: M = 1, sum of c_k over |k| <= 1 is 1 + 2/12, b =
  // (3 - 2/12)/12.
  std::vector<double> y;
  for (int i = 0; i < 12; ++i) y.push_back(i % 4 < 2 ? 5.0 + 1.0 : 5.0 - 1.0);
  const CorrelatedMean m = correlated_mean(y);
  CHECK(m.last_lag == 1);
  CHECK(m.mean == 5.0);
  const double b = (3.0 - 2.0 / 12.0) / 12.0;
  const double u2 = (1.0 + 2.0 / 12.0) / 12.0 / (1.0 - b);
  CHECK_THAT(m.standard_uncertainty, WithinRel(std::sqrt(u2), 1e-14));
  CHECK_THAT(m.sd * std::sqrt(1.0 / m.effective_count), WithinRel(m.standard_uncertainty, 1e-14));
  CHECK_THAT(m.dof, WithinRel(3.0, 1e-14));  // 12/3 - 1
}

TEST_CASE("a strictly alternating series keeps a small positive uncertainty", "[reduction]") {
  std::vector<double> y;
  for (int i = 0; i < 100; ++i) y.push_back(i % 2 ? 1.0 : -1.0);
  const CorrelatedMean m = correlated_mean(y);
  CHECK(m.standard_uncertainty > 0.0);
  CHECK(m.standard_uncertainty < 0.05);
}

TEST_CASE("a steady drift leaves hardly any degrees of freedom", "[reduction]") {
  std::vector<double> y;
  for (int i = 0; i < 200; ++i) y.push_back(0.01 * i);
  const CorrelatedMean m = correlated_mean(y);
  CHECK(m.dof == 1.0);
  CHECK(m.effective_count < 4.0);
}

TEST_CASE("the mean of a first-order signal has its limits for short and long windows", "[reduction]") {
  const GaussMarkov signal{9.0, 2.0};
  CHECK(window_mean_variance(signal, 0.0) == 9.0);
  CHECK_THAT(window_mean_variance(signal, 1e-3), WithinRel(9.0 * (1.0 - 5e-4 / 3.0), 1e-7));
  CHECK_THAT(window_mean_variance(signal, 2e6), WithinRel(2.0 * 9.0 * 2.0 / 2e6, 1e-5));
  // x = 1: 2 (1 - 1 + 1/e)
  CHECK_THAT(window_mean_variance(signal, 2.0), WithinRel(9.0 * 2.0 * std::exp(-1.0), 1e-14));
  // No jump where the series takes over from the closed form.
  CHECK_THAT(window_mean_variance(signal, 2.0 * 0.99999e-4),
             WithinRel(window_mean_variance(signal, 2.0 * 1.00001e-4), 1e-8));
  CHECK_THAT(sampled_mean_variance(signal, 1, 0.1), WithinRel(9.0, 1e-14));
  CHECK_THAT(sampled_mean_variance(signal, 2, 2.0), WithinRel(9.0 * 0.5 * (1.0 + std::exp(-1.0)), 1e-14));
}

TEST_CASE("series too short and signals out of range are refused", "[reduction]") {
  const std::vector<double> none, one = {1.0}, three = {1.0, 2.0, 4.0};
  CHECK_THROWS_AS(mean(none), std::invalid_argument);
  CHECK_THROWS_AS(sample_sd(one), std::invalid_argument);
  CHECK_THROWS_AS(autocorrelation(three, 3), std::invalid_argument);
  CHECK_THROWS_AS(correlated_mean(three), std::invalid_argument);
  CHECK_THROWS_AS(window_mean_variance({1.0, 0.0}, 1.0), std::invalid_argument);
  CHECK_THROWS_AS(window_mean_variance({-1.0, 1.0}, 1.0), std::invalid_argument);
  CHECK_THROWS_AS(window_mean_variance({1.0, 1.0}, NAN), std::invalid_argument);
  CHECK_THROWS_AS(sampled_mean_variance({1.0, 1.0}, 0, 1.0), std::invalid_argument);
}
