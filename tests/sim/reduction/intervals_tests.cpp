#include <catch2/catch.hpp>
#include <cmath>
#include <stdexcept>

#include "sim/reduction/intervals.hpp"

using namespace stallwright;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

double binomial_probability(int k, int n, double p) {
  return std::exp(std::lgamma(n + 1.0) - std::lgamma(k + 1.0) - std::lgamma(n - k + 1.0) + k * std::log(p) +
                  (n - k) * std::log1p(-p));
}

double at_least(int k, int n, double p) {
  double sum = 0.0;
  for (int i = k; i <= n; ++i) sum += binomial_probability(i, n, p);
  return sum;
}

}  // namespace

TEST_CASE("the exact binomial bounds leave half of the rest in each tail", "[reduction]") {
  for (const int k : {1, 7, 19}) {
    const Interval interval = clopper_pearson(k, 20, 0.90);
    INFO(k << " of 20");
    CHECK_THAT(at_least(k, 20, interval.lower), WithinAbs(0.05, 1e-11));
    CHECK_THAT(1.0 - at_least(k + 1, 20, interval.upper), WithinAbs(0.05, 1e-11));
  }
}

TEST_CASE("the exact bounds close at no and at full success", "[reduction]") {
  CHECK(clopper_pearson(0, 20).lower == 0.0);
  CHECK_THAT(clopper_pearson(0, 20).upper, WithinRel(1.0 - std::pow(0.025, 1.0 / 20.0), 1e-12));
  CHECK_THAT(clopper_pearson(20, 20).lower, WithinRel(std::pow(0.025, 1.0 / 20.0), 1e-12));
  CHECK(clopper_pearson(20, 20).upper == 1.0);
}

TEST_CASE("the exact interval covers with at least its confidence, the score interval nearly",
          "[reduction]") {
  for (const double p : {0.05, 0.5, 0.93, 0.97}) {
    double exact = 0.0, score = 0.0;
    for (int k = 0; k <= 100; ++k) {
      const double probability = binomial_probability(k, 100, p);
      if (clopper_pearson(k, 100).contains(p)) exact += probability;
      if (wilson(k, 100).contains(p)) score += probability;
    }
    INFO("p " << p << ", exact " << exact << ", score " << score);
    CHECK(exact >= 0.95);
    CHECK_THAT(score, WithinAbs(0.95, 0.03));
  }
}

TEST_CASE("each end of the score interval is z deviations from the count", "[reduction]") {
  const double z = 1.959963984540054;
  for (const int k : {1, 50, 190}) {
    const Interval interval = wilson(k, 200);
    for (const double p : {interval.lower, interval.upper})
      CHECK_THAT(std::abs(k / 200.0 - p), WithinRel(z * std::sqrt(p * (1.0 - p) / 200.0), 1e-10));
  }
  CHECK(wilson(0, 10).lower == 0.0);
  CHECK_THAT(wilson(0, 10).upper, WithinRel(z * z / (10.0 + z * z), 1e-12));
}

// Two degrees of freedom: chi-square is exponential, quantile -2 ln(1 - q).
TEST_CASE("the variance interval with two degrees of freedom is exponential", "[reduction]") {
  const Interval interval = variance_interval(3.0, 2.0, 0.95);
  CHECK_THAT(interval.lower, WithinRel(6.0 / (-2.0 * std::log(0.025)), 1e-12));
  CHECK_THAT(interval.upper, WithinRel(6.0 / (-2.0 * std::log(0.975)), 1e-12));
}

TEST_CASE("impossible counts and levels are refused", "[reduction]") {
  CHECK_THROWS_AS(clopper_pearson(1, 0), std::invalid_argument);
  CHECK_THROWS_AS(clopper_pearson(-1, 10), std::invalid_argument);
  CHECK_THROWS_AS(wilson(11, 10), std::invalid_argument);
  CHECK_THROWS_AS(wilson(1, 10, 1.0), std::invalid_argument);
  CHECK_THROWS_AS(variance_interval(1.0, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(variance_interval(-1.0, 3.0), std::invalid_argument);
}
