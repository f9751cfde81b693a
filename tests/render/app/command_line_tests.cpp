// What the program says to a bad command line or script, and where there is no screen: one clear line, no window, no file.
#include "tests/render/app/cockpit_program.hpp"

using namespace stallwright;
using app_test::run_cockpit;
using cli_test::Folder;
using cli_test::Result;

namespace {

/// One line, which names the program and holds these words.
void check_one_line(const Result& result, int status, const std::string& words) {
  CAPTURE(result.err, words);
  CHECK(result.status == status);
  CHECK(result.err_lines() == 1);
  CHECK_THAT(result.err, Catch::StartsWith("stallwright-cockpit: ") && Catch::Contains(words));
  CHECK(result.out.empty());
}

}  // namespace

TEST_CASE("a bad option gets one line, exit status 2, and nothing is written", "[cockpit][cli]") {
  struct Bad {
    const char* arguments;
    const char* words;
  };
  const auto bad = GENERATE(values<Bad>({
      {"--aircraft nosuch", "nosuch"},
      {"--card nosuch", "nosuch"},
      {"--card nosuch.toml", "nosuch.toml"},
      {"--air storm", "--air: expected one of"},
      {"--set-points nosuch", "nosuch"},
      {"--hour 4", "--hour"},
      {"--hour noon", "--hour"},
      {"--seed -1", "--seed: expected a whole number"},
      {"--seed 1.5", "--seed: expected a whole number"},
      {"--seed 18446744073709551616", "--seed: expected a whole number"},
      {"--demonstrate nobody", "--demonstrate: expected sharp, current or rusty"},
      {"--debrief nosuch", "nosuch"},
      {"--replay nosuch", "nosuch"},
      {"--size 1280", "--size: expected WIDTHxHEIGHT"},
      {"--size 320x200", "--size: expected WIDTHxHEIGHT"},
      {"--size 1280x720x3", "--size: expected WIDTHxHEIGHT"},
      {"--scale 0.1", "--scale"},
      {"--detail most", "--detail"},
      {"--frames 0", "--frames"},
      {"--frames many", "--frames"},
      {"--draw-every 0", "--draw-every"},
      {"--screenshot view.png", "--screenshot: expected --frames N"},
      {"--frames 3 --screenshot nosuch/view.png", "--screenshot: expected a file in a folder that is there"},
      {"--script nosuch.txt", "nosuch.txt: expected a script"},
      {"--nosuch", "--nosuch"},
      {"--fly --card verify", "--fly: expected a flight that can be flown"},
  }));
  const Folder folder;
  check_one_line(run_cockpit(folder, std::string("--headless --silent ") + bad.arguments), 2, bad.words);
  CHECK(folder.listing().empty());
}

TEST_CASE("a bad line of a script is named by file and line before anything is flown", "[cockpit][cli]") {
  struct Bad {
    const char* text;
    const char* words;
  };
  const auto bad = GENERATE(values<Bad>({
      {"wait 1\nfly away\n", "bad.txt:2: expected key, hold, press"},
      {"# a comment\n\nkey Nosuch\n", "bad.txt:3: expected the name of a key"},
      {"hold Up\n", "bad.txt:1: expected a key and seconds"},
      {"hold Up long\n", "bad.txt:1: expected seconds"},
      {"wait -1\n", "bad.txt:1: expected seconds"},
      {"press\n", "bad.txt:1: expected something after press"},
      {"end now\n", "bad.txt:1: expected nothing after end"},
  }));
  const Folder folder;
  cli_test::put(folder / "bad.txt", bad.text);
  check_one_line(run_cockpit(folder, "--headless --silent --fly --script bad.txt"), 2, bad.words);
  CHECK(folder.listing() == "bad.txt\n");
}

TEST_CASE("a script that waits in vain ends with a line that names it", "[cockpit][cli][slow]") {
  const Folder folder;
  cli_test::put(folder / "vain.txt", "wait 1\nwait for no such words\n");
  check_one_line(
      run_cockpit(folder, "--headless --silent --size 640x360 --draw-every 100000 --script vain.txt"), 2,
      "vain.txt:2: expected these words on the screen");
}

TEST_CASE("without a screen the program says so in one line and ends", "[cockpit][cli]") {
  const Folder folder;
  const std::string nobody = std::string(app_test::kBare) + " DISPLAY=:3131 XDG_RUNTIME_DIR=\"$PWD\"";
  check_one_line(run_cockpit(folder, "--silent"), 3, "expected a screen, found none");
  check_one_line(run_cockpit(folder, "--silent", nobody), 3, "screen");
  CHECK(folder.listing().empty());
}

TEST_CASE("help and version come without a screen", "[cockpit][cli]") {
  const Folder folder;
  const Result help = run_cockpit(folder, "--help"), version = run_cockpit(folder, "--version");
  CHECK(help.status == 0);
  CHECK_THAT(help.out, Catch::Contains("not an approved training device") && Catch::Contains("--script"));
  CHECK(version.status == 0);
  CHECK_THAT(version.out, Catch::StartsWith("stallwright-cockpit "));
}
