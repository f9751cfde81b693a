#pragma once
#include <algorithm>
#include <cstddef>
#include <vector>

namespace stallwright::math {

/// What interpolate (table.hpp) gives, to the last bit, for one number at a time: the interval is found by bisection,
/// which pays where a table is long and no lanes look up with it.
///   x  axis, n points that rise strictly (see check_table); y  n values;  at  the place asked for, unit of x
inline double interpolate_bisected(const std::vector<double>& x, const std::vector<double>& y, double at) {
  const double held = std::clamp(at, x.front(), x.back());
  if (!(held < x.back())) return held == held ? y.back() : at;
  const auto i = static_cast<std::size_t>(std::upper_bound(x.begin() + 1, x.end(), held) - x.begin()) - 1;
  return y[i] + (y[i + 1] - y[i]) * ((held - x[i]) / (x[i + 1] - x[i]));
}

}  // namespace stallwright::math
