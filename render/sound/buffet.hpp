#pragma once
#include "render/sound/wave.hpp"

namespace stallwright::sound {

/// Separated flow on the tail and skin: a rumble, and above it the rattle of what is loose.
struct BuffetVoice {
  Noise noise;
  LowPass high, low, shake, rattle;
  double strength = 0.0;  ///< as heard, lagged

  /// Next sample.
  ///   buffet_g  rms at the seat; below 0.01 nothing, from 0.4 no louder
  double next(double buffet_g, double rate);
};

}  // namespace stallwright::sound
