#include "render/sound/speaker.hpp"

#include <SDL.h>

#include <algorithm>
#include <utility>

namespace stallwright::sound {
namespace {

constexpr int kRate_hz = 48000;
constexpr Uint16 kBuffer = 1024;  // 21 ms: the horn comes within a blink, and a busy machine keeps up
constexpr double kRetry_s = 3.0;

}  // namespace

Speaker::Speaker(std::uint64_t seed) : synth_(synth_state(seed)) {
  heard_.silent = true;
  ready_ = SDL_InitSubSystem(SDL_INIT_AUDIO) == 0;
  if (!ready_ || !open())
    notice_ = "no sound output was found: everything that sounds is also written on the screen";
}

Speaker::~Speaker() {
  close();
  if (ready_) SDL_QuitSubSystem(SDL_INIT_AUDIO);
}

bool Speaker::open() {
  // Asked first, because ALSA complains at length on standard error where there is no card. -1: cannot be listed.
  if (SDL_GetNumAudioDevices(0) == 0) return false;
  SDL_AudioSpec wanted{}, got{};
  wanted.freq = kRate_hz;
  wanted.format = AUDIO_F32SYS;
  wanted.channels = 1;
  wanted.samples = kBuffer;
  wanted.callback = &Speaker::fill;
  wanted.userdata = this;
  device_ = SDL_OpenAudioDevice(nullptr, 0, &wanted, &got, SDL_AUDIO_ALLOW_FREQUENCY_CHANGE);
  if (device_ == 0) return false;
  rate_hz_ = got.freq;
  SDL_PauseAudioDevice(device_, 0);
  return true;
}

void Speaker::close() {
  if (device_ != 0) SDL_CloseAudioDevice(device_);  // waits for the audio thread
  device_ = 0;
}

void Speaker::set(const view::SoundView& heard) {
  const std::lock_guard<std::mutex> held(lock_);
  heard_ = heard;
}

void Speaker::fill(void* self, Uint8* bytes, int length) {
  auto& speaker = *static_cast<Speaker*>(self);
  view::SoundView now;
  {
    const std::lock_guard<std::mutex> held(speaker.lock_);
    now = speaker.heard_;
  }
  advance(speaker.synth_, now, reinterpret_cast<float*>(bytes),
          static_cast<std::size_t>(length) / sizeof(float), speaker.rate_hz_);
}

void Speaker::handle(const SDL_Event& event) {
  if (event.type == SDL_AUDIODEVICEREMOVED && event.adevice.iscapture == 0 && device_ != 0 &&
      event.adevice.which == device_) {
    close();
    lost_ = true;
    retry_in_s_ = 0.0;
    notice_ = "the sound output went away: looking for another";
  }
  if (event.type == SDL_AUDIODEVICEADDED && event.adevice.iscapture == 0 && device_ == 0) {
    lost_ = true;
    retry_in_s_ = 0.0;
  }
}

void Speaker::update(double dt_s) {
  if (!ready_ || !lost_ || device_ != 0) return;
  retry_in_s_ -= dt_s;
  if (retry_in_s_ > 0.0) return;
  retry_in_s_ = kRetry_s;
  if (!open()) return;
  lost_ = false;
  notice_ = "sound output found";
}

std::string Speaker::take_notice() { return std::exchange(notice_, std::string()); }

}  // namespace stallwright::sound
