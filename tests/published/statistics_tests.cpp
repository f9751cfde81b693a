// Intervals of proportions and the consistency of a weighted mean, against what defines them
// [CLOPPER-PEARSON-1934] [WILSON-1927] [BIRGE-1932].
#include <catch2/catch.hpp>
#include <cmath>
#include <string>
#include <vector>

#include "sim/reduction/intervals.hpp"
#include "sim/reduction/pooled_mean.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;
using evidence::hold;
using evidence::Published;
using evidence::WorstRow;

namespace {

constexpr const char* kExact = "exact, but for rounding";

/// Probability of k or more of n, by the sum itself.
double at_least(int k, int n, double p) {
  double sum = 0.0;
  for (int i = k; i <= n; ++i)
    sum += std::exp(std::lgamma(n + 1.0) - std::lgamma(i + 1.0) - std::lgamma(n - i + 1.0) + i * std::log(p) +
                    (n - i) * std::log1p(-p));
  return sum;
}

}  // namespace

TEST_CASE("the exact interval of a proportion leaves half of the rest in each binomial tail",
          "[reduction][published]") {
  const Published tails{"CLOPPER-PEARSON-1934", "definition, binomial tails", "from memory; worked by hand"};
  WorstRow lower, upper;
  for (const int n : {10, 20, 200})
    for (const int k : {1, n / 3, n - 1}) {
      const Interval interval = clopper_pearson(k, n, 0.95);
      const std::string name = std::to_string(k) + " of " + std::to_string(n);
      lower.difference(name, at_least(k, n, interval.lower), 0.025, 1e-11);
      upper.difference(name, 1.0 - at_least(k + 1, n, interval.upper), 0.025, 1e-11);
    }
  lower.hold(tails, "95 %, tail beyond the lower end", "1", "the sum's rounding");
  upper.hold(tails, "95 %, tail beyond the upper end", "1", "the sum's rounding");
  const double none = 1.0 - std::pow(0.025, 1.0 / 20.0);
  hold(tails, "95 %, upper end with none of 20", clopper_pearson(0, 20).upper, none, 1e-12, "1", kExact);
}

TEST_CASE("each end of the score interval of a proportion is z deviations from the count",
          "[reduction][published]") {
  WorstRow ends;
  const double z = 1.959963984540054;
  for (const int k : {1, 50, 190}) {
    const Interval interval = wilson(k, 200);
    for (const double p : {interval.lower, interval.upper})
      ends.difference(std::to_string(k) + " of 200",
                      std::abs(k / 200.0 - p) / std::sqrt(p * (1.0 - p) / 200.0), z, 1e-9);
  }
  ends.hold({"WILSON-1927", "the equation that the ends solve", "from memory; worked by hand"},
            "95 %, deviations between count and end", "1", "rounding");
}

TEST_CASE("a weighted mean has Birge's ratio, internal and external uncertainty", "[reduction][published]") {
  // 10 +- 1 and 13 +- 2: weights 1 and 1/4, mean 10.6, chi2 9/5 (difference squared over the sum of variances).
  const PooledMean mean = pooled_mean(std::vector<double>{10.0, 13.0}, std::vector<double>{1.0, 2.0});
  const Published birge{"BIRGE-1932", "internal and external consistency", "from memory; worked by hand"};
  hold(birge, "10 +- 1 and 13 +- 2, mean", mean.value, 10.6, 1e-13, "1", kExact);
  hold(birge, "10 +- 1 and 13 +- 2, internal uncertainty", mean.u_internal, std::sqrt(0.8), 1e-13, "1",
       kExact);
  hold(birge, "10 +- 1 and 13 +- 2, external uncertainty", mean.u_external, std::sqrt(0.8 * 1.8), 1e-13, "1",
       kExact);
  hold(birge, "10 +- 1 and 13 +- 2, Birge ratio", mean.birge_ratio, std::sqrt(1.8), 1e-13, "1", kExact);
}
