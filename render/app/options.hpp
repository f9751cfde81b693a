#pragma once
#include <filesystem>
#include <optional>
#include <string>

#include "render/view/start_choice.hpp"

namespace stallwright::app {

/// What the command line of `stallwright-cockpit` says. What it leaves out is NaN, empty or none.
struct Options {
  view::StartChoice choice;                              ///< the remembered one, changed by the options given
  bool fly_at_once = false;                              ///< without the start page
  std::optional<std::filesystem::path> debrief, replay;  ///< a sortie folder to open
  std::filesystem::path sorties = "sorties";
  std::filesystem::path settings;  ///< folder of hands.toml and start.toml
  std::string notice;              ///< why a remembered choice does not apply
  int width = 1280, height = 720;
  double scale = 0.0;  ///< of type and dials; 0: by the window's height
  bool size_given = false;
  bool headless = false, full_screen = false, silent = false;
  std::string detail = "auto";  ///< auto, full, lean, bare
  std::filesystem::path screenshot, script;
  long frames = 0;      ///< draw so many, then end; 0: until the pilot ends it
  long draw_every = 1;  ///< draw but every so many frames, and those that a picture is taken of
  bool times = false;   ///< print frame times at the end
};

/// Reads them. Throws InputError for a bad one; CLI::ParseError for help and wrong options.
Options read_options(int argc, char** argv);

}  // namespace stallwright::app
