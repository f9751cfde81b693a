// Every screen of the running cockpit read at three sizes, at moments that fill it: no text over another, too small or cut.
#include <catch2/catch.hpp>

#include "sim/sortie/test_card_file.hpp"
#include "tests/render/app/cockpit_run.hpp"
#include "tests/render/app/keyboard_pilot.hpp"
#include "tests/render/app/screen_reading.hpp"

using namespace stallwright;
using app_test::tap;
using cli_test::Folder;

namespace {

struct Size {
  int width, height;
  float scale() const { return static_cast<float>(height) / 720.0f; }
};
constexpr Size kSizes[] = {{1280, 720}, {1920, 1080}, {2560, 1440}};

/// Collects what is hard to read, each fault once a moment.
class Reader {
 public:
  explicit Reader(float scale) : scale_(scale) {}
  void read(const std::string& moment) {
    moments.push_back(moment);
    for (const std::string& fault : app_test::hard_to_read(scale_)) {
      const std::string line = moment + ": " + fault;
      if (std::find(faults.begin(), faults.end(), line) == faults.end()) faults.push_back(line);
    }
  }
  bool has_read(const std::string& moment) const {
    return std::find(moments.begin(), moments.end(), moment) != moments.end();
  }
  std::vector<std::string> faults, moments;

 private:
  float scale_;
};

/// What is read and then done, each a few frames after the one before, so that a page has opened.
struct Step {
  const char* moment;  ///< null: nothing is read
  SDL_Keycode key;     ///< pressed after it; 0: none
};
constexpr Step kInFlight[] = {{nullptr, SDLK_h},      {"keys", SDLK_ESCAPE}, {nullptr, SDLK_ESCAPE},
                              {"leave", SDLK_ESCAPE}, {nullptr, SDLK_d},     {"hands", SDLK_ESCAPE},
                              {nullptr, SDLK_p},      {"paused", SDLK_p},    {nullptr, SDLK_m},
                              {"notice", SDLK_m}};
constexpr Step kDebrief[] = {{"verdict", SDLK_2},
                             {"debrief 2", SDLK_3},
                             {"debrief 3", SDLK_4},
                             {"debrief 4", SDLK_5},
                             {"debrief 5", 0}};

/// Plays such a list, a step every sixth call.
template <std::size_t N>
class Player {
 public:
  explicit Player(const Step (&steps)[N]) : steps_(steps) {}
  bool over() const { return at_ == N; }
  void next(Reader& reader) {
    if (over() || ++calls_ % 6 != 0) return;
    const Step& step = steps_[at_++];
    if (step.moment != nullptr) reader.read(step.moment);
    if (step.key != 0) tap(step.key);
  }

 private:
  const Step (&steps_)[N];
  std::size_t at_ = 0;
  long calls_ = 0;
};

}  // namespace

TEST_CASE("the flight's screen and its pages can be read at each size, through all of a card",
          "[cockpit][legible]") {
  const auto [size, guide] =
      GENERATE(table<Size, bool>({{kSizes[0], true}, {kSizes[1], false}, {kSizes[2], true}}));
  CAPTURE(size.width, size.height);
  const Folder folder;
  app::Options options = app_test::options(folder.path(), {"--frames", "40000"});
  options.width = size.width;
  options.height = size.height;
  options.choice.guide = guide;
  SortieConfig config;
  config.card = load_test_card(find_card_file("short"));
  Reader reader(size.scale());
  Player in_flight(kInFlight);
  Player at_debrief(kDebrief);
  app_test::KeyboardPilot pilot;
  bool flew = false;
  long count = 0, checks_open = 0, in_phase = 0;
  Phase phase = Phase::done;
  app::Cockpit cockpit(options);
  cockpit.run([&](app::Cockpit& c) {
    ++count;
    if (c.flight() == nullptr && !flew) {
      if (count == 4) reader.read("start");
      if (count == 5) c.registry().press("Fly");
      return;
    }
    if (c.flight() == nullptr) {
      at_debrief.next(reader);
      if (at_debrief.over()) c.quit();
      return;
    }
    flew = true;
    const Seen& seen = *c.flight();
    const bool checks = c.registry().find("Gone through (Enter)") != nullptr;
    if (checks && ++checks_open == 4) reader.read("stall checks");
    if (checks_open > 5) c.registry().press("Gone through (Enter)"), checks_open = 0;
    if (seen.now.time_s > 6.0 && !in_flight.over()) return in_flight.next(reader);
    pilot.fly(seen, config, 0.04);
    // Soon after each phase has begun and every few seconds of it: what the coach says changes most there.
    const Phase now = seen.now.marks.phase;
    in_phase = now == phase ? in_phase + 1 : 0;
    phase = now;
    if (in_phase % 100 == 8) reader.read(phase_name(now));
  });
  CHECK(reader.has_read("debrief 5"));
  for (const char* page : {"start", "keys", "leave", "hands", "paused", "notice", "stall checks", "record",
                           "slow", "recover", "verdict"}) {
    CAPTURE(page);
    CHECK(reader.has_read(page));
  }
  CHECK(reader.faults == std::vector<std::string>{});
}
