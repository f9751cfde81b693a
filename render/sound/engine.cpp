#include "render/sound/engine.hpp"

namespace stallwright::sound {
namespace {

constexpr int kHarmonics = 12;
constexpr double kIdle_rpm = 1100.0;  // below it a cylinder is heard by itself (from memory)

/// Sum of sin(k theta) / k^slope, k = 1 .. 12, by the recurrence sin k = 2 cos 1 sin(k-1) - sin(k-2).
///   falls  weights from one to the next: ((k-1)/k)^slope is taken as 1 - slope/k, floored at 0.15
double stack(double turns, double slope) {
  const double theta = 2.0 * std::numbers::pi * turns;
  const double twice_cos = 2.0 * std::cos(theta);
  double before = 0.0, now = std::sin(theta), weight = 1.0, sum = now;
  for (int k = 2; k <= kHarmonics; ++k) {
    const double next = twice_cos * now - before;
    before = now;
    now = next;
    weight *= std::max(1.0 - slope / k, 0.15);
    sum += weight * now;
  }
  return sum;
}

}  // namespace

double EngineVoice::next(double rpm_now, int blades, double power_now, double rate) {
  const double aim = std::clamp(power_now, 0.0, 1.0);
  if (!started) {
    rpm = rpm_now;
    power = aim;
    started = true;
  }
  const double share = 1.0 / (0.06 * rate);  // 60 ms; the exact form differs by nothing that is heard
  rpm += (std::max(rpm_now, 0.0) - rpm) * share;
  power += (aim - power) * share;
  const double idling = std::clamp(2.0 - rpm / kIdle_rpm, 0.0, 1.0);
  const double wandering = 60.0 * wander.next(noise.next(), 6.0 * 6.3 / rate);
  const double heard_rpm = rpm * (1.0 + (0.004 + 0.02 * idling) * wandering * 0.3);
  const double slope = 2.2 - 1.1 * power;
  const double blades_sum = stack(blade.next(blade_passing_hz(heard_rpm, blades), rate), slope);
  const double fires = firing.next(heard_rpm / 30.0, rate);
  const double firing_sum = stack(fires, slope + 0.3);
  // One cylinder of the four is a little weaker: a beat of half the shaft's turns, plain at tick-over only.
  const double uneven = 1.0 + (0.06 + 0.3 * idling) * sine(cycle.next(heard_rpm / 120.0, rate));
  const double puff = 0.5 + 0.5 * sine(fires);
  const double hiss = exhaust.next(noise.next(), 900.0 * 6.3 / rate) * puff * puff * (0.2 + 0.8 * power);
  const double running = std::clamp(rpm / 500.0, 0.0, 1.0);
  const double level = running * (0.10 + 0.42 * power + 0.10 * std::clamp(rpm / 2500.0, 0.0, 1.2));
  return level * uneven * (0.25 * blades_sum + 0.19 * firing_sum + 0.8 * hiss);
}

}  // namespace stallwright::sound
