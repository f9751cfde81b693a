#include <SDL.h>

#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "render/sound/speaker.hpp"
#include "tests/render/sound/samples.hpp"

using namespace stallwright;

namespace {

/// Makes SDL use one audio driver for the life of this object.
class Driver {
 public:
  explicit Driver(const char* name) { setenv("SDL_AUDIODRIVER", name, 1); }
  ~Driver() { unsetenv("SDL_AUDIODRIVER"); }
  Driver(const Driver&) = delete;
  Driver& operator=(const Driver&) = delete;
};

SDL_Event audio_event(Uint32 type, Uint32 which) {
  SDL_Event e{};
  e.type = type;
  e.adevice.which = which;
  return e;
}

}  // namespace

TEST_CASE("the horn ordered at the speaker reaches the device at its pitch", "[speaker]") {
  const auto file = std::filesystem::temp_directory_path() /
                    ("stallwright-sound-" + std::to_string(SDL_GetPerformanceCounter()));
  setenv("SDL_DISKAUDIOFILE", file.c_str(), 1);
  {
    const Driver disk("disk");
    sound::Speaker speaker(1);
    REQUIRE(speaker.playing());
    CHECK(speaker.take_notice().empty());
    view::SoundView heard;
    heard.horn = true;
    speaker.set(heard);
    SDL_Delay(700);
  }
  unsetenv("SDL_DISKAUDIOFILE");
  std::ifstream in(file, std::ios::binary);
  samples::Samples x(std::filesystem::file_size(file) / sizeof(float));
  in.read(reinterpret_cast<char*>(x.data()), static_cast<std::streamsize>(x.size() * sizeof(float)));
  std::filesystem::remove(file);
  REQUIRE(x.size() > 20000);
  CHECK(samples::fundamental_hz({x.end() - 12000, x.end()}) == Approx(sound::kHorn_hz).epsilon(0.01));
}

TEST_CASE("a lost sound output is named once and another is taken up", "[speaker]") {
  const Driver dummy("dummy");
  sound::Speaker speaker(1);
  REQUIRE(speaker.playing());
  speaker.handle(audio_event(SDL_AUDIODEVICEREMOVED, 999));
  CHECK(speaker.playing());
  for (Uint32 id = 1; id < 20; ++id) speaker.handle(audio_event(SDL_AUDIODEVICEREMOVED, id));
  CHECK_FALSE(speaker.playing());
  CHECK(speaker.take_notice() == "the sound output went away: looking for another");
  CHECK(speaker.take_notice().empty());
  speaker.update(0.02);
  CHECK(speaker.playing());
  CHECK(speaker.take_notice() == "sound output found");
}

TEST_CASE("without a sound output the speaker says so once and everything goes on", "[speaker]") {
  const Driver none("no such driver");
  sound::Speaker speaker(1);
  CHECK_FALSE(speaker.playing());
  CHECK(speaker.take_notice() ==
        "no sound output was found: everything that sounds is also written on the screen");
  CHECK(speaker.take_notice().empty());
  speaker.set({});
  for (int k = 0; k < 1000; ++k) speaker.update(0.02);
  CHECK_FALSE(speaker.playing());
  CHECK(speaker.take_notice().empty());
}
