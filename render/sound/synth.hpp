#pragma once
#include <cstddef>
#include <cstdint>

#include "render/sound/buffet.hpp"
#include "render/sound/engine.hpp"
#include "render/sound/knock_voices.hpp"
#include "render/sound/warning_voices.hpp"
#include "render/sound/wind.hpp"
#include "render/view/sound_view.hpp"

namespace stallwright::sound {

/// All that the sound remembers from one sample to the next. A value: copy it and the sound goes on the same twice.
struct SynthState {
  EngineVoice engine;
  WindVoice wind;
  BuffetVoice buffet;
  HornVoice horn;
  ToneVoice tone;
  ThudVoice thud;
  ClickVoice click;
  double gain = 0.0;  ///< volume as heard, ramped
  unsigned breaks = 0, records = 0;
  bool started = false;  ///< the counts above have been taken over
};

/// Each voice draws its noise from its own stream of this seed.
SynthState synth_state(std::uint64_t seed);

/// Writes the next n samples, mono, each within -1 .. 1, of what this view sounds like. Pure: no device, no clock; the same
/// samples however they are cut into calls, as long as the view stays.
///   sample_rate_hz  8000 or more
void advance(SynthState& state, const view::SoundView& heard, float* out, std::size_t n,
             double sample_rate_hz);

/// Straight up to 0.7 in size, above that bent so that 1 is never passed.
double limited(double sample);

}  // namespace stallwright::sound
