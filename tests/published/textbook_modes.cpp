#include "tests/published/textbook_modes.hpp"

#include <algorithm>
#include <cmath>

namespace stallwright::published {
namespace {

Square4 product(const Square4& a, const Square4& b) {
  Square4 c{};
  for (std::size_t i = 0; i < 4; ++i)
    for (std::size_t j = 0; j < 4; ++j)
      for (std::size_t k = 0; k < 4; ++k) c[i][j] += a[i][k] * b[k][j];
  return c;
}

double trace(const Square4& a) { return a[0][0] + a[1][1] + a[2][2] + a[3][3]; }

/// c1 to c4 of s^4 + c1 s^3 + c2 s^2 + c3 s + c4: M1 = 1, ck = -tr(A Mk)/k, Mk+1 = A Mk + ck 1.
std::array<double, 4> characteristic_polynomial(const Square4& a) {
  Square4 m{};
  for (std::size_t i = 0; i < 4; ++i) m[i][i] = 1.0;
  std::array<double, 4> c{};
  for (std::size_t k = 0; k < 4; ++k) {
    m = product(a, m);
    c[k] = -trace(m) / static_cast<double>(k + 1);
    for (std::size_t i = 0; i < 4; ++i) m[i][i] += c[k];
  }
  return c;
}

}  // namespace

/// Dimensional derivatives as the book defines them [NELSON-1998].
Square4 along_matrix(const Derivatives& d, const LevelPoint& at) {
  const double v = at.speed_ftps, g = at.gravity_ftps2, mass = d["W"] / g;
  const double force = 0.5 * at.density_slugpft3 * v * v * d["S"], moment = force * d["c"] / d["Iyy"];
  const double chords = d["c"] / (2.0 * v), lag = 1.0 + d["CLadot"] * chords * force / (mass * v);
  const double per_speed = force / (mass * v);
  const double xu = (at.thrust_power - 2.0) * at.drag * per_speed,
               xw = (at.lift - at.drag_by_alpha) * per_speed;
  const double zu = -2.0 * at.lift * per_speed / lag, zw = -(d["CLa"] + at.drag) * per_speed / lag;
  const double zq = (v - d["CLq"] * chords * force / mass) / lag;
  const double mw = d["Cma"] * moment / v, mwdot = d["Cmadot"] * chords * moment / v,
               mq = d["Cmq"] * chords * moment;
  return {{{xu, xw, 0.0, -g},
           {zu, zw, zq, 0.0},
           {mwdot * zu, mw + mwdot * zw, mq + mwdot * zq, 0.0},
           {0.0, 0.0, 1.0, 0.0}}};
}

Square4 across_matrix(const Derivatives& d, const LevelPoint& at) {
  const double v = at.speed_ftps, g = at.gravity_ftps2, mass = d["W"] / g;
  const double force = 0.5 * at.density_slugpft3 * v * v * d["S"], spans = d["b"] / (2.0 * v);
  const double y = force / mass, l = force * d["b"] / d["Ixx"], n = force * d["b"] / d["Izz"];
  return {{{d["CYb"] * y / v, d["CYp"] * spans * y, d["CYr"] * spans * y - v, g},
           {d["Clb"] * l / v, d["Clp"] * spans * l, d["Clr"] * spans * l, 0.0},
           {d["Cnb"] * n / v, d["Cnp"] * spans * n, d["Cnr"] * spans * n, 0.0},
           {0.0, 1.0, 0.0, 0.0}}};
}

Roots4 characteristic_roots(const Square4& a) {
  const std::array<double, 4> c = characteristic_polynomial(a);
  const std::complex<double> seed(0.4, 0.9);
  Roots4 z{1.0, seed, seed * seed, seed * seed * seed};
  for (int round = 0; round < 500; ++round)
    for (std::size_t i = 0; i < 4; ++i) {
      const std::complex<double> at = (((z[i] + c[0]) * z[i] + c[1]) * z[i] + c[2]) * z[i] + c[3];
      std::complex<double> others = 1.0;
      for (std::size_t k = 0; k < 4; ++k)
        if (k != i) others *= z[i] - z[k];
      z[i] -= at / others;
    }
  return z;
}

double apart(const std::complex<double>& value, const Roots4& roots) {
  double nearest = std::abs(value - roots[0]);
  for (const std::complex<double>& root : roots) nearest = std::min(nearest, std::abs(value - root));
  return nearest / std::abs(value);
}

}  // namespace stallwright::published
