#include "sim/reduction/least_squares.hpp"

#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace stallwright {
namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();

double total_sum_of_squares(const Eigen::VectorXd& y, const Eigen::VectorXd& weight, TotalAbout total) {
  const double about = total == TotalAbout::kMean ? weight.dot(y) / weight.sum() : 0.0;
  return (weight.array() * (y.array() - about).square()).sum();
}

// root_weight holds 1/u_i: rows are multiplied by it before the factorisation, never squared into X' W X.
LeastSquaresFit solve(const Eigen::MatrixXd& X, const Eigen::VectorXd& y, const Eigen::VectorXd& root_weight,
                      CovarianceScale scale, TotalAbout total) {
  const Eigen::Index n = X.rows();
  const Eigen::Index p = X.cols();
  if (p == 0 || n < p || y.size() != n || root_weight.size() != n)
    throw std::invalid_argument(
        "least squares: fewer observations than parameters, or sizes that do not match");
  if (!X.allFinite() || !y.allFinite() || !root_weight.allFinite())
    throw std::invalid_argument("least squares: a value is not finite");

  Eigen::MatrixXd A = root_weight.asDiagonal() * X;
  const Eigen::VectorXd length = A.colwise().norm();
  if (!(length.minCoeff() > 0.0)) throw std::invalid_argument("least squares: a column is zero throughout");
  A = A * length.cwiseInverse().asDiagonal();
  const Eigen::VectorXd weighted_y = root_weight.cwiseProduct(y);

  Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(A);
  qr.setThreshold(static_cast<double>(n) * std::numeric_limits<double>::epsilon());
  if (qr.rank() < p) throw std::invalid_argument("least squares: the columns depend on each other");

  LeastSquaresFit fit;
  fit.parameters = qr.solve(weighted_y).cwiseQuotient(length);
  fit.residuals = y - X * fit.parameters;
  fit.residual_sum_of_squares = root_weight.cwiseProduct(fit.residuals).squaredNorm();
  fit.dof = static_cast<int>(n - p);
  fit.residual_sd = fit.dof > 0 ? std::sqrt(fit.residual_sum_of_squares / fit.dof) : kNaN;
  const double total_squares = total_sum_of_squares(y, root_weight.array().square().matrix(), total);
  fit.r_squared = total_squares > 0.0 ? 1.0 - fit.residual_sum_of_squares / total_squares : kNaN;

  // (A'A)^-1 = P R^-1 R^-T P', with the column lengths divided out again.
  const Eigen::MatrixXd R_inverse =
      qr.matrixR().topLeftCorner(p, p).triangularView<Eigen::Upper>().solve(Eigen::MatrixXd::Identity(p, p));
  const Eigen::MatrixXd root = length.cwiseInverse().asDiagonal() * (qr.colsPermutation() * R_inverse);
  const double unit_variance = scale == CovarianceScale::kResiduals ? fit.residual_sd * fit.residual_sd : 1.0;
  fit.covariance = unit_variance * (root * root.transpose());
  return fit;
}

}  // namespace

double LeastSquaresFit::standard_uncertainty(Eigen::Index parameter) const {
  return std::sqrt(covariance(parameter, parameter));
}

Eigen::MatrixXd LeastSquaresFit::correlation() const {
  const Eigen::VectorXd inverse_u = covariance.diagonal().cwiseSqrt().cwiseInverse();
  return inverse_u.asDiagonal() * covariance * inverse_u.asDiagonal();
}

Estimate LeastSquaresFit::predict(const Eigen::VectorXd& x_row) const {
  if (x_row.size() != parameters.size())
    throw std::invalid_argument("least squares: row to predict has the wrong number of terms");
  return {x_row.dot(parameters), std::sqrt(std::max(0.0, x_row.dot(covariance * x_row)))};
}

LeastSquaresFit LeastSquaresFit::with_variance_factor(double factor) const {
  if (!(factor > 0.0)) throw std::invalid_argument("least squares: variance factor must be positive");
  LeastSquaresFit inflated = *this;
  inflated.covariance *= factor;
  return inflated;
}

LeastSquaresFit fit_linear(const Eigen::MatrixXd& X, const Eigen::VectorXd& y, TotalAbout total) {
  return solve(X, y, Eigen::VectorXd::Ones(X.rows()), CovarianceScale::kResiduals, total);
}

LeastSquaresFit fit_linear_weighted(const Eigen::MatrixXd& X, const Eigen::VectorXd& y,
                                    const Eigen::VectorXd& u, CovarianceScale scale, TotalAbout total) {
  if (u.size() == 0 || !(u.array() > 0.0).all())
    throw std::invalid_argument("least squares: standard uncertainties must be positive");
  return solve(X, y, u.cwiseInverse(), scale, total);
}

}  // namespace stallwright
