#include "sim/cli/study_intervals_command.hpp"

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <memory>

#include "aircraft/input_error.hpp"
#include "sim/cli/flown_often.hpp"
#include "sim/cli/study_progress.hpp"
#include "sim/cli/study_report.hpp"
#include "sim/report/whole_file.hpp"
#include "sim/study/criteria.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;

struct Options {
  cli::FlownOften often;
  std::vector<std::string> airs{"calm", "light", "moderate"};
  std::string pilot = "current", out;
  int sorties = 200;
  double entry_rate_ktps = kUnset;
  bool json = false;
};

/// Before hundreds of sorties are flown for it.
void require_writable_place(const fs::path& file) {
  std::error_code error;
  const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path(".");
  if (fs::is_directory(file, error))
    throw InputError("--out: expected a file, found the folder " + file.string());
  if (!fs::is_directory(folder, error))
    throw InputError("--out: expected a file in a folder that exists, found " + file.string());
}

StudyConfig study_config(const Options& options) {
  StudyConfig config;
  config.base = cli::often_flight(options.often).base;
  config.base.pilot = pilot_grade(options.pilot);
  if (options.entry_rate_ktps == options.entry_rate_ktps)
    for (TestPoint& point : config.base.card.points)
      if (point.is_stall()) point.entry_rate_ktps = options.entry_rate_ktps;
  config.sorties = options.sorties;
  config.first_seed = options.often.first_seed();
  config.threads = options.often.threads;
  for (const std::string& option : options.airs) {
    const NamedAir air = find_air(option);
    config.airs.push_back(air.preset);
    if (air.hour) config.airs.back().name = air.label;
  }
  return config;
}

int study(const Options& options) {
  const StudyConfig config = study_config(options);
  if (!options.out.empty()) require_writable_place(options.out);
  const Study result = run_study(config, cli::progress_line());
  const std::string text = options.json ? cli::study_json(result) : cli::study_text(result);
  if (options.out.empty())
    std::cout << text;
  else
    write_whole_file(options.out, text);
  const std::vector<Criterion> criteria = study_criteria(result);
  return std::all_of(criteria.begin(), criteria.end(), [](const Criterion& c) { return c.holds; }) ? cli::kYes
                                                                                                   : cli::kNo;
}

}  // namespace

void add_study_intervals_command(CLI::App& study_command, int& exit_code) {
  const auto options = std::make_shared<Options>();
  CLI::App* command = study_command.add_subcommand(
      "intervals",
      "Fly a card many times in several airs: how far off the set points are, and whether intervals keep "
      "their word");
  cli::add_flown_often(*command, options->often, "air");
  command
      ->add_option("--air", options->airs,
                   "Air: calm, light, moderate, severe, day:HH:MM, or a weather file; repeatable")
      ->type_name("NAME|FILE")
      ->allow_extra_args(false)
      ->capture_default_str();
  command->add_option("--pilot", options->pilot, std::string("How current the hands are: ") + kPilotGrades)
      ->type_name("NAME")
      ->capture_default_str();
  command->add_option("--sorties", options->sorties, "Sorties in each air")
      ->type_name("N")
      ->check(CLI::Range(2, 100000))
      ->capture_default_str();
  command
      ->add_option("--entry-rate", options->entry_rate_ktps,
                   "Entry rate of every stall, instead of the card's, kt/s")
      ->type_name("KTPS")
      ->check(CLI::Range(0.2, 6.0));
  command->add_flag("--json", options->json, "Print JSON instead of the page");
  command->add_option("--out", options->out, "Write it into this file instead of printing it")
      ->type_name("FILE");
  command->footer(cli::footer(
      "  stallwright study intervals\n"
      "  stallwright study intervals --air calm --pilot sharp --sensors ideal --sorties 20\n"
      "  stallwright study intervals --aircraft tarnfell --entry-rate 3 --json --out tarnfell.json\n\n"
      "The answer is yes when every criterion below the tables holds. 200 sorties in three airs take\n"
      "some minutes.\n"));
  command->callback([options, &exit_code] { exit_code = study(*options); });
}

}  // namespace stallwright
