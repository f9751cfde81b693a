#pragma once
#include <array>
#include <complex>

#include "tests/published/derivative_model.hpp"

/// The way of textbooks from derivatives to roots, without any of the code under test: dimensional derivatives, the
/// characteristic polynomial by Faddeev and LeVerrier, its roots by Durand and Kerner. Feet, slugs, seconds.
namespace stallwright::published {

using Square4 = std::array<std::array<double, 4>, 4>;
using Roots4 = std::array<std::complex<double>, 4>;

/// Steady level flight that derivatives hold about, stability axes.
struct LevelPoint {
  double speed_ftps, density_slugpft3, gravity_ftps2;
  double lift, drag, drag_by_alpha;  ///< coefficients; the last per rad
  double thrust_power;               ///< thrust goes with speed to this power, and balances drag
};

/// Matrix of u, w, q, theta.
Square4 along_matrix(const Derivatives& d, const LevelPoint& at);
/// Matrix of v, p, r, phi.
Square4 across_matrix(const Derivatives& d, const LevelPoint& at);
Roots4 characteristic_roots(const Square4& a);
/// Largest distance of a value from the nearest root, over its size.
double apart(const std::complex<double>& value, const Roots4& roots);

}  // namespace stallwright::published
