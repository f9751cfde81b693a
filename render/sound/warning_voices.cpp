#include "render/sound/warning_voices.hpp"

#include <array>

namespace stallwright::sound {
namespace {

constexpr std::array<double, 9> kReed = {1.0, 0.75, 0.6, 0.45, 0.36, 0.26, 0.2, 0.13, 0.09};
constexpr double kRelease_s = 0.05;

double reed_wave(double turns) {
  const double theta = 2.0 * std::numbers::pi * turns;
  const double twice_cos = 2.0 * std::cos(theta);
  double before = 0.0, now = std::sin(theta), sum = kReed[0] * now;
  for (std::size_t k = 1; k < kReed.size(); ++k) {
    const double next = twice_cos * now - before;
    before = now;
    now = next;
    sum += kReed[k] * now;
  }
  return sum;
}

}  // namespace

double HornVoice::next(bool sounding, double rate) {
  level = moved(level, sounding ? 1.0 : 0.0, 1.0 / ((sounding ? kHornOnset_s : kRelease_s) * rate));
  const double unsteady = breath.next(noise.next(), 12.0 * 6.3 / rate);
  const double wave = reed_wave(reed.next(kHorn_hz * (0.93 + 0.07 * level), rate));
  const double loud = level * level * (1.0 + 0.05 * sine(flutter.next(6.5, rate)) + unsteady);
  return 0.24 * loud * wave;
}

double ToneVoice::next(bool sounding, double rate) {
  const bool second = time_s >= kToneNote_s;
  const bool resting = time_s >= 2.0 * kToneNote_s;
  level = moved(level, sounding && !resting ? 1.0 : 0.0, 1.0 / (0.008 * rate));
  const double wave = sine(note.next(kToneNotes_hz[second ? 1 : 0], rate));
  time_s += 1.0 / rate;
  // The next warning begins with the first note, wherever this one broke off.
  if (sounding ? time_s >= 2.0 * kToneNote_s + kToneRest_s : level == 0.0) time_s = 0.0;
  return 0.34 * level * wave;
}

}  // namespace stallwright::sound
