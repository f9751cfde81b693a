#pragma once

/// Conversions for the edges, exact by definition: international knot, foot.
namespace stallwright {
inline constexpr double kKnot = 1852.0 / 3600.0;         ///< m/s per kt
inline constexpr double kFoot = 0.3048;                  ///< m per ft
inline constexpr double kFootPerMinute = 0.3048 / 60.0;  ///< m/s per ft/min
}  // namespace stallwright
