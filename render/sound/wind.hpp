#pragma once
#include "render/sound/wave.hpp"

namespace stallwright::sound {

/// Air along the cabin: filtered noise whose amplitude goes with dynamic pressure (at sea level's density) and whose
/// colour brightens with speed; rougher with slip.
struct WindVoice {
  Noise noise;
  LowPass first, second, floor, flutter;
  double speed_mps = 0.0, slip = 0.0;  ///< as heard, lagged
  bool started = false;

  /// Next sample.
  ///   airspeed_mps  true, 0 .. about 90, louder no more above;  slip_balls  either side
  double next(double airspeed_mps, double slip_balls, double rate);
};

}  // namespace stallwright::sound
