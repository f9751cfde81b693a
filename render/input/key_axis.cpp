#include "render/input/key_axis.hpp"

#include <algorithm>
#include <cmath>

namespace stallwright::input {
namespace {

/// Rate at this holding time: straight from slow to fast.
double rate_ps(double held_s, double slow_ps, double fast_ps, double grow_s) {
  return slow_ps + (fast_ps - slow_ps) * std::clamp(held_s / grow_s, 0.0, 1.0);
}

}  // namespace

KeyAxis advance(KeyAxis axis, int direction, double dt_s, const KeyAxisFeel& feel) {
  if (direction != axis.direction) axis.held_s = 0.0;
  axis.direction = direction;
  const bool against = axis.deflection * direction < 0.0;
  if (direction == 0 || against) axis.deflection *= std::exp(-dt_s / feel.spring_s);
  if (std::abs(axis.deflection) < 1e-4) axis.deflection = 0.0;
  if (direction == 0) return axis;
  // The middle of the step, so that coarse and fine frames reach the same place.
  const double rate = rate_ps(axis.held_s + 0.5 * dt_s, feel.slow_ps, feel.fast_ps, feel.grow_s);
  axis.deflection = std::clamp(axis.deflection + direction * rate * dt_s, -1.0, 1.0);
  axis.held_s += dt_s;
  return axis;
}

KeyLever advance(KeyLever lever, int direction, double dt_s, const KeyLeverFeel& feel) {
  const bool pressed = direction != 0 && direction != lever.direction;
  if (direction != lever.direction) lever.held_s = 0.0;
  lever.direction = direction;
  if (direction == 0) return lever;
  // The part of this step that lies after the pause in which a press is only a step.
  const double runs_s = std::clamp(lever.held_s + dt_s - kKeyRuns_s, 0.0, dt_s);
  const double middle_s = std::max(lever.held_s + dt_s - kKeyRuns_s, 0.0) - 0.5 * runs_s;
  const double moved =
      (pressed ? feel.step : 0.0) + rate_ps(middle_s, feel.slow_ps, feel.fast_ps, feel.grow_s) * runs_s;
  lever.value = std::clamp(lever.value + direction * moved, feel.low, feel.high);
  lever.held_s += dt_s;
  return lever;
}

}  // namespace stallwright::input
