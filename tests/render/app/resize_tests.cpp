// The window is pulled about while everything else goes on: nothing breaks, and what is needed stays there.
#include <catch2/catch.hpp>

#include "tests/render/app/cockpit_run.hpp"
#include "tests/render/app/screen_reading.hpp"

using namespace stallwright;
using app_test::tap;
using cli_test::Folder;

namespace {

constexpr int kSizes[][2] = {{640, 360}, {960, 540}, {2560, 1440}, {700, 1200}, {1600, 400}, {1280, 720}};

/// Every few calls another size; over when all were there.
class Puller {
 public:
  void begin() { at_ = 0; }
  bool over() const { return at_ == 5 * std::size(kSizes); }
  void next() {
    if (!over() && at_++ % 5 == 0) app_test::resize(kSizes[at_ / 5][0], kSizes[at_ / 5][1]);
  }

 private:
  std::size_t at_ = 5 * std::size(kSizes);
};

/// What opens the next screen of the tour, once `shows` is a control of the one before.
struct Stop {
  const char* shows;
  const char* press;  ///< a control's label; null: the key
  SDL_Keycode key;
};
constexpr Stop kTour[] = {{"Set up hands", "Set up hands", 0},
                          {"Back to the flight", "Back to the flight", 0},
                          {"Logbook", "Logbook", 0},
                          {"Back to the start", "Back to the start", 0},
                          {"Fly", "Fly", 0},
                          {"Record anyway", nullptr, SDLK_h},
                          {"Close the keys (Escape)", nullptr, SDLK_ESCAPE},
                          {"Record anyway", nullptr, SDLK_d},
                          {"Back to the flight", nullptr, SDLK_ESCAPE},
                          {"Record anyway", nullptr, SDLK_ESCAPE},
                          {"End it (Enter)", "End it (Enter)", 0},
                          {"Fly it again", nullptr, SDLK_2},
                          {"Fly it again", nullptr, SDLK_3},
                          {"Fly it again", nullptr, SDLK_4},
                          {"Fly it again", nullptr, SDLK_5},
                          {"Fly it again", "Replay", 0},
                          {"Leave the replay", "Leave the replay", 0},
                          {"Fly it again", "Fly it again", 0},
                          {"Record anyway", nullptr, 0}};

}  // namespace

TEST_CASE("every screen is drawn at every size that the window is pulled to", "[cockpit][resize]") {
  const Folder folder;
  app::Options options = app_test::options(folder.path(), {"--frames", "4000", "--detail", "bare"});
  options.draw_every = 5;  // once a size
  // Off the screen the framebuffer keeps its first size: the largest comes first.
  options.width = 2560;
  options.height = 1440;
  Puller puller;
  std::size_t stop = 0;
  bool here = false;
  {
    app::Cockpit cockpit(options);
    cockpit.run([&](app::Cockpit& c) {
      if (!puller.over()) return puller.next();
      const Stop& at = kTour[stop];
      if (!here) {
        here = c.registry().find(at.shows) != nullptr;
        if (here) puller.begin();
        return;
      }
      here = false;
      if (++stop == std::size(kTour)) return c.quit();
      if (at.press != nullptr) c.registry().press(at.press);
      if (at.key != 0) tap(at.key);
    });
  }
  CAPTURE(stop, kTour[std::min(stop, std::size(kTour) - 1)].shows);
  CHECK(stop == std::size(kTour));
}

TEST_CASE("a window that is closed in the air closes the sortie", "[cockpit][resize]") {
  const Folder folder;
  {
    app::Cockpit cockpit(app_test::options(folder.path(), {"--fly", "--frames", "400"}));
    cockpit.run([&](app::Cockpit& c) {
      if (c.flight() == nullptr || c.flight()->now.time_s < 3.0) return;
      SDL_Event closed{};
      closed.type = SDL_QUIT;
      SDL_PushEvent(&closed);
    });
  }
  const FlownSortie flown = read_sortie(app_test::only_sortie(folder.path()));
  CHECK(flown.ended);
  CHECK(flown.outcome.ended_s < 4.0);
}
