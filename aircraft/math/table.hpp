#pragma once
#include <cstddef>
#include <stdexcept>
#include <string>
#include <vector>

#include "aircraft/math/elementary.hpp"

namespace stallwright::math {

/// Checks once, when a table is read, that its axis has at least one point, that the points rise strictly,
/// and that there is one value for each. Throws std::invalid_argument that names the axis.
inline void check_table(const std::string& name, const std::vector<double>& x, const std::vector<double>& y) {
  if (x.empty()) throw std::invalid_argument(name + ": expected at least one point, found none");
  if (x.size() != y.size())
    throw std::invalid_argument(name + ": expected " + std::to_string(x.size()) +
                                " values, one a point, found " + std::to_string(y.size()));
  for (std::size_t i = 0; i < x.size(); ++i)
    if (!(x[i] - x[i] == 0.0) || (i > 0 && !(x[i] > x[i - 1])))
      throw std::invalid_argument(name + ": expected finite points that rise strictly, found " +
                                  std::to_string(x[i]) + " at point " + std::to_string(i + 1));
}

/// Value of a table between its points by straight lines; past either end the end value is held, exactly.
///   y(v) = y_i + (y_{i+1} - y_i) (v - x_i) / (x_{i+1} - x_i),   x_i <= v <= x_{i+1}
///   x  axis, n points that rise strictly (see check_table); y  n values;  v  the place asked for, unit of x
/// Every interval is visited and one is selected, so that lanes with different v need no branch; meant for
/// the short tables of an aeroplane type (tens of points). A NaN comes back as a NaN.
template <class T>
constexpr T interpolate(const std::vector<double>& x, const std::vector<double>& y, const T& v) {
  const std::size_t last = x.size() - 1;
  const T held = clamp(v, T(x[0]), T(x[last]));
  T x0(x[0]), y0(y[0]), dx(1.0), dy(0.0);
  for (std::size_t i = 0; i < last; ++i) {
    const auto reached = held >= T(x[i]);
    x0 = where(reached, T(x[i]), x0);
    y0 = where(reached, T(y[i]), y0);
    dx = where(reached, T(x[i + 1] - x[i]), dx);
    dy = where(reached, T(y[i + 1] - y[i]), dy);
  }
  const T between = y0 + dy * ((held - x0) / dx);
  const T value = where(held >= T(x[last]), T(y[last]), between);
  return where(v == v, value, v);
}

}  // namespace stallwright::math
