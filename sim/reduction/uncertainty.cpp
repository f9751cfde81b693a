#include "sim/reduction/uncertainty.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <stdexcept>

namespace stallwright {
namespace {

// In double throughout: long double is a different format on other processors.
using InDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
using Normal = boost::math::normal_distribution<double, InDouble>;
using StudentsT = boost::math::students_t_distribution<double, InDouble>;

double contribution(const Component& c) {
  if (!(c.standard_uncertainty >= 0.0) || !(c.dof > 0.0) ||
      !std::isfinite(c.standard_uncertainty * c.sensitivity))
    throw std::invalid_argument("uncertainty component '" + c.name + "' has no valid u, dof or sensitivity");
  return std::abs(c.sensitivity) * c.standard_uncertainty;
}

double nonnegative(double half_width) {
  if (!(half_width >= 0.0)) throw std::invalid_argument("uncertainty: a half-width must not be negative");
  return half_width;
}

double two_sided_tail(double probability) {
  if (!(probability > 0.0 && probability < 1.0))
    throw std::invalid_argument("uncertainty: probability must lie between 0 and 1");
  return 0.5 * (1.0 - probability);
}

}  // namespace

CombinedUncertainty combine(std::span<const Component> budget) {
  double variance = 0.0;
  for (const Component& c : budget) variance += contribution(c) * contribution(c);  // eq. 10
  double denominator = 0.0;
  for (const Component& c : budget) {
    // As shares of the variance, so that a tiny unit cannot underflow in the fourth power.
    const double share = variance > 0.0 ? contribution(c) * contribution(c) / variance : 0.0;
    denominator += share * share / c.dof;
  }
  const double dof =
      denominator > 0.0 ? 1.0 / denominator : std::numeric_limits<double>::infinity();  // eq. G.2b
  return {std::sqrt(variance), dof};
}

CombinedUncertainty combine_kind(std::span<const Component> budget, Evaluation kind) {
  std::vector<Component> chosen;
  for (const Component& c : budget)
    if (c.kind == kind) chosen.push_back(c);
  return combine(chosen);
}

std::vector<double> variance_shares(std::span<const Component> budget) {
  const double u = combine(budget).standard_uncertainty;
  std::vector<double> shares;
  for (const Component& c : budget) {
    const double ratio = u > 0.0 ? contribution(c) / u : 0.0;
    shares.push_back(ratio * ratio);
  }
  return shares;
}

const Component& dominant_component(std::span<const Component> budget) {
  if (budget.empty()) throw std::invalid_argument("uncertainty: an empty budget has no dominant component");
  return *std::max_element(budget.begin(), budget.end(), [](const Component& a, const Component& b) {
    return contribution(a) < contribution(b);
  });
}

double coverage_factor(double probability, double dof) {
  const double tail = two_sided_tail(probability);
  if (!(dof > 0.0)) throw std::invalid_argument("uncertainty: degrees of freedom must be positive");
  if (std::isinf(dof)) return boost::math::quantile(boost::math::complement(Normal(0.0, 1.0), tail));
  return boost::math::quantile(boost::math::complement(StudentsT(dof), tail));
}

Expanded expand(double value, const CombinedUncertainty& combined, double probability) {
  const double k = coverage_factor(probability, combined.effective_dof);
  const double U = k * combined.standard_uncertainty;
  return {k, U, {value - U, value + U}};
}

double standard_uncertainty_rectangular(double half_width) {
  return nonnegative(half_width) / std::sqrt(3.0);
}

double standard_uncertainty_triangular(double half_width) { return nonnegative(half_width) / std::sqrt(6.0); }

double standard_uncertainty_normal(double half_width, double probability) {
  const double z =
      boost::math::quantile(boost::math::complement(Normal(0.0, 1.0), two_sided_tail(probability)));
  return nonnegative(half_width) / z;
}

double standard_uncertainty_resolution(double resolution) {
  return nonnegative(resolution) / std::sqrt(12.0);
}

double dof_of_relative_uncertainty(double fraction) {
  if (!(fraction > 0.0)) throw std::invalid_argument("uncertainty: a relative uncertainty must be positive");
  return 1.0 / (2.0 * fraction * fraction);
}

}  // namespace stallwright
