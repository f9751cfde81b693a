#include "sim/reduction/pooled_mean.hpp"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace stallwright {

PooledMean pooled_mean(std::span<const double> values, std::span<const double> standard_uncertainties) {
  if (values.empty() || values.size() != standard_uncertainties.size())
    throw std::invalid_argument("pooled mean: as many uncertainties as values are needed, and at least one");
  double weight_sum = 0.0;
  double offset_sum = 0.0;
  for (std::size_t i = 0; i < values.size(); ++i) {
    const double u = standard_uncertainties[i];
    if (!(u > 0.0) || !std::isfinite(u) || !std::isfinite(values[i]))
      throw std::invalid_argument("pooled mean: every value must be finite and every uncertainty positive");
    weight_sum += 1.0 / (u * u);
    offset_sum += (values[i] - values[0]) / (u * u);  // about the first value: a large offset costs no digits
  }
  const double mean = values[0] + offset_sum / weight_sum;
  double chi2 = 0.0;
  for (std::size_t i = 0; i < values.size(); ++i) {
    const double z = (values[i] - mean) / standard_uncertainties[i];
    chi2 += z * z;
  }
  constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
  const int dof = static_cast<int>(values.size()) - 1;
  const double u_internal = 1.0 / std::sqrt(weight_sum);
  if (dof == 0) return {mean, u_internal, kNaN, u_internal, 0.0, kNaN, 0, kNaN};
  const double birge = std::sqrt(chi2 / dof);
  using InDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
  const boost::math::chi_squared_distribution<double, InDouble> distribution(dof);
  const double probability = boost::math::cdf(boost::math::complement(distribution, chi2));
  return {mean,  u_internal, u_internal * birge, u_internal * std::max(1.0, birge), chi2,
          birge, dof,        probability};
}

}  // namespace stallwright
