#include "sim/cli/reduce_command.hpp"

#include <algorithm>
#include <iostream>
#include <memory>

#include "aircraft/input_error.hpp"
#include "sim/cli/cli_common.hpp"
#include "sim/cli/own_log_command.hpp"
#include "sim/cli/set_point_listing.hpp"
#include "sim/reduction/combine_sorties.hpp"
#include "sim/reduction/set_points_json.hpp"
#include "sim/report/sortie_folder.hpp"
#include "sim/report/whole_file.hpp"
#include "sim/sortie/test_card_file.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;

struct Options {
  std::vector<std::string> logs;
  std::string card, sensors, out;
  bool json = false;
  cli::OwnLogOptions own;
};

struct Source {
  fs::path log, card;
  std::string sensors = "standard", aircraft;
};

/// A folder brings its own card, and says which instruments the recorder read; so does the folder that a log
/// lies in.
Source find_source(const Options& options, const fs::path& given) {
  Source source;
  std::error_code error;
  source.log = fs::is_directory(given, error) ? given / "log.csv" : given;
  if (!fs::exists(source.log, error))
    throw InputError(source.log.string() + ": expected a log, found no such file");
  const fs::path folder = source.log.parent_path();
  source.card = options.card.empty() ? folder / "card.toml" : find_card_file(options.card);
  if (options.card.empty() && !fs::exists(source.card, error))
    throw InputError("--card: expected the card that was flown, found none beside the log (no " +
                     source.card.string() + ")");
  if (fs::exists(folder / "sortie.json", error)) {
    const FlownSortie flown = read_sortie(folder);
    source.sensors = flown.config.instruments.name;
    source.aircraft = flown.config.type.name;
  }
  if (!options.sensors.empty()) source.sensors = options.sensors;
  return source;
}

/// One log on its own.
SetPoints reduced(const Source& source, const TestCard& card) {
  SetPoints set_points =
      reduce_log(read_flight_log(source.log, card), card, instrument_grade(source.sensors));
  set_points.aircraft = source.aircraft;
  return set_points;
}

int reduce_command(const Options& options) {
  if (!options.own.columns.empty()) {
    if (options.logs.size() != 1)
      throw InputError("--columns: expected one log with it, found " + std::to_string(options.logs.size()));
    return cli::reduce_own_log_command(
        options.own, {options.logs.front(), options.card, options.sensors, options.out, options.json});
  }
  cli::refuse_without_columns(options.own);
  std::vector<SetPoints> sorties;
  std::vector<fs::path> logs;
  std::string sensors;
  TestCard card;
  std::error_code error;
  for (const std::string& log : options.logs) {
    const Source source = find_source(options, log);
    const TestCard flown = load_test_card(source.card);
    if (flown.verifies)
      throw InputError(source.card.string() + ": expected a card that teaches, found one that verifies");
    for (const fs::path& other : logs)
      if (fs::equivalent(other, source.log, error))
        throw InputError(log + ": expected a sortie of its own, found one that is given twice");
    if (sorties.empty()) card = flown;
    if (!sorties.empty() && sensors != source.sensors)
      throw InputError(log + ": expected " + sensors + " sensors as in the sortie before, found " +
                       source.sensors + " (--sensors names one grade for all)");
    sensors = source.sensors;
    logs.push_back(source.log);
    cli::require_writable_place("--out", options.out, {source.log, source.card});
    sorties.push_back(reduced(source, flown));
  }
  const SetPoints set_points = combine_sorties(sorties, options.logs, card);
  const std::string text = set_points_to_json(set_points);
  if (!options.out.empty()) write_whole_file(options.out, text);
  std::cout << (options.json ? text
                             : cli::set_point_listing(set_points, sensors, card.wanted_uncertainty_kt));
  return cli::all_found(set_points) ? cli::kYes : cli::kNo;
}

}  // namespace

void add_reduce_command(CLI::App& app, int& exit_code) {
  const auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand(
      "reduce", "Turn a recorded log into set points with uncertainty, from the log and its card alone");
  command
      ->add_option(
          "LOG", options->logs,
          "log.csv, or a sortie folder that has one; several sorties of one card with one aeroplane, on "
          "other days and at other masses, are made into one; with --columns any recorder's log")
      ->required()
      ->type_name("");
  command->add_option("--card", options->card, "Test card that was flown; otherwise card.toml beside the log")
      ->type_name("NAME|FILE");
  command
      ->add_option(
          "--sensors", options->sensors,
          "Whose errors stand in the budget: ideal or standard; otherwise as sortie.json says, or standard")
      ->type_name("NAME");
  command->add_option("--out", options->out, "Write set-points.json here; an older file is replaced")
      ->type_name("FILE");
  command->add_flag("--json", options->json, "Print the text of set-points.json instead of the table");
  cli::add_own_log_options(*command, options->own);
  command->footer(
      cli::footer("  stallwright reduce sorties/light\n"
                  "  stallwright reduce sorties/monday sorties/tuesday --out set-points.json\n"
                  "  stallwright reduce flight.csv --columns map.toml --card short --windows windows.toml\n"
                  "  stallwright reduce log.csv --card short --out set-points.json\n"));
  command->callback([options, &exit_code] { exit_code = reduce_command(*options); });
}

}  // namespace stallwright
