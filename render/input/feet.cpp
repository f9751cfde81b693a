#include "render/input/feet.hpp"

#include <algorithm>
#include <cmath>

namespace stallwright::input {
namespace {

// Tuned on the Marram in the tests of flying by keys: the ball is back within a few seconds and does not swing.
constexpr double kRemembering_ps = 1.2, kPressing = 0.6;  // pedal per g

Feet towards(Feet feet, double aim, double dt_s) {
  const double most = kFeetRate_ps * dt_s;
  feet.pedal_right += std::clamp(aim - feet.pedal_right, -most, most);
  return feet;
}

}  // namespace

Feet advance(Feet feet, double slip_g, double dt_s) {
  const double slip = std::isfinite(slip_g) ? std::clamp(slip_g, -0.3, 0.3) : 0.0;
  feet.remembered = std::clamp(feet.remembered + kRemembering_ps * slip * dt_s, -kFeetReach, kFeetReach);
  return towards(feet, std::clamp(feet.remembered + kPressing * slip, -kFeetReach, kFeetReach), dt_s);
}

Feet released(Feet feet, double dt_s) {
  feet.remembered = 0.0;
  return towards(feet, 0.0, dt_s);
}

}  // namespace stallwright::input
