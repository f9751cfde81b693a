#pragma once
#include <SDL_audio.h>
#include <SDL_events.h>

#include <mutex>
#include <string>

#include "render/sound/synth.hpp"

namespace stallwright::sound {

/// The way to the loudspeaker: a device of SDL's that calls for samples on a thread of its own. Where there is none, or it
/// goes away, the program goes on in silence and says so once; a device that comes (back) is taken up.
class Speaker {
 public:
  /// Opens the system's usual output. Never throws.
  ///   seed  of the noises
  explicit Speaker(std::uint64_t seed);
  ~Speaker();
  Speaker(const Speaker&) = delete;
  Speaker& operator=(const Speaker&) = delete;
  Speaker(Speaker&&) = delete;
  Speaker& operator=(Speaker&&) = delete;

  /// What is to be heard from now on. A lock is held for the copying of one small struct.
  void set(const view::SoundView& heard);

  /// Device loss and arrival; other events are left alone.
  void handle(const SDL_Event& event);

  /// Tries again, every few seconds, to open a device that was lost. Call it each frame.
  void update(double dt_s);

  bool playing() const { return device_ != 0; }

  /// What a user should know, once: no output, lost, back again. Empty: nothing new.
  std::string take_notice();

 private:
  static void fill(void* self, Uint8* bytes, int length);
  bool open();
  void close();

  std::mutex lock_;  ///< of heard_ alone
  view::SoundView heard_;
  SynthState synth_;  ///< the audio thread's own while a device is open
  SDL_AudioDeviceID device_ = 0;
  double rate_hz_ = 48000.0;
  double retry_in_s_ = 0.0;
  bool ready_ = false, lost_ = false;
  std::string notice_;
};

}  // namespace stallwright::sound
