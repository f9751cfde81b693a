#include "render/sound/synth.hpp"

namespace stallwright::sound {
namespace {

constexpr double kRamp_s = 0.04;  // of the volume from nothing to full

/// Start of one stream: the seed stirred (splitmix64), never 0.
Noise stream(std::uint64_t seed, std::uint64_t which) {
  std::uint64_t z = seed + 0x9e3779b97f4a7c15ULL * (which + 1);
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
  z ^= z >> 31;
  return {z == 0 ? 1 : z};
}

void count_knocks(SynthState& s, const view::SoundView& heard) {
  if (s.started && heard.breaks > s.breaks) s.thud.strike();
  if (s.started && heard.records > s.records) s.click.strike();
  s.breaks = heard.breaks;
  s.records = heard.records;
  s.started = true;
}

double mixed(SynthState& s, const view::SoundView& heard, double rate) {
  return s.engine.next(heard.rpm, heard.blades, heard.power_share, rate) +
         s.wind.next(heard.airspeed_mps, heard.slip_balls, rate) + s.buffet.next(heard.buffet_g, rate) +
         s.horn.next(heard.horn, rate) + s.tone.next(heard.tone, rate) + s.thud.next(rate) +
         s.click.next(rate);
}

}  // namespace

double limited(double sample) {
  constexpr double kStraight = 0.7;
  const double size = std::abs(sample);
  if (!(size > kStraight)) return size >= 0.0 ? sample : 0.0;  // not a number: silence
  const double bent = kStraight + (1.0 - kStraight) * std::tanh((size - kStraight) / (1.0 - kStraight));
  return std::copysign(std::min(bent, 1.0), sample);
}

SynthState synth_state(std::uint64_t seed) {
  SynthState s;
  s.engine.noise = stream(seed, 0);
  s.wind.noise = stream(seed, 1);
  s.buffet.noise = stream(seed, 2);
  s.horn.noise = stream(seed, 3);
  s.thud.noise = stream(seed, 4);
  return s;
}

void advance(SynthState& state, const view::SoundView& heard, float* out, std::size_t n,
             double sample_rate_hz) {
  count_knocks(state, heard);
  // The ear hears ratios: the square makes equal steps of the knob sound more alike.
  const double volume = heard.silent ? 0.0 : std::clamp(heard.volume, 0.0, 1.0);
  const double step = 1.0 / (kRamp_s * sample_rate_hz);
  for (std::size_t i = 0; i < n; ++i) {
    state.gain = moved(state.gain, volume * volume, step);
    out[i] = static_cast<float>(limited(2.0 * state.gain * mixed(state, heard, sample_rate_hz)));
  }
}

}  // namespace stallwright::sound
