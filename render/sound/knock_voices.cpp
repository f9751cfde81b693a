#include "render/sound/knock_voices.hpp"

namespace stallwright::sound {

double ThudVoice::next(double rate) {
  if (since_s > 0.8) return 0.0;
  if (since_s == 0.0) drum.at = 0.0;
  const double hz = 62.0 + 50.0 * std::exp(-since_s / 0.03);
  const double body = sine(drum.next(hz, rate)) * std::exp(-since_s / 0.11);
  const double skin = 4.0 * dull.next(noise.next(), 320.0 * 6.3 / rate) * std::exp(-since_s / 0.035);
  const double onset = 1.0 - std::exp(-since_s / 0.003);
  const double end = std::clamp((0.8 - since_s) / 0.1, 0.0, 1.0);
  since_s += 1.0 / rate;
  return 0.75 * onset * end * (body + 0.6 * skin);
}

double ClickVoice::next(double rate) {
  if (since_s > 0.2) return 0.0;
  const auto tick = [&](double t) {
    return t < 0.0 ? 0.0 : sine(2100.0 * t) * std::exp(-t / 0.004) * (1.0 - std::exp(-t / 0.0006));
  };
  const double out = 0.5 * (tick(since_s) + tick(since_s - 0.07));
  since_s += 1.0 / rate;
  return out;
}

}  // namespace stallwright::sound
