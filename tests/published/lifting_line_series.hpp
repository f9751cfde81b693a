#pragma once

namespace stallwright::published {

/// A straight-tapered wing, unswept and flat: chords and span in any unit of length, twist linear from root to tip.
struct TaperedWing {
  double root_chord, tip_chord, span, section_slope_per_rad, washout_rad;
};

/// What Prandtl's lifting line gives for it by Glauert's Fourier series: slope, damping in roll and yaw due to roll (by
/// pb/2V, at a lift coefficient), per rad.
struct SeriesDerivatives {
  double lift_slope, roll_by_roll, yaw_by_roll;
};
SeriesDerivatives lifting_line_series(const TaperedWing& wing, double lift_coefficient);

}  // namespace stallwright::published
