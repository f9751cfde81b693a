#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <random>
#include <stdexcept>
#include <vector>

#include "sim/reduction/least_squares.hpp"
#include "sim/reduction/polynomial_fit.hpp"

using namespace stallwright;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

Eigen::MatrixXd line_through(const Eigen::VectorXd& x) {
  Eigen::MatrixXd X(x.size(), 2);
  X << Eigen::VectorXd::Ones(x.size()), x;
  return X;
}

const Eigen::VectorXd kX = (Eigen::VectorXd(5) << 1, 2, 4, 7, 11).finished();
const Eigen::VectorXd kY = (Eigen::VectorXd(5) << 2.1, 3.8, 8.3, 13.7, 22.4).finished();

}  // namespace

TEST_CASE("an observation of half the uncertainty weighs as much as four alike", "[reduction]") {
  Eigen::VectorXd x(8), y(8);
  x << kX, 11, 11, 11;
  y << kY, 22.4, 22.4, 22.4;
  Eigen::VectorXd u = Eigen::VectorXd::Constant(5, 0.3);
  u(4) = 0.15;
  const LeastSquaresFit repeated = fit_linear(line_through(x), y);
  const LeastSquaresFit weighted =
      fit_linear_weighted(line_through(kX), kY, u, CovarianceScale::kGivenUncertainties);
  CHECK((weighted.parameters - repeated.parameters).norm() < 1e-13);
  // With given uncertainties the covariance is 0.3^2 (X'X)^-1 of the repeated set, whatever the residuals
  // are.
  const Eigen::MatrixXd expected =
      0.09 * (repeated.covariance / (repeated.residual_sd * repeated.residual_sd));
  CHECK((weighted.covariance - expected).norm() < 1e-13);
}

TEST_CASE("the scale of relative weights does not change the covariance", "[reduction]") {
  const Eigen::VectorXd u = (Eigen::VectorXd(5) << 1, 2, 1, 3, 2).finished();
  const auto fit = [&](double scale) {
    return fit_linear_weighted(line_through(kX), kY, scale * u, CovarianceScale::kResiduals);
  };
  CHECK((fit(1.0).covariance - fit(1000.0).covariance).norm() < 1e-12);
  CHECK_THAT(fit(1.0).r_squared, WithinRel(fit(1000.0).r_squared, 1e-12));
}

TEST_CASE("the standard uncertainty of a line grows away from the mean of x as the textbook says",
          "[reduction]") {
  const LeastSquaresFit fit = fit_linear(line_through(kX), kY);
  const double x_mean = kX.mean();
  const double sxx = (kX.array() - x_mean).square().sum();
  for (const double x : {x_mean, 0.0, 20.0}) {
    const double expected = fit.residual_sd * std::sqrt(1.0 / 5.0 + (x - x_mean) * (x - x_mean) / sxx);
    CHECK_THAT(fit.predict(Eigen::Vector2d(1.0, x)).standard_uncertainty, WithinRel(expected, 1e-12));
  }
}

TEST_CASE("parameters scatter as their covariance says", "[reduction]") {
  std::mt19937_64 bits(5);
  std::normal_distribution<double> normal(0.0, 0.5);
  constexpr int kTrials = 4000;
  double covered = 0.0, variance = 0.0, stated = 0.0;
  for (int i = 0; i < kTrials; ++i) {
    Eigen::VectorXd y = 1.0 + 2.0 * kX.array();
    for (double& value : y) value += normal(bits);
    const LeastSquaresFit fit = fit_linear(line_through(kX), y);
    variance += std::pow(fit.parameters(1) - 2.0, 2) / kTrials;
    stated += fit.covariance(1, 1) / kTrials;
    // 3.182 is the 95 % quantile of Student's t with 3 degrees of freedom.
    covered += std::abs(fit.parameters(1) - 2.0) < 3.182 * fit.standard_uncertainty(1) ? 1.0 : 0.0;
  }
  CHECK_THAT(covered / kTrials, WithinAbs(0.95, 0.011));  // three binomial deviations
  CHECK_THAT(stated / variance, WithinAbs(1.0, 0.12));  // three deviations of two variances, 3 dof each trial
}

TEST_CASE("a variance factor scales the covariance and leaves the fit", "[reduction]") {
  const LeastSquaresFit fit = fit_linear(line_through(kX), kY);
  const LeastSquaresFit inflated = fit.with_variance_factor(4.0);
  CHECK_THAT(inflated.standard_uncertainty(1), WithinRel(2.0 * fit.standard_uncertainty(1), 1e-14));
  CHECK(inflated.parameters == fit.parameters);
  CHECK(inflated.residual_sd == fit.residual_sd);
  CHECK_THROWS_AS(fit.with_variance_factor(0.0), std::invalid_argument);
}

TEST_CASE("a fit through as many points as parameters has no stated uncertainty", "[reduction]") {
  const LeastSquaresFit fit = fit_linear(line_through(kX.head(2)), kY.head(2));
  CHECK(fit.dof == 0);
  CHECK(std::isnan(fit.residual_sd));
  CHECK(std::isnan(fit.standard_uncertainty(0)));
  CHECK_THAT(fit.predict(Eigen::Vector2d(1.0, 1.0)).value, WithinRel(2.1, 1e-13));
}

TEST_CASE("columns that depend on each other, short data and bad values are refused", "[reduction]") {
  Eigen::MatrixXd X(5, 3);
  X << line_through(kX), (3.0 - 2.0 * kX.array()).matrix();
  CHECK_THROWS_AS(fit_linear(X, kY), std::invalid_argument);
  CHECK_THROWS_AS(fit_linear(line_through(Eigen::VectorXd::Constant(5, 3.3)), kY), std::invalid_argument);
  CHECK_THROWS_AS(fit_linear(Eigen::MatrixXd::Zero(5, 1), kY), std::invalid_argument);
  CHECK_THROWS_AS(fit_linear(line_through(kX).topRows(1), kY.head(1)), std::invalid_argument);
  CHECK_THROWS_AS(fit_linear(line_through(kX), kY.head(4)), std::invalid_argument);
  Eigen::VectorXd y = kY;
  y(2) = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(fit_linear(line_through(kX), y), std::invalid_argument);
  const Eigen::VectorXd u = (Eigen::VectorXd(5) << 1, 1, 0, 1, 1).finished();
  CHECK_THROWS_AS(fit_linear_weighted(line_through(kX), kY, u, CovarianceScale::kResiduals),
                  std::invalid_argument);
}

TEST_CASE("a polynomial in a far-off variable keeps its digits", "[reduction]") {
  std::vector<double> x, y;
  for (int i = 0; i <= 20; ++i) {
    x.push_back(1e6 + 0.15 * i);
    const double t = x.back() - 1e6 - 1.0;
    y.push_back(2.0 - t + 3.0 * t * t + 0.5 * t * t * t);
  }
  const PolynomialFit fit = fit_polynomial(x, y, 3);
  CHECK_THAT(fit.value(1e6 + 1.0).value, WithinAbs(2.0, 1e-8));  // 1e6 holds tenths to 1e-10
  CHECK_THAT(fit.slope(1e6 + 1.0).value, WithinAbs(-1.0, 1e-8));
  CHECK_THAT(fit.slope(1e6 + 2.0).value, WithinAbs(6.5, 1e-8));
  CHECK_THROWS_AS(fit_polynomial(x, y, 21), std::invalid_argument);
  CHECK_THROWS_AS(fit_polynomial(std::vector<double>(4, 2.0), std::vector<double>(4, 1.0), 1),
                  std::invalid_argument);
}

TEST_CASE("the slope of a centred and scaled line has the uncertainty of the plain one", "[reduction]") {
  const LeastSquaresFit plain = fit_linear(line_through(kX), kY);
  const PolynomialFit scaled =
      fit_polynomial(std::vector<double>(kX.begin(), kX.end()), std::vector<double>(kY.begin(), kY.end()), 1);
  CHECK_THAT(scaled.slope(3.0).value, WithinRel(plain.parameters(1), 1e-13));
  CHECK_THAT(scaled.slope(3.0).standard_uncertainty, WithinRel(plain.standard_uncertainty(1), 1e-13));
  CHECK_THAT(scaled.value(3.0).standard_uncertainty,
             WithinRel(plain.predict(Eigen::Vector2d(1.0, 3.0)).standard_uncertainty, 1e-13));
}

TEST_CASE("the vertex of an exact parabola is found and placed", "[reduction]") {
  std::vector<double> x, y;
  for (int i = 0; i < 12; ++i) {
    x.push_back(0.1 * i);
    y.push_back(1.4 - 3.0 * std::pow(x.back() - 0.7, 2));
  }
  const Vertex top = fit_local_quadratic(x, y, 0.3, 1.05).vertex;
  CHECK(fit_local_quadratic(x, y, 0.25, 1.05).points == 8);
  CHECK_THAT(top.x.value, WithinAbs(0.7, 1e-12));
  CHECK_THAT(top.y.value, WithinAbs(1.4, 1e-12));
  CHECK_THAT(top.second_derivative, WithinAbs(-6.0, 1e-10));
  CHECK(top.is_maximum);
  CHECK(top.inside);
  const Vertex outside = fit_local_quadratic(x, y, -1.0, 0.55).vertex;
  CHECK_THAT(outside.x.value, WithinAbs(0.7, 1e-11));
  CHECK_FALSE(outside.inside);
  CHECK_THROWS_AS(fit_local_quadratic(x, y, 0.05, 0.35), std::invalid_argument);
}

TEST_CASE("a vertex scatters as its standard uncertainty says", "[reduction]") {
  std::mt19937_64 bits(11);
  std::normal_distribution<double> normal(0.0, 0.02);
  constexpr int kTrials = 4000;
  double variance_x = 0.0, variance_y = 0.0, stated_x = 0.0, stated_y = 0.0;
  for (int i = 0; i < kTrials; ++i) {
    std::vector<double> x, y;
    for (int k = 0; k <= 40; ++k) {
      x.push_back(0.025 * k);
      y.push_back(1.4 - 2.0 * std::pow(x.back() - 0.8, 2) + normal(bits));  // vertex well off the middle
    }
    const Vertex vertex = fit_local_quadratic(x, y, 0.0, 1.0).vertex;
    variance_x += std::pow(vertex.x.value - 0.8, 2) / kTrials;
    variance_y += std::pow(vertex.y.value - 1.4, 2) / kTrials;
    stated_x += std::pow(vertex.x.standard_uncertainty, 2) / kTrials;
    stated_y += std::pow(vertex.y.standard_uncertainty, 2) / kTrials;
  }
  // A variance of 4,000 trials is good to 2.2 %; three of those, and 3 % for the second order of the delta
  // method.
  CHECK_THAT(stated_x / variance_x, WithinAbs(1.0, 0.10));
  CHECK_THAT(stated_y / variance_y, WithinAbs(1.0, 0.10));
}

TEST_CASE("a parabola without curvature has no vertex", "[reduction]") {
  PolynomialFit flat = fit_polynomial(std::vector<double>{0, 1, 2, 3}, std::vector<double>{0, 1, 4, 9}, 2);
  flat.fit.parameters(2) = 0.0;
  CHECK(std::isnan(vertex_of(flat).x.value));
  CHECK_THROWS_AS(vertex_of(fit_polynomial(std::vector<double>{0, 1, 2}, std::vector<double>{0, 1, 4}, 1)),
                  std::invalid_argument);
}
