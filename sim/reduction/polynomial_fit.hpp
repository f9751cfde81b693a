#pragma once

#include <cstddef>
#include <span>

#include "sim/reduction/least_squares.hpp"

namespace stallwright {

/// Polynomial in the centred and scaled variable  t = (x - centre)/scale,  y = sum_k b_k t^k.
/// centre is the middle of the data's range and scale half of it, so |t| <= 1 on the data. Outside it the
/// polynomial goes on, and its uncertainty grows as the covariance says.
struct PolynomialFit {
  LeastSquaresFit fit;
  double centre;  ///< unit of x
  double scale;   ///< unit of x

  Estimate value(double x) const;
  Estimate slope(double x) const;  ///< dy/dx
};

/// Degree >= 0. Throws std::invalid_argument for fewer than degree + 1 points or x without spread.
PolynomialFit fit_polynomial(std::span<const double> x, std::span<const double> y, int degree);

/// Vertex of y = b0 + b1 t + b2 t^2, t as above:
///   t* = -b1/(2 b2),  y* = b0 - b1^2/(4 b2)
///   u^2(t*) = g C g',  g = (0, -1/(2 b2), b1/(2 b2^2));  u^2(y*) = h C h',  h = (1, t*, t*^2)   (C full
///   covariance)
/// The delta method is good while u(b2) is small against |b2|: `curvature_ratio` = |b2|/u(b2) should exceed
/// about 4 (our judgement). Without curvature (b2 = 0) all values are NaN.
struct Vertex {
  Estimate x;                ///< unit of x
  Estimate y;                ///< unit of y
  double second_derivative;  ///< d2y/dx2
  double curvature_ratio;    ///< |b2|/u(b2), dimensionless
  bool is_maximum;
  bool inside;  ///< x lies within the range of the fitted points
};

struct LocalQuadratic {
  PolynomialFit polynomial;
  Vertex vertex;
  std::size_t points;  ///< used in the fit
};

/// Quadratic through the points with lower <= x <= upper, equal weights.
/// Throws std::invalid_argument when fewer than four points, or fewer than three different x, are left.
LocalQuadratic fit_local_quadratic(std::span<const double> x, std::span<const double> y, double lower,
                                   double upper);

/// Vertex of a fitted polynomial of degree two; std::invalid_argument for another degree.
Vertex vertex_of(const PolynomialFit& quadratic);

}  // namespace stallwright
