#pragma once
#include <span>
#include <vector>

namespace stallwright {

/// A linear map from numbers to pixels, x = pixel_begin + (v - low)/(high - low) (pixel_end - pixel_begin).
struct Scale {
  double low = 0.0, high = 1.0;
  double pixel_begin = 0.0, pixel_end = 1.0;

  double operator()(double value) const {
    return pixel_begin + (value - low) / (high - low) * (pixel_end - pixel_begin);
  }
  bool holds(double value) const { return value >= low && value <= high; }
};

/// Round numbers (1, 2 or 5 times a power of ten) for an axis.
struct Ticks {
  std::vector<double> values;
  int decimals = 0;  ///< that tell neighbours apart
};

/// All multiples of the round step inside [low, high]; the step is the smallest that gives at most `most` of
/// them. Not finite or empty range: none.
Ticks nice_ticks(double low, double high, int most);

/// Least and greatest of what is drawn, widened to something that can be drawn.
class Extent {
 public:
  void add(double value);  ///< passes over what is not finite
  void add(std::span<const double> values);
  bool empty() const { return !(low_ <= high_); }
  double low() const { return low_; }
  double high() const { return high_; }
  /// A margin on both sides, as share of the width; an extent of no width becomes `least_width` wide.
  Extent widened(double share, double least_width) const;

 private:
  double low_ = 1e300, high_ = -1e300;
};

}  // namespace stallwright
