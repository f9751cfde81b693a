#include "sim/cli/study_intervals_command.hpp"

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <iostream>
#include <memory>

#include "aircraft/input_error.hpp"
#include "sim/cli/cli_common.hpp"
#include "sim/cli/study_progress.hpp"
#include "sim/cli/study_report.hpp"
#include "sim/report/whole_file.hpp"
#include "sim/sortie/card_check.hpp"
#include "sim/study/criteria.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;

struct Options {
  cli::FlightOptions flight;
  std::vector<std::string> airs{"calm", "light", "moderate"};
  std::string pilot = "current", sensors = "standard", out;
  int sorties = 200, threads = 0;
  std::uint64_t seed = 1, airframe_seed = 1;
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
  const cli::Flight flight = cli::read_flight(options.flight);
  const std::vector<std::string> problems = card_check(flight.card, flight.type);
  if (!problems.empty())
    throw InputError(flight.card_file.string() + ": expected a card that " + flight.type.name +
                     " can fly, found " + problems.front());
  if (flight.card.verifies)
    throw InputError(flight.card_file.string() + ": expected a card that teaches, found one that verifies");
  StudyConfig config;
  config.base.type = flight.type;
  config.base.loading = flight.loading;
  config.base.card = flight.card;
  config.base.pilot = pilot_grade(options.pilot);
  config.base.instruments = instrument_grade(options.sensors);
  config.base.airframe_seed = options.airframe_seed;
  if (options.entry_rate_ktps == options.entry_rate_ktps)
    for (TestPoint& point : config.base.card.points)
      if (point.is_stall()) point.entry_rate_ktps = options.entry_rate_ktps;
  config.sorties = options.sorties;
  config.first_seed = options.seed;
  config.threads = options.threads;
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

void add_counts(CLI::App& command, Options& options) {
  command.add_option("--sorties", options.sorties, "Sorties in each air")
      ->type_name("N")
      ->check(CLI::Range(2, 100000))
      ->capture_default_str();
  command.add_option("--seed", options.seed, "Seed of the first sortie; the others count up from it")
      ->type_name("N")
      ->capture_default_str();
  command
      .add_option("--threads", options.threads,
                  "Threads; 0: as many as the machine has. The result does not depend on it")
      ->type_name("N")
      ->check(CLI::Range(0, 1024))
      ->capture_default_str();
  command
      .add_option("--airframe-seed", options.airframe_seed,
                  "Number that draws the airframe's own small differences; 0: a perfectly even one")
      ->type_name("N")
      ->capture_default_str();
}

}  // namespace

void add_study_intervals_command(CLI::App& study_command, int& exit_code) {
  const auto options = std::make_shared<Options>();
  CLI::App* command = study_command.add_subcommand(
      "intervals",
      "Fly a card many times in several airs: how far off the set points are, and whether intervals keep "
      "their word");
  cli::add_flight_options(*command, options->flight);
  command
      ->add_option("--air", options->airs,
                   "Air: calm, light, moderate, severe, day:HH:MM, or a weather file; repeatable")
      ->type_name("NAME|FILE")
      ->allow_extra_args(false)
      ->capture_default_str();
  command->add_option("--pilot", options->pilot, std::string("How current the hands are: ") + kPilotGrades)
      ->type_name("NAME")
      ->capture_default_str();
  command->add_option("--sensors", options->sensors, "Instruments: ideal or standard")
      ->type_name("NAME")
      ->capture_default_str();
  add_counts(*command, *options);
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
