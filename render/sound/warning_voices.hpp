#pragma once
#include "render/sound/wave.hpp"

namespace stallwright::sound {

inline constexpr double kHorn_hz = 425.0;  ///< of the reed once it has spoken
inline constexpr double kHornOnset_s = 0.12;

/// The aeroplane's own stall warning: a reed in the leading edge that suction draws. It swells and rises to its pitch as
/// it begins to speak, and then goes on without a break, rich in harmonics and a little unsteady.
struct HornVoice {
  Turns reed, flutter;
  Noise noise;
  LowPass breath;
  double level = 0.0;  ///< 0 .. 1

  /// Next sample; two thirds at most.
  double next(bool sounding, double rate);
};

inline constexpr double kToneNotes_hz[] = {1047.0, 1397.0};
inline constexpr double kToneNote_s = 0.11, kToneRest_s = 0.26;  ///< two notes, then a rest, over and over

/// A taught unit's tone: clean pairs of notes, the second a fourth higher, with silence between. It differs from the horn
/// in pitch (more than an octave above), in timbre (no harmonics) and in rhythm (pulses against a drone).
struct ToneVoice {
  Turns note;
  double level = 0.0;
  double time_s = 0.0;  ///< within the figure

  /// Next sample; half at most.
  double next(bool sounding, double rate);
};

}  // namespace stallwright::sound
