#pragma once
#include <array>
#include <cstddef>

#include "render/view/sound_view.hpp"

namespace stallwright::view {

/// How long each sound that is written on the screen stays there, s. A short sound is held until it can be read.
struct CaptionClock {
  static constexpr std::size_t kSounds = 4;
  std::array<double, kSounds> left_s{};  ///< break, horn, tone, buffet
  unsigned breaks = 0;
  bool started = false;
};

inline constexpr double kCaptionHold_s = 1.5;
inline constexpr double kBuffetCaption_g = 0.03;  ///< as soon as it is felt for sure

/// The clock dt_s later. Pure. While the view is silent nothing new is written.
CaptionClock advance(CaptionClock clock, const SoundView& heard, double dt_s);

/// The words to show now, the most urgent first.
struct Captions {
  std::array<const char*, CaptionClock::kSounds> words{};
  std::size_t count = 0;
};
Captions captions(const CaptionClock& clock);

}  // namespace stallwright::view
