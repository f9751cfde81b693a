#include "render/view/pixel_columns.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stallwright::view {
namespace {

/// The samples of one column so far.
struct Column {
  std::size_t low = 0, high = 0;
  bool any = false, gap = false;
};

void put(const Column& column, std::span<const double> x, std::span<const double> y,
         std::vector<CurvePoint>& out) {
  if (column.any) {
    const std::size_t first = std::min(column.low, column.high), second = std::max(column.low, column.high);
    out.push_back({x[first], y[first]});
    if (second != first) out.push_back({x[second], y[second]});
  }
  if (column.gap) out.push_back({out.empty() ? 0.0 : out.back().x, std::numeric_limits<double>::quiet_NaN()});
}

void take(Column& column, std::size_t i, std::span<const double> y) {
  if (std::isnan(y[i])) {
    column.gap = true;
    return;
  }
  if (!column.any || y[i] < y[column.low]) column.low = i;
  if (!column.any || y[i] > y[column.high]) column.high = i;
  column.any = true;
}

}  // namespace

void pixel_columns(std::span<const double> x, std::span<const double> y, double begin, double end,
                   std::size_t columns, std::vector<CurvePoint>& out) {
  out.clear();
  const std::size_t n = std::min(x.size(), y.size());
  if (n == 0 || columns == 0 || !(end > begin)) return;
  const auto stop = x.begin() + static_cast<std::ptrdiff_t>(n);
  const auto from = static_cast<std::size_t>(std::lower_bound(x.begin(), stop, begin) - x.begin());
  const auto to = static_cast<std::size_t>(std::upper_bound(x.begin(), stop, end) - x.begin());
  if (from > 0) out.push_back({x[from - 1], y[from - 1]});
  Column column;
  std::size_t now = 0;
  for (std::size_t i = from; i < to; ++i) {
    const double place = (x[i] - begin) / (end - begin) * static_cast<double>(columns);
    const std::size_t in = std::min(columns - 1, static_cast<std::size_t>(std::max(place, 0.0)));
    if (in != now) {
      put(column, x, y, out);
      column = {};
      now = in;
    }
    take(column, i, y);
  }
  put(column, x, y, out);
  if (to < n) out.push_back({x[to], y[to]});
}

}  // namespace stallwright::view
