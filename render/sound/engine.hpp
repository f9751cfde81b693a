#pragma once
#include "render/sound/wave.hpp"

namespace stallwright::sound {

/// Propeller and exhaust of a piston engine: harmonics of the blade passing and of the firing (two a turn, as four
/// cylinders do), falling off less steeply with power; at tick-over the cylinders are heard one by one.
struct EngineVoice {
  Turns blade, firing, cycle;
  Noise noise;
  LowPass wander, exhaust;
  double rpm = 0.0, power = 0.0;  ///< as heard, lagged
  bool started = false;

  /// Next sample, about -1 .. 1 at full power.
  ///   rpm_now  0: silent;  blades  of the propeller;  power_now  share of full, 0 .. 1
  double next(double rpm_now, int blades, double power_now, double rate);
};

/// How often blades pass, Hz.
inline double blade_passing_hz(double rpm, int blades) { return rpm / 60.0 * blades; }

}  // namespace stallwright::sound
