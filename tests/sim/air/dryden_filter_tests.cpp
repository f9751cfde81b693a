// The exact step of the transverse filter against quadrature and against its own promise of a constant
// variance.
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <utility>

#include "sim/air/transverse_filter.hpp"

using namespace stallwright;

namespace {

using Matrix = std::array<std::array<double, 3>, 3>;

Matrix symmetric(const Lower3<double>& q) {
  return {{{q.a11, q.a21, q.a31}, {q.a21, q.a22, q.a32}, {q.a31, q.a32, q.a33}}};
}
Matrix transition(const TransverseStep<double>& s) {
  return {{{s.phi_x, 0, 0}, {s.phi_21, s.phi_x, 0}, {s.phi_31, s.phi_32, s.phi_y}}};
}
Matrix product_with_transpose(const Matrix& a, const Matrix& b) {  // a b^T
  Matrix c{};
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j)
      for (int k = 0; k < 3; ++k) c[i][j] += a[i][k] * b[j][k];
  return c;
}
Matrix noise_covariance(const TransverseStep<double>& s) {
  const auto& l = s.noise;
  const Matrix root{{{l.a11, 0, 0}, {l.a21, l.a22, 0}, {l.a31, l.a32, l.a33}}};
  return product_with_transpose(root, root);
}

/// Impulse response at t, by fourth-order Runge-Kutta on the differential equations as printed.
std::array<double, 3> impulse_response(double t, double a) {
  std::array<double, 3> x{1.0, 0.0, 0.0};
  const int steps = 200;
  const double h = t / steps;
  const auto rate = [a](const std::array<double, 3>& s) -> std::array<double, 3> {
    return {-s[0], -s[1] + s[0], a * (std::sqrt(3.0) * s[0] + (1.0 - std::sqrt(3.0)) * s[1] - s[2])};
  };
  const auto moved = [](std::array<double, 3> s, const std::array<double, 3>& k, double by) {
    for (int i = 0; i < 3; ++i) s[i] += k[i] * by;
    return s;
  };
  for (int n = 0; n < steps; ++n) {
    const auto k1 = rate(x), k2 = rate(moved(x, k1, h / 2)), k3 = rate(moved(x, k2, h / 2)),
               k4 = rate(moved(x, k3, h));
    for (int i = 0; i < 3; ++i) x[i] += h / 6 * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
  }
  return x;
}

}  // namespace

TEST_CASE("the step's transition is that of the differential equations", "[air][closed form]") {
  for (const auto& [h, a] :
       {std::pair{0.02, 11.0}, std::pair{0.08, 11.0}, std::pair{0.5, 1.0}, std::pair{0.8, 0.3}}) {
    CAPTURE(h, a);
    const auto s = transverse_step(h, a);
    const auto x = impulse_response(h, a);
    CHECK(s.phi_x == Approx(x[0]).epsilon(1e-9));
    CHECK(s.phi_21 == Approx(x[1]).epsilon(1e-9));
    CHECK(s.phi_31 == Approx(x[2]).epsilon(1e-9));
    CHECK(s.phi_y == Approx(std::exp(-a * h)).epsilon(1e-12));
  }
}

TEST_CASE("the step's noise is the white noise that came in through the filter", "[air][closed form]") {
  // Q = int_0^h g g^T dt by Simpson's rule, g the impulse response: nothing of P - Phi P Phi^T is used here.
  for (const auto& [h, a] :
       {std::pair{0.02, 11.0}, std::pair{0.08, 11.0}, std::pair{0.5, 1.0}, std::pair{0.8, 0.3}}) {
    CAPTURE(h, a);
    Matrix expected{};
    const int intervals = 200;
    for (int n = 0; n <= intervals; ++n) {
      const auto g = impulse_response(h * n / intervals, a);
      const double weight = h / intervals / 3.0 * (n == 0 || n == intervals ? 1 : n % 2 ? 4 : 2);
      for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j) expected[i][j] += weight * g[i] * g[j];
    }
    const auto q = noise_covariance(transverse_step(h, a));
    for (int i = 0; i < 3; ++i)
      for (int j = 0; j < 3; ++j) CHECK(q[i][j] == Approx(expected[i][j]).epsilon(1e-7).margin(1e-14));
  }
}

TEST_CASE("a step of any length leaves the stationary covariance as it was", "[air][invariant]") {
  for (const double a : {0.3, 0.999999, 1.0, 1.000001, 5.0, 11.0, 50.0})
    for (const double h : {0.0, 1e-9, 1e-6, 1e-4, 0.003, 0.0125, 0.019}) {
      CAPTURE(a, h);
      const auto s = transverse_step(h, a);
      const auto phi = transition(s), p = symmetric(stationary_covariance(a)), q = noise_covariance(s);
      const auto kept = product_with_transpose(product_with_transpose(phi, p), phi);
      for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j) CHECK(kept[i][j] + q[i][j] == Approx(p[i][j]).margin(1e-14).epsilon(0));
    }
}

TEST_CASE("the gust has variance one exactly", "[air][closed form]") {
  const auto p = stationary_covariance(7.0);
  const double c1 = kSqrt3, c2 = 1.0 - kSqrt3;
  CHECK(c1 * c1 * p.a11 + 2.0 * c1 * c2 * p.a21 + c2 * c2 * p.a22 == Approx(1.0).epsilon(1e-15));
}

TEST_CASE("at rest the filter stands still", "[air][limits]") {
  const TransverseState<double> x{0.3, -0.2, 0.1};
  CHECK(advance(transverse_step(0.0, 11.0), x, {3.0, -3.0, 3.0}) == x);
}
