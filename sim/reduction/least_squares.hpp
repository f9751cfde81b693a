#pragma once

#include <Eigen/Core>

namespace stallwright {

/// A value and its standard uncertainty, both in the unit of the value.
struct Estimate {
  double value;
  double standard_uncertainty;
};

/// What the total sum of squares in R2 is taken about: the mean (the model has a constant term) or zero (it
/// has none).
enum class TotalAbout { kMean, kZero };

/// Where the scale of the covariance comes from: the scatter of the residuals (weights are relative), or the
/// given standard uncertainties taken at their word.
enum class CovarianceScale { kResiduals, kGivenUncertainties };

/// Linear least squares:  y = X b + e,  b minimises  sum w_i (y_i - x_i b)^2.
///   RSS = sum w_i e_i^2,  s = sqrt(RSS/(n - p)),  cov(b) = s^2 (X' W X)^-1  (or without s^2 when u_i are
///   given) R2 = 1 - RSS / sum w_i (y_i - m)^2,  m the weighted mean or zero.                  [NIST-STRD,
///   JCGM-100 H.3]
/// X is n x p, a row an observation, a column a term. With n = p the fit is exact: s and cov(b) are NaN.
struct LeastSquaresFit {
  Eigen::VectorXd parameters;  ///< b, p entries
  Eigen::MatrixXd covariance;  ///< of b, p x p
  Eigen::VectorXd residuals;   ///< y - X b, unweighted, n entries
  double residual_sum_of_squares;
  double residual_sd;  ///< s; in a weighted fit that of an observation of unit weight
  double r_squared;
  int dof;  ///< n - p

  double standard_uncertainty(Eigen::Index parameter) const;
  /// correlation_ij = cov_ij / sqrt(cov_ii cov_jj)
  Eigen::MatrixXd correlation() const;
  /// x b and its standard uncertainty sqrt(x cov x'); the scatter of one further observation is not in it.
  Estimate predict(const Eigen::VectorXd& x_row) const;
  /// The same fit with its covariance times `factor`: for residuals that are not independent, the factor is
  /// their integrated autocorrelation time (series.hpp). Residuals, s and R2 stay.
  LeastSquaresFit with_variance_factor(double factor) const;
};

/// Householder QR with column pivoting on columns scaled to unit length, so powers of x of any size can be
/// columns. Throws std::invalid_argument when sizes do not match, n < p, a value is not finite, or the
/// columns depend on each other (a pivot below n * 2.2e-16 of the largest).
LeastSquaresFit fit_linear(const Eigen::MatrixXd& X, const Eigen::VectorXd& y,
                           TotalAbout total = TotalAbout::kMean);

/// The same with standard uncertainties u_i > 0 of the observations, w_i = 1/u_i^2.
LeastSquaresFit fit_linear_weighted(const Eigen::MatrixXd& X, const Eigen::VectorXd& y,
                                    const Eigen::VectorXd& u, CovarianceScale scale,
                                    TotalAbout total = TotalAbout::kMean);

}  // namespace stallwright
