#include "render/view/captions.hpp"

#include <algorithm>

namespace stallwright::view {
namespace {

constexpr std::array<const char*, CaptionClock::kSounds> kWords = {"BREAK", "HORN: the aeroplane's own",
                                                                   "tone: taught unit", "buffet"};

}  // namespace

CaptionClock advance(CaptionClock clock, const SoundView& heard, double dt_s) {
  const bool broke = clock.started && heard.breaks > clock.breaks;
  clock.breaks = heard.breaks;
  clock.started = true;
  const std::array<bool, CaptionClock::kSounds> sounding = {broke, heard.horn, heard.tone,
                                                            heard.buffet_g >= kBuffetCaption_g};
  for (std::size_t k = 0; k < sounding.size(); ++k) {
    const double left = std::max(clock.left_s[k] - dt_s, 0.0);
    clock.left_s[k] = sounding[k] && !heard.silent ? kCaptionHold_s : left;
  }
  return clock;
}

Captions captions(const CaptionClock& clock) {
  Captions out;
  for (std::size_t k = 0; k < kWords.size(); ++k)
    if (clock.left_s[k] > 0.0) out.words[out.count++] = kWords[k];
  return out;
}

}  // namespace stallwright::view
