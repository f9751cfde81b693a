#pragma once
#include <cstddef>
#include <span>
#include <vector>

namespace stallwright {

/// Which samples of a curve to draw so that it looks the same at `bins` pixels of width: from each pixel's
/// share of [begin, end] the first, the lowest, the highest and the last sample, in order of time. No extreme
/// is lost, however short; a stall of three samples in an hour is still seen.
///   x  rising;  y  as long as x;  a NaN in y is kept once per pixel, so that a gap stays a gap.
/// Fewer samples than pixels: all of them. Samples outside [begin, end] are left out.
std::vector<std::size_t> samples_to_draw(std::span<const double> x, std::span<const double> y, double begin,
                                         double end, std::size_t bins);

}  // namespace stallwright
