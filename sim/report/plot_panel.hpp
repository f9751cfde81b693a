#pragma once
#include <span>
#include <string_view>
#include <vector>

#include "sim/report/scale.hpp"
#include "sim/report/svg.hpp"
#include "sim/report/time_history.hpp"

namespace stallwright {

/// One plot over time in a picture: its place, its scales, and what can be drawn in it. Values outside the
/// scales are cut off at the frame.
class PlotPanel {
 public:
  /// The place of the plot area within the picture; `begin_s` to `end_s` runs over its width, `values` over
  /// its height.
  PlotPanel(Svg& svg, const Box& area, double begin_s, double end_s, const Extent& values);

  /// Grey from one time to another, with lines at both ends.
  void shade(double begin_s, double end_s);
  /// Name and unit above the plot, value axis with grid; with `time_axis`, numbers below it.
  void axes(std::string_view name, bool time_axis);
  /// A column over time, thinned so that no extreme is lost.
  void curve(std::span<const double> t_s, std::span<const double> values, const Stroke& stroke);
  /// A level line across a span of time.
  void level(double value, double begin_s, double end_s, const Stroke& stroke);
  /// Two dash-dot lines and a light fill between. A limit that is NaN is not drawn.
  void band(double low, double high, double begin_s, double end_s);
  void mark(Mark mark, double t_s, double value, double radius, std::string_view fill);
  void frame();

  double x(double t_s) const { return x_(t_s); }
  double y(double value) const { return y_(value); }
  const Box& area() const { return area_; }

 private:
  Svg& svg_;
  Box area_;
  Scale x_, y_;
};

/// Extent of a column within a span of time.
Extent extent_between(std::span<const double> t_s, std::span<const double> values, double begin_s,
                      double end_s);

/// The value at a time, the nearest sample; NaN when there is none.
double value_at(std::span<const double> t_s, std::span<const double> values, double at_s);

}  // namespace stallwright
