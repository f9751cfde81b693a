#pragma once

#include <span>

namespace stallwright {

/// Weighted mean of independent estimates x_i with standard uncertainties u_i, w_i = 1/u_i^2:
///   x = sum w_i x_i / sum w_i,   u_internal = 1/sqrt(sum w_i)
///   chi2 = sum w_i (x_i - x)^2,  u_external = u_internal sqrt(chi2/(n - 1)),  Birge ratio R = sqrt(chi2/(n -
///   1))
/// Internal: what the stated u_i promise; external: what the scatter shows. The adopted uncertainty is the
/// larger of the two: scatter beyond the stated u_i is believed, scatter that happens to be small is not.
/// [BIRGE-1932] One estimate gives chi2 = 0, R = NaN, u_external = NaN and the internal uncertainty.
struct PooledMean {
  double value;
  double u_internal;
  double u_external;
  double adopted_uncertainty;
  double chi_squared;
  double birge_ratio;
  int dof;             ///< n - 1
  double probability;  ///< of a chi2 at least this large if the u_i are right; NaN for one estimate
};

/// Throws std::invalid_argument when there is no estimate, lengths differ, or a u_i is not positive.
PooledMean pooled_mean(std::span<const double> values, std::span<const double> standard_uncertainties);

}  // namespace stallwright
