#pragma once
#include "render/sound/wave.hpp"

namespace stallwright::sound {

/// The thud of a break: things in the cabin fall back. Decays within half a second.
struct ThudVoice {
  Turns drum;
  Noise noise;
  LowPass dull;
  double since_s = 1e9;

  void strike() { since_s = 0.0; }
  double next(double rate);
};

/// Two dry ticks when a record begins, so that the eyes can stay outside.
struct ClickVoice {
  double since_s = 1e9;

  void strike() { since_s = 0.0; }
  double next(double rate);
};

}  // namespace stallwright::sound
