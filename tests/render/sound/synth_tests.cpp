#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdint>
#include <limits>

#include "tests/render/sound/samples.hpp"

using namespace stallwright;
using samples::level_dB;
using view::SoundView;

namespace {

SoundView wind(double airspeed_mps) {
  SoundView v;
  v.airspeed_mps = airspeed_mps;
  return v;
}

SoundView engine(double rpm, double power_share) {
  SoundView v;
  v.rpm = rpm;
  v.power_share = power_share;
  return v;
}

SoundView horn() {
  SoundView v;
  v.horn = true;
  return v;
}

SoundView tone() {
  SoundView v;
  v.tone = true;
  return v;
}

SoundView everything() {
  SoundView v = engine(2700, 1.0);
  v.airspeed_mps = 90;
  v.slip_balls = 2;
  v.buffet_g = 1.0;
  v.horn = v.tone = true;
  v.volume = 1.0;
  return v;
}

/// Longest time in s during which 2 ms stretches stay below a tenth of the loudest one.
double longest_gap_s(const samples::Samples& x) {
  const std::size_t stretch = 96;
  std::vector<double> level;
  for (std::size_t i = 0; i + stretch <= x.size(); i += stretch)
    level.push_back(samples::rms(
        {x.begin() + static_cast<std::ptrdiff_t>(i), x.begin() + static_cast<std::ptrdiff_t>(i + stretch)}));
  const double loudest = *std::max_element(level.begin(), level.end());
  int longest = 0, now = 0;
  for (const double l : level) longest = std::max(longest, now = l < 0.1 * loudest ? now + 1 : 0);
  return longest * 0.002;
}

}  // namespace

TEST_CASE("the wind is at least 6 dB softer at 1.1 times the stall speed than in the cruise", "[sound]") {
  // Marram, about: stalls at 24 m/s, cruises at 50.
  CHECK(level_dB(wind(50)) - level_dB(wind(1.1 * 24)) >= 6.0);
}

TEST_CASE("the wind grows with dynamic pressure: twice the speed is four times the amplitude, and brighter",
          "[sound]") {
  const double rise = level_dB(wind(60)) - level_dB(wind(30));
  CHECK(rise > 12.0);
  CHECK(rise < 16.0);
}

TEST_CASE("the wind grows with speed at every step", "[sound]") {
  double before = -300.0;
  for (const double v : {0.0, 10.0, 20.0, 26.0, 30.0, 40.0, 50.0, 60.0, 75.0}) {
    const double now = level_dB(wind(v));
    INFO(v << " m/s: " << now << " dB after " << before);
    CHECK(now > before + (v > 10.0 ? 0.5 : 0.0));
    before = now;
  }
}

TEST_CASE("the wind is louder out of trim, either way alike", "[sound]") {
  SoundView left = wind(30), right = wind(30);
  left.slip_balls = -1.0;
  right.slip_balls = 1.0;
  CHECK(level_dB(left) > level_dB(wind(30)) + 2.0);
  CHECK(level_dB(left) == Approx(level_dB(right)));
}

TEST_CASE("the engine's note is the blade passing frequency", "[sound]") {
  for (const auto& [rpm, blades] : {std::pair{2400.0, 2}, {2100.0, 2}, {1800.0, 2}}) {
    SoundView v = engine(rpm, 0.7);
    v.blades = blades;
    const double passing = sound::blade_passing_hz(rpm, blades);
    CHECK(samples::fundamental_hz(samples::part(samples::of(v, 1.5), 1.0, 1.4)) ==
          Approx(passing).epsilon(0.02));
  }
}

TEST_CASE("three blades sound a half higher than two at the same revolutions", "[sound]") {
  SoundView v = engine(2400, 0.7);
  const auto two = samples::part(samples::of(v, 2.0), 1.0, 2.0);
  v.blades = 3;
  const auto three = samples::part(samples::of(v, 2.0), 1.0, 2.0);
  const auto near_120 = [](const samples::Samples& x) {
    double sum = 0.0;
    for (double hz = 114.0; hz <= 126.0; hz += 1.0) sum += samples::share_at(x, hz);
    return sum;
  };
  CHECK(near_120(three) > 10.0 * near_120(two));
}

TEST_CASE("the engine is louder and fuller with power, ticks over when idle, and is still when stopped",
          "[sound]") {
  CHECK(level_dB(engine(2400, 1.0)) > level_dB(engine(2400, 0.3)) + 4.0);
  CHECK(samples::brightness_hz(samples::of(engine(2400, 1.0), 2.0)) >
        1.15 * samples::brightness_hz(samples::of(engine(2400, 0.1), 2.0)));
  CHECK(level_dB(engine(800, 0.0)) > -40.0);
  CHECK(level_dB(engine(800, 0.0)) < level_dB(engine(2300, 0.65)) - 6.0);
  CHECK(level_dB(engine(0, 0.0)) < -150.0);
}

TEST_CASE("buffet is heard from its first twentieth of a g and grows", "[sound]") {
  SoundView v;
  CHECK(level_dB(v) < -150.0);
  v.buffet_g = 0.05;
  const double light = level_dB(v);
  CHECK(light > -35.0);
  v.buffet_g = 0.3;
  CHECK(level_dB(v) > light + 6.0);
}

TEST_CASE("the horn's fundamental is its reed's", "[sound]") {
  const auto x = samples::part(samples::of(horn(), 1.0), 0.5, 0.8);
  CHECK(samples::fundamental_hz(x) == Approx(sound::kHorn_hz).epsilon(0.01));
}

TEST_CASE("the horn swells as it begins to speak", "[sound]") {
  const auto x = samples::of(horn(), 1.0);
  const double full = samples::rms(samples::part(x, 0.5, 0.6));
  CHECK(samples::rms(samples::part(x, 0.0, 0.02)) < 0.1 * full);
  CHECK(samples::rms(samples::part(x, 0.2, 0.3)) > 0.8 * full);
}

TEST_CASE("the taught unit's tone differs from the horn in pitch, timbre and rhythm", "[sound]") {
  const auto h = samples::part(samples::of(horn(), 2.0), 0.5, 2.0), all = samples::of(tone(), 2.0);
  const auto first = samples::part(all, 0.03, 0.09), second = samples::part(all, 0.14, 0.2);
  SECTION("pitch: two notes, each more than an octave above") {
    CHECK(samples::fundamental_hz(first) == Approx(1047).epsilon(0.01));
    CHECK(samples::fundamental_hz(second) == Approx(1397).epsilon(0.01));
    CHECK(samples::fundamental_hz(h) < 0.5 * samples::fundamental_hz(first));
  }
  SECTION("timbre: the tone is one clean line, the horn many") {
    CHECK(samples::share_at(first, 1047) > 0.9);
    double strongest = 0.0;
    for (int k = 1; k <= 9; ++k) strongest = std::fmax(strongest, samples::share_at(h, k * sound::kHorn_hz));
    CHECK(strongest < 0.6);
  }
  SECTION("rhythm: the tone rests between its pairs, the horn never does") {
    CHECK(longest_gap_s(all) > 0.2);
    CHECK(longest_gap_s(h) == 0.0);
  }
}

TEST_CASE("a tone that comes again begins with its first note", "[sound]") {
  auto state = sound::synth_state(1);
  samples::Samples x(48000);
  sound::advance(state, tone(), x.data(), 48000 * 3 / 20, 48000.0);  // broken off in the second note
  sound::advance(state, {}, x.data(), 4800, 48000.0);
  sound::advance(state, tone(), x.data(), 4800, 48000.0);
  CHECK(samples::fundamental_hz({x.begin() + 1000, x.begin() + 4600}) == Approx(1047).epsilon(0.01));
}

TEST_CASE("each break is one thud and each record one pair of ticks, however often the view is set",
          "[sound]") {
  auto state = sound::synth_state(1);
  samples::Samples x(48000);
  SoundView v;
  v.breaks = v.records = 4;
  sound::advance(state, v, x.data(), x.size(), 48000.0);
  CHECK(samples::largest(x) == 0.0);  // what came before is not heard again
  v.breaks = 5;
  sound::advance(state, v, x.data(), x.size(), 48000.0);
  CHECK(samples::largest(samples::part(x, 0.0, 0.2)) > 0.3);
  CHECK(samples::largest(samples::part(x, 0.9, 1.0)) == 0.0);
  v.records = 5;
  sound::advance(state, v, x.data(), x.size(), 48000.0);
  CHECK(samples::largest(samples::part(x, 0.0, 0.1)) > 0.1);
  sound::advance(state, v, x.data(), x.size(), 48000.0);
  CHECK(samples::largest(x) == 0.0);
}

TEST_CASE("silence is silence, whatever would sound", "[sound]") {
  SoundView v = everything();
  v.silent = true;
  CHECK(samples::largest(samples::of(v, 1.0)) == 0.0);
  v.silent = false;
  v.volume = 0.0;
  CHECK(samples::largest(samples::of(v, 1.0)) == 0.0);
}

TEST_CASE("falling silent and speaking again are ramps, not clicks", "[sound]") {
  auto state = sound::synth_state(1);
  samples::Samples x(24000);
  SoundView v = engine(2300, 0.6);
  sound::advance(state, v, x.data(), x.size(), 48000.0);
  const double usual = samples::largest_step(samples::part(x, 0.3, 0.5));
  v.silent = true;
  const float last = x.back();
  sound::advance(state, v, x.data(), x.size(), 48000.0);
  CHECK(std::abs(static_cast<double>(x.front() - last)) < 1.2 * usual);
  CHECK(samples::largest_step(x) < 1.2 * usual);
  CHECK(samples::largest(samples::part(x, 0.1, 0.5)) == 0.0);
  v.silent = false;
  sound::advance(state, v, x.data(), x.size(), 48000.0);
  CHECK(samples::largest_step(x) < 1.3 * usual);
}

TEST_CASE("no sample passes 1 with everything at its loudest and a break each tenth of a second", "[sound]") {
  auto state = sound::synth_state(1);
  samples::Samples x(4800);
  SoundView v = everything();
  for (int k = 0; k < 50; ++k) {
    v.breaks = v.records = static_cast<unsigned>(k);
    sound::advance(state, v, x.data(), x.size(), 48000.0);
    CHECK(samples::largest(x) <= 1.0);
    CHECK(samples::rms(x) > 0.1);
  }
}

TEST_CASE("the limiter leaves soft sound alone, bends loud sound, and makes silence of what is no number",
          "[sound]") {
  CHECK(sound::limited(std::numeric_limits<double>::quiet_NaN()) == 0.0);
  CHECK(sound::limited(0.5) == 0.5);
  CHECK(sound::limited(-0.5) == -0.5);
  CHECK(sound::limited(0.9) < 0.9);
  CHECK(sound::limited(1.0) < 0.95);
  CHECK(sound::limited(1.1) > sound::limited(1.0));
  CHECK(sound::limited(1e9) == 1.0);
  CHECK(sound::limited(-1e9) == -1.0);
}

TEST_CASE("the same seed and views give the same samples, however they are cut into calls", "[sound]") {
  const SoundView v = everything();
  const auto whole = samples::of(v, 0.5);
  auto state = sound::synth_state(1);
  samples::Samples cut(whole.size());
  for (std::size_t from = 0, n = 1; from < cut.size(); from += n, n = n % 700 + 13) {
    n = std::min(n, cut.size() - from);
    sound::advance(state, v, cut.data() + from, n, samples::kRate_hz);
  }
  CHECK(cut == whole);
  CHECK(samples::of(v, 0.5, 2) != whole);
}
