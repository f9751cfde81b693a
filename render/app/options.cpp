#include "render/app/options.hpp"

#include <CLI/CLI.hpp>
#include <cerrno>
#include <cstdlib>

#include "aircraft/input_error.hpp"
#include "aircraft/type_file.hpp"
#include "sim/reduction/set_points_json.hpp"
#include "sim/report/sortie_json.hpp"
#include "sim/sortie/test_card_file.hpp"

namespace stallwright::app {
namespace {

namespace fs = std::filesystem;

constexpr const char* kAbout =
    "Fly a test card by hand and be debriefed on what came of it.\n"
    "A rehearsal aid, not an approved training device: the flight manual, local rules and a qualified "
    "instructor govern.";

constexpr const char* kFooter =
    "Examples:\n"
    "  stallwright-cockpit\n"
    "  stallwright-cockpit --fly --air light --seed 3\n"
    "  stallwright-cockpit --debrief sorties/calm\n"
    "  stallwright-cockpit --headless --fly --demonstrate sharp --frames 200 --screenshot view.png\n\n"
    "Without a screen nothing opens unless --headless is given. --script and --frames fly in step with the "
    "frames, 25 a\n"
    "second, so the same script gives the same flight. What a script can say stands in "
    "render/app/script.hpp.\n"
    "Exit status: 0; 2 bad input or a wrong option; 3 a failure of the program.";

fs::path settings_folder() {
  if (const char* home = std::getenv("XDG_CONFIG_HOME"); home != nullptr && *home != '\0')
    return fs::path(home) / "stallwright";
  if (const char* home = std::getenv("HOME"); home != nullptr && *home != '\0')
    return fs::path(home) / ".config" / "stallwright";
  return ".stallwright";
}

void set_size(const std::string& text, Options& options) {
  int width = 0, height = 0;
  char rest = 0;
  if (std::sscanf(text.c_str(), "%dx%d%c", &width, &height, &rest) != 2 || width < 640 || height < 360 ||
      width > 7680 || height > 4320)
    throw InputError("--size: expected WIDTHxHEIGHT from 640x360 to 7680x4320, found \"" + text + "\"");
  options.width = width;
  options.height = height;
  options.size_given = true;
}

std::uint64_t seed_in(const std::string& text) {
  char* end = nullptr;
  errno = 0;
  const std::uint64_t seed = std::strtoull(text.c_str(), &end, 10);
  const bool digits = text.front() >= '0' && text.front() <= '9';
  if (!digits || *end != '\0' || errno == ERANGE)
    throw InputError("--seed: expected a whole number from 0 to 18446744073709551615, found \"" + text +
                     "\"");
  return seed;
}

/// What was asked for by name is known before a window opens.
void require_air(const std::string& name) {
  std::string known;
  for (const auto& entry : fs::directory_iterator(fs::path(STALLWRIGHT_SOURCE_DIR) / "assets" / "air")) {
    if (entry.path().extension() != ".toml") continue;
    if (entry.path().stem() == name) return;
    known += (known.empty() ? "" : ", ") + entry.path().stem().string();
  }
  throw InputError("--air: expected one of " + known + ", found \"" + name + "\"");
}

void require_picture(const Options& options) {
  if (options.screenshot.empty()) return;
  if (options.frames == 0) throw InputError("--screenshot: expected --frames N with it, found none");
  const fs::path folder = fs::absolute(options.screenshot).parent_path();
  if (!fs::is_directory(folder))
    throw InputError("--screenshot: expected a file in a folder that is there, found " +
                     options.screenshot.string());
}

}  // namespace

Options read_options(int argc, char** argv) {
  Options o;
  std::string aircraft, card, air, demonstrate, size, settings, debrief, replay, seed, set_points;
  double hour = 0.0;
  CLI::App app(kAbout, "stallwright-cockpit");
  app.footer(kFooter);
  app.set_version_flag("--version", "stallwright-cockpit " STALLWRIGHT_VERSION);
  app.add_option("--aircraft", aircraft, "Aeroplane to choose")->type_name("NAME");
  app.add_option("--card", card, "Card to choose: a name, or a file")->type_name("NAME|FILE");
  app.add_option("--set-points", set_points,
                 "With a card that verifies: sortie folder whose set points it listens to")
      ->type_name("DIR");
  app.add_option("--air", air, "Air to choose: calm, light, moderate, severe, day")->type_name("NAME");
  const CLI::Option* hour_option = app.add_option("--hour", hour, "Local solar time, 5 to 20")
                                       ->check(CLI::Range(5.0, 20.0))
                                       ->type_name("H");
  app.add_option("--seed", seed, "Number that draws air and sensor errors")->type_name("N");
  app.add_flag("--fly", o.fly_at_once, "Fly at once, without the start page");
  app.add_option("--demonstrate", demonstrate, "The simulated pilot flies: sharp, current or rusty")
      ->type_name("GRADE");
  app.add_option("--debrief", debrief, "Open the debrief of a sortie folder")->type_name("DIR");
  app.add_option("--replay", replay, "Open the replay of a sortie folder")->type_name("DIR");
  app.add_option("--sorties", o.sorties, "Folder that sorties go into")
      ->capture_default_str()
      ->type_name("DIR");
  app.add_option("--settings", settings, "Folder of what is remembered")->type_name("DIR");
  app.add_option("--size", size, "Size of the window in pixels")->type_name("WxH");
  app.add_option("--scale", o.scale,
                 "Size of type and dials, 1 at 1280x720; otherwise by the window's height")
      ->check(CLI::Range(0.8, 4.0))
      ->type_name("S");
  app.add_flag("--full-screen", o.full_screen, "Fill the screen");
  app.add_option("--detail", o.detail, "How much of the world is drawn: auto, full, lean, bare")
      ->check(CLI::IsMember({"auto", "full", "lean", "bare"}))
      ->capture_default_str()
      ->type_name("NAME");
  app.add_flag("--silent", o.silent, "Open no sound");
  app.add_flag("--headless", o.headless, "Draw without a screen");
  app.add_option("--frames", o.frames, "Draw N frames, then end")
      ->check(CLI::Range(1L, 10000000L))
      ->type_name("N");
  app.add_option("--screenshot", o.screenshot, "Write the last frame as a picture")->type_name("FILE.png");
  app.add_option("--script", o.script, "Keys and presses from a file")->type_name("FILE");
  app.add_option("--draw-every", o.draw_every,
                 "With a script: draw but every N frames, and those that a picture is taken of")
      ->check(CLI::Range(1L, 100000L))
      ->type_name("N");
  app.add_flag("--times", o.times, "Print frame times at the end");
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& e) {
    if (e.get_exit_code() == 0) {
      app.exit(e);
      std::exit(0);
    }
    throw InputError(std::string(e.what()) + " (--help tells the options)");
  }
  if (!aircraft.empty()) load_aircraft_type(find_aircraft_file(aircraft));
  if (!card.empty()) load_test_card(find_card_file(card));
  if (!air.empty()) require_air(air);
  if (!set_points.empty()) read_set_points(fs::path(set_points) / "set-points.json");
  for (const std::string& folder : {debrief, replay})
    if (!folder.empty()) read_sortie(folder);
  require_picture(o);
  o.settings = settings.empty() ? settings_folder() : fs::path(settings);
  try {
    o.choice = view::read_start_choice(o.settings / "start.toml");
  } catch (const InputError& e) {
    o.notice = e.what();
  }
  if (!aircraft.empty()) o.choice.aircraft = aircraft;
  if (!card.empty()) {
    const bool file = card.find('/') != std::string::npos || card.ends_with(".toml");
    o.choice.card = file ? "own" : card;
    if (file) o.choice.own_card = card;
  }
  if (!set_points.empty()) o.choice.set_points = set_points;
  if (!air.empty()) o.choice.air = air;
  if (hour_option->count() > 0) o.choice.hour = hour;
  if (!seed.empty()) o.choice.seed = seed_in(seed);
  if (!demonstrate.empty()) {
    if (demonstrate != "sharp" && demonstrate != "current" && demonstrate != "rusty")
      throw InputError("--demonstrate: expected sharp, current or rusty, found \"" + demonstrate + "\"");
    o.choice.flown_by = demonstrate;
  }
  if (!size.empty()) set_size(size, o);
  if (!debrief.empty()) o.debrief = debrief;
  if (!replay.empty()) o.replay = replay;
  return o;
}

}  // namespace stallwright::app
