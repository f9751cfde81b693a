#include "sim/reduction/polynomial_fit.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>
#include <vector>

namespace stallwright {
namespace {

Eigen::VectorXd powers(double t, Eigen::Index count) {
  Eigen::VectorXd row(count);
  double power = 1.0;
  for (Eigen::Index k = 0; k < count; ++k, power *= t) row(k) = power;
  return row;
}

Eigen::VectorXd power_slopes(double t, Eigen::Index count) {
  Eigen::VectorXd row = Eigen::VectorXd::Zero(count);
  double power = 1.0;
  for (Eigen::Index k = 1; k < count; ++k, power *= t) row(k) = static_cast<double>(k) * power;
  return row;
}

}  // namespace

Estimate PolynomialFit::value(double x) const {
  return fit.predict(powers((x - centre) / scale, fit.parameters.size()));
}

Estimate PolynomialFit::slope(double x) const {
  const Estimate per_t = fit.predict(power_slopes((x - centre) / scale, fit.parameters.size()));
  return {per_t.value / scale, per_t.standard_uncertainty / scale};
}

PolynomialFit fit_polynomial(std::span<const double> x, std::span<const double> y, int degree) {
  if (degree < 0 || x.size() != y.size() || x.size() < static_cast<std::size_t>(degree) + 1)
    throw std::invalid_argument(
        "polynomial fit: too few points for this degree, or x and y differ in length");
  const auto [low, high] = std::minmax_element(x.begin(), x.end());
  const double centre = 0.5 * (*low + *high);
  const double half_range = 0.5 * (*high - *low);
  if (degree > 0 && !(half_range > 0.0)) throw std::invalid_argument("polynomial fit: x has no spread");
  const double scale = half_range > 0.0 ? half_range : 1.0;

  const Eigen::Index n = static_cast<Eigen::Index>(x.size());
  Eigen::MatrixXd X(n, degree + 1);
  Eigen::VectorXd observed(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    X.row(i) = powers((x[static_cast<std::size_t>(i)] - centre) / scale, degree + 1);
    observed(i) = y[static_cast<std::size_t>(i)];
  }
  return {fit_linear(X, observed), centre, scale};
}

Vertex vertex_of(const PolynomialFit& quadratic) {
  const LeastSquaresFit& fit = quadratic.fit;
  if (fit.parameters.size() != 3) throw std::invalid_argument("vertex: the polynomial is not a quadratic");
  const double b1 = fit.parameters(1);
  const double b2 = fit.parameters(2);
  if (b2 == 0.0) {
    constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
    return {{kNaN, kNaN}, {kNaN, kNaN}, 0.0, 0.0, false, false};
  }
  const double t = -b1 / (2.0 * b2);
  const Eigen::Vector3d g(0.0, -1.0 / (2.0 * b2), b1 / (2.0 * b2 * b2));
  const double u_t = std::sqrt(std::max(0.0, g.dot(fit.covariance * g)));
  // The first-order change of y* with t* is nil at the vertex, so h is the row of a prediction at t*.
  const Estimate y = fit.predict(powers(t, 3));
  return {{quadratic.centre + quadratic.scale * t, quadratic.scale * u_t},
          y,
          2.0 * b2 / (quadratic.scale * quadratic.scale),
          std::abs(b2) / fit.standard_uncertainty(2),
          b2 < 0.0,
          std::abs(t) <= 1.0};
}

LocalQuadratic fit_local_quadratic(std::span<const double> x, std::span<const double> y, double lower,
                                   double upper) {
  if (x.size() != y.size()) throw std::invalid_argument("local quadratic: x and y differ in length");
  std::vector<double> x_near;
  std::vector<double> y_near;
  for (std::size_t i = 0; i < x.size(); ++i) {
    if (!(x[i] >= lower && x[i] <= upper)) continue;
    x_near.push_back(x[i]);
    y_near.push_back(y[i]);
  }
  // Three points always fit exactly and say nothing about their own scatter.
  if (x_near.size() < 4) throw std::invalid_argument("local quadratic: fewer than four points in the window");
  const PolynomialFit polynomial = fit_polynomial(x_near, y_near, 2);
  return {polynomial, vertex_of(polynomial), x_near.size()};
}

}  // namespace stallwright
