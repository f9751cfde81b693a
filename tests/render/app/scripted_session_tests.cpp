// Whole sessions of the real program, played by script: what they leave behind.
#include <algorithm>

#include "render/view/logbook_view.hpp"
#include "render/view/replay_track.hpp"
#include "sim/report/fly_again.hpp"
#include "sim/report/sortie_json.hpp"
#include "tests/render/app/cockpit_program.hpp"
#include "tests/render/app/cockpit_run.hpp"
#include "tests/render/app/screen_reading.hpp"

using namespace stallwright;
using app_test::only_sortie;
using app_test::run_cockpit;
using cli_test::Folder;
using cli_test::Result;
namespace fs = std::filesystem;

namespace {

/// Nothing is drawn; the window is small.
const std::string kQuick = "--headless --silent --size 960x540 --draw-every 100000 ";

/// Flown by keys for a while, then ended as a pilot would.
constexpr const char* kSession = R"(# stick, power, flaps, trim, buttons
wait 1
hold Up 0.4
hold PageUp 1
wait 2
key C
hold Right 0.3
wait 3
key F
hold Down 0.5
key R
wait 4
key Shift+R
hold T 0.2
wait 12
key Escape
wait for End the flight here?
wait 0.1
key Return
wait for Fly it again
end
)";

bool whole_lines(const fs::path& file) {
  const std::string text = cli_test::text_of(file);
  const auto first = static_cast<long>(text.find('\n'));
  const auto fields = std::count(text.begin(), text.begin() + first, ',');
  if (text.empty() || text.back() != '\n') return false;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find('\n', at);
    if (std::count(text.begin() + static_cast<long>(at), text.begin() + static_cast<long>(end), ',') !=
        fields)
      return false;
    at = end + 1;
  }
  return true;
}

double last_time_s(const fs::path& csv) {
  const std::string text = cli_test::text_of(csv);
  return std::stod(text.substr(text.rfind('\n', text.size() - 2) + 1));
}

}  // namespace

TEST_CASE("the same script gives the same flight to the byte, and its file of hands flies it again",
          "[cockpit][whole]") {
  std::string truth[2], log[2], hands[2];
  for (int k = 0; k < 2; ++k) {
    const Folder folder;
    cli_test::put(folder / "session.txt", kSession);
    // The other is drawn, in another size: the screen has no say in the flight.
    const std::string drawn = "--headless --silent --size 640x360 --draw-every 100 ";
    const Result result =
        run_cockpit(folder, (k == 0 ? kQuick : drawn) + "--fly --air light --seed 3 --script session.txt");
    INFO(result.err);
    REQUIRE(result.status == 0);
    const fs::path sortie = only_sortie(folder.path());
    truth[k] = cli_test::text_of(sortie / "truth.csv");
    log[k] = cli_test::text_of(sortie / "log.csv");
    hands[k] = cli_test::text_of(sortie / "hands.csv");
    CHECK(last_time_s(sortie / "truth.csv") > 15.0);
    CHECK(whole_lines(sortie / "log.csv"));
    CHECK(read_sortie(sortie).ended);
    const FlownAgain again = fly_again(sortie);
    CHECK_FALSE(again.cut_short);
    CHECK(again.same());
  }
  CHECK(truth[0] == truth[1]);
  CHECK(log[0] == log[1]);
  CHECK(hands[0] == hands[1]);
}

TEST_CASE("killed in the air, the program leaves files that are whole to the last second",
          "[cockpit][whole]") {
  const Folder folder;
  cli_test::put(folder / "fly.txt", "wait 100000\n");
  app_test::RunningCockpit cockpit(folder, kQuick + "--fly --air light --script fly.txt");
  REQUIRE(cockpit.wait_until([&] {
    return fs::exists(folder / "sorties") && !fs::is_empty(folder / "sorties") &&
           app_test::size_of(only_sortie(folder.path()) / "truth.csv") > 100000;
  }));
  CHECK(cockpit.end(SIGKILL) == 128 + SIGKILL);
  const fs::path sortie = only_sortie(folder.path());
  for (const char* file : {"log.csv", "truth.csv", "hands.csv"}) {
    CAPTURE(file);
    CHECK(whole_lines(sortie / file));
  }
  CHECK(std::abs(last_time_s(sortie / "log.csv") - last_time_s(sortie / "hands.csv")) < 1.01);
  CHECK_FALSE(read_sortie(sortie).ended);
  const view::Logbook book = view::read_logbook(folder / "sorties");
  REQUIRE(book.lines.size() == 1);
  CHECK(book.lines.front().outcome == "cut off in the air");
  const view::ReplayTrack track(sortie);
  CHECK(track.end_s() > 2.0);
  const FlownAgain again = fly_again(sortie);
  CHECK(again.cut_short);
  CHECK(again.same());
  // The program itself opens both, too.
  cli_test::put(folder / "look.txt", R"(press Logbook
wait for cut off in the air
press Replay
wait for Leave the replay
wait 1
end
)");
  const Result replayed = run_cockpit(folder, kQuick + "--script look.txt");
  INFO(replayed.err);
  CHECK(replayed.status == 0);
}

TEST_CASE("asked by the system to end in the air, the program closes the sortie", "[cockpit][whole]") {
  const Folder folder;
  // Not --headless: time by the clock, the flight on its own thread, as on a screen.
  app_test::RunningCockpit cockpit(folder, "--silent --size 640x360 --detail bare --fly --air light",
                                   std::string(app_test::kBare) + " SDL_VIDEODRIVER=offscreen");
  REQUIRE(cockpit.wait_until([&] {
    return fs::exists(folder / "sorties") && !fs::is_empty(folder / "sorties") &&
           app_test::size_of(only_sortie(folder.path()) / "truth.csv") > 20000;
  }));
  CHECK(cockpit.end(SIGTERM) == 0);
  CHECK_THAT(cli_test::text_of(folder / "stderr.txt"), Catch::StartsWith("The flight is kept in "));
  const fs::path sortie = only_sortie(folder.path());
  const FlownSortie flown = read_sortie(sortie);
  CHECK(flown.ended);
  CHECK_FALSE(flown.outcome.finished);
  CHECK(whole_lines(sortie / "log.csv"));
  CHECK(fly_again(sortie).same());
}

TEST_CASE("a disk that fills up in the air is told, the flight goes on, and whole lines are kept",
          "[cockpit][whole]") {
  const Folder folder;
  cli_test::put(folder / "full.txt", R"(wait for can no longer be written
wait 10
key Escape
wait for End the flight here?
wait 0.1
key Return
wait for could not be written
end
)");
  // Blocks of 512 bytes; what is larger does not fit, as on a full disk.
  const std::string full = std::string("trap '' XFSZ; ulimit -f 300; ") + app_test::kBare;
  const Result result = run_cockpit(folder, kQuick + "--fly --air light --script full.txt", full);
  INFO(result.err);
  REQUIRE(result.status == 0);
  const fs::path sortie = only_sortie(folder.path());
  for (const char* file : {"log.csv", "truth.csv", "hands.csv"}) {
    CAPTURE(file);
    CHECK(app_test::size_of(sortie / file) > 1000);
    CHECK(whole_lines(sortie / file));
  }
  const view::Logbook book = view::read_logbook(folder / "sorties");
  REQUIRE(book.lines.size() == 1);
  CHECK(book.lines.front().problem.empty());
  CHECK(view::ReplayTrack(sortie).end_s() > 2.0);
}

TEST_CASE("a folder for sorties that cannot be made is told on the start page", "[cockpit][whole]") {
  const Folder folder;
  cli_test::put(folder / "blocked", "a file, not a folder\n");
  cli_test::put(folder / "fly.txt", R"(wait for Fly
press Fly
wait for No flight:
press Logbook
wait 0.2
key Escape
wait for No flight:
end
)");
  const Result result = run_cockpit(folder, kQuick + "--sorties blocked/sorties --script fly.txt");
  INFO(result.err);
  CHECK(result.status == 0);
  CHECK(cli_test::text_of(folder / "blocked") == "a file, not a folder\n");
  // Without a start page to tell it on it is one line.
  const Result at_once = run_cockpit(folder, "--headless --silent --fly --sorties blocked/sorties");
  CHECK(at_once.status == 2);
  CHECK(at_once.err_lines() == 1);
}

TEST_CASE("settings that cannot be kept are told, and the flight begins", "[cockpit][whole]") {
  const Folder folder;
  cli_test::put(folder / "blocked", "");
  cli_test::put(folder / "fly.txt", R"(wait for Fly
press Fly
wait for cannot be remembered
wait 2
key Escape
wait for End the flight here?
wait 0.1
key Return
wait 0.2
end
)");
  const Result result = run_cockpit(folder, kQuick + "--settings blocked/settings --script fly.txt");
  INFO(result.err);
  CHECK(result.status == 0);
  CHECK(read_sortie(only_sortie(folder.path())).ended);
}

TEST_CASE("without the typeface the program says so and can still be read", "[cockpit][whole]") {
  const Folder folder;
  cli_test::put(
      folder / "fonts.conf",
      "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig></fontconfig>\n");
  ::setenv("FONTCONFIG_FILE", (folder / "fonts.conf").c_str(), 1);
  bool told = false, minus = false;
  std::vector<std::string> unreadable;
  {
    app::Cockpit cockpit(app_test::options(folder.path(), {"--fly", "--frames", "60"}));
    cockpit.run([&](app::Cockpit& c) {
      if (c.flight()->now.time_s == 1.0) app_test::tap(SDLK_h);
      told = told || app_test::shows("B612 was not found");
      for (const ui::ShownText& text : app_test::texts_in_sight()) {
        minus = minus || text.text.rfind("-0.", 0) == 0;
        // A sign that the typeface lacks is drawn as a question mark; one that was meant ends its word.
        const std::size_t at = text.text.find('?');
        const bool meant = at == std::string::npos || at + 1 == text.text.size() || text.text[at + 1] == ' ';
        if (!meant) unreadable.push_back(text.text);
      }
    });
  }
  ::unsetenv("FONTCONFIG_FILE");
  CHECK(told);
  CHECK(minus);
  CHECK(unreadable == std::vector<std::string>{});
}
