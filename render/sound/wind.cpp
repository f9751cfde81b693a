#include "render/sound/wind.hpp"

namespace stallwright::sound {
namespace {

constexpr double kReference_mps = 60.0;  // a fast cruise
constexpr double kGreatest_mps = 90.0;

}  // namespace

double WindVoice::next(double airspeed_mps, double slip_balls, double rate) {
  const double speed_now = std::clamp(airspeed_mps, 0.0, kGreatest_mps);
  const double slip_now = std::min(std::abs(slip_balls), 2.0);
  if (!started) {
    speed_mps = speed_now;
    slip = slip_now;
    started = true;
  }
  const double share = 1.0 / (0.08 * rate);
  speed_mps += (speed_now - speed_mps) * share;
  slip += (slip_now - slip) * share;
  const double corner = std::min((250.0 + 9.0 * speed_mps) * 6.3 / rate, 0.9);
  const double hiss = second.next(first.next(noise.next(), corner), corner);
  const double bright = hiss - floor.next(hiss, 90.0 * 6.3 / rate);
  // Slip: a broken flow along one side, swelling a few times a second.
  const double swell = 40.0 * flutter.next(noise.next(), 5.0 * 6.3 / rate);
  const double rough = 1.0 + slip * (0.35 + 0.25 * std::clamp(swell, -1.0, 1.0));
  const double pressure = speed_mps * speed_mps / (kReference_mps * kReference_mps);
  return 1.2 * pressure * rough * bright;
}

}  // namespace stallwright::sound
