#pragma once
#include <vector>

#include "sim/sensing/readings.hpp"

namespace stallwright {

/// A unit that has been taught: it sounds a tone where the probe ratio reaches the warning set point. Its figures are our
/// own choice of an ordinary one; whoever verifies set points with another unit writes its own in.
struct WarningUnit {
  /// A warning set point and the flaps it was taught with. The unit knows where the flaps are and takes the nearest.
  struct SetPoint {
    double flap_deg = 0.0, ratio = 0.0;
  };
  std::vector<SetPoint> warnings;
  double smoothing_s = 0.25;  ///< first-order lag on the ratio, against buffet and gusts
  double delay_s = 0.15;  ///< the smoothed ratio stands above the set point this long before the tone starts
  double hysteresis_ratio = 0.03;  ///< and falls this far below it before the tone ends, about 0.7 kt
};

/// What the unit remembers between samples.
struct WarningUnitState {
  double smoothed = 0.0, above_s = 0.0;
  bool started = false, tone = false;
  friend bool operator==(const WarningUnitState&, const WarningUnitState&) = default;
};

/// One sample later. Pure.
///   dt_s  time since the sample before
WarningUnitState advance(const WarningUnit& unit, const WarningUnitState& state, const Readings<double>& seen,
                         double dt_s);

}  // namespace stallwright
