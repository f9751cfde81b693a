#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "render/view/captions.hpp"

using namespace stallwright::view;

namespace {

std::vector<std::string> words(const CaptionClock& clock) {
  const Captions c = captions(clock);
  return {c.words.begin(), c.words.begin() + c.count};
}

using Words = std::vector<std::string>;

}  // namespace

TEST_CASE("each sound has its own words, the most urgent first", "[captions][view]") {
  SoundView v;
  CaptionClock clock = advance({}, v, 0.02);
  CHECK(words(clock).empty());
  v.horn = v.tone = true;
  v.buffet_g = 0.1;
  v.breaks = 1;
  CHECK(words(advance(clock, v, 0.02)) ==
        Words{"BREAK", "HORN: the aeroplane's own", "tone: taught unit", "buffet"});
}

TEST_CASE("a sound of one tick stays long enough to be read, then goes", "[captions][view]") {
  SoundView v;
  CaptionClock clock = advance({}, v, 0.02);
  v.horn = true;
  clock = advance(clock, v, 0.02);
  v.horn = false;
  for (int k = 0; k < 70; ++k) clock = advance(clock, v, 0.02);
  CHECK(words(clock) == Words{"HORN: the aeroplane's own"});
  for (int k = 0; k < 10; ++k) clock = advance(clock, v, 0.02);
  CHECK(words(clock).empty());
}

TEST_CASE("a count of breaks that was there before is not written, and a new flight's zero neither",
          "[captions][view]") {
  SoundView v;
  v.breaks = 3;
  CaptionClock clock = advance({}, v, 0.02);
  CHECK(words(clock).empty());
  v.breaks = 0;
  clock = advance(clock, v, 0.02);
  CHECK(words(clock).empty());
  v.breaks = 1;
  CHECK(words(advance(clock, v, 0.02)) == Words{"BREAK"});
}

TEST_CASE("while paused nothing new is written, and weak buffet never", "[captions][view]") {
  SoundView v;
  v.buffet_g = 0.02;
  CHECK(words(advance({}, v, 0.02)).empty());
  v.horn = v.silent = true;
  CHECK(words(advance({}, v, 0.02)).empty());
}
