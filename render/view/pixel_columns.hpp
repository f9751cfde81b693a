#pragma once
#include <cstddef>
#include <span>
#include <vector>

namespace stallwright::view {

/// A point of a curve to draw.
struct CurvePoint {
  double x = 0.0, y = 0.0;
};

/// A curve cut down to what pixels can show: of the samples in each of `columns` equal shares of [begin, end] the least and
/// the greatest, in order of time; a share with one sample gives that one. A NaN is kept once as a gap. The sample before and
/// the one after the range are kept too, so that the curve runs on to the edges.
///   x  rising;  y  as long as x;  out  replaced; its memory is used again
void pixel_columns(std::span<const double> x, std::span<const double> y, double begin, double end,
                   std::size_t columns, std::vector<CurvePoint>& out);

}  // namespace stallwright::view
