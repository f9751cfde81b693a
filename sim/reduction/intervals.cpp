#include "sim/reduction/intervals.hpp"

#include <algorithm>
#include <boost/math/distributions/beta.hpp>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <stdexcept>

namespace stallwright {
namespace {

// In double throughout: long double is a different format on other processors.
using InDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
using Beta = boost::math::beta_distribution<double, InDouble>;
using ChiSquared = boost::math::chi_squared_distribution<double, InDouble>;
using Normal = boost::math::normal_distribution<double, InDouble>;

double tail(double confidence) {
  if (!(confidence > 0.0 && confidence < 1.0))
    throw std::invalid_argument("interval: confidence must lie between 0 and 1");
  return 0.5 * (1.0 - confidence);
}

void require_counts(std::int64_t successes, std::int64_t trials) {
  if (trials < 1 || successes < 0 || successes > trials)
    throw std::invalid_argument(
        "interval: successes must lie between 0 and the number of trials, at least one");
}

}  // namespace

Interval clopper_pearson(std::int64_t successes, std::int64_t trials, double confidence) {
  require_counts(successes, trials);
  const double a = tail(confidence);
  const double k = static_cast<double>(successes);
  const double n = static_cast<double>(trials);
  // The beta distribution degenerates when nothing, or everything, succeeded: the bound is then the end
  // itself.
  const double lower = successes == 0 ? 0.0 : boost::math::quantile(Beta(k, n - k + 1.0), a);
  const double upper =
      successes == trials ? 1.0 : boost::math::quantile(boost::math::complement(Beta(k + 1.0, n - k), a));
  return {lower, upper};
}

Interval wilson(std::int64_t successes, std::int64_t trials, double confidence) {
  require_counts(successes, trials);
  const double z = boost::math::quantile(boost::math::complement(Normal(0.0, 1.0), tail(confidence)));
  const double k = static_cast<double>(successes);
  const double n = static_cast<double>(trials);
  const double centre = (k + 0.5 * z * z) / (n + z * z);
  const double half = z / (n + z * z) * std::sqrt(k * (n - k) / n + 0.25 * z * z);
  return {std::max(0.0, centre - half), std::min(1.0, centre + half)};
}

Interval variance_interval(double sample_variance, double dof, double confidence) {
  const double a = tail(confidence);
  if (!(dof > 0.0) || !std::isfinite(dof) || !(sample_variance >= 0.0))
    throw std::invalid_argument(
        "interval: variance must not be negative and its degrees of freedom positive");
  const ChiSquared chi2(dof);
  return {dof * sample_variance / boost::math::quantile(boost::math::complement(chi2, a)),
          dof * sample_variance / boost::math::quantile(chi2, a)};
}

}  // namespace stallwright
