#include "sim/cli/study_command.hpp"

#include <unistd.h>

#include <charconv>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <memory>

#include "aircraft/input_error.hpp"
#include "sim/cli/cli_common.hpp"
#include "sim/cli/stop_request.hpp"
#include "sim/cli/study_intervals_command.hpp"
#include "sim/cli/study_map_text.hpp"
#include "sim/cli/study_merge_command.hpp"
#include "sim/cli/study_place_command.hpp"
#include "sim/cli/study_progress.hpp"
#include "sim/sortie/card_check.hpp"
#include "sim/study/map/fly_map.hpp"
#include "sim/study/map/map_json.hpp"
#include "sim/study/map/study_folder.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;

struct Options {
  cli::FlightOptions flight;
  std::string recipe = "air-and-hands", sensors = "standard", seed = "1", airframe_seed = "1", out, shard;
  int sorties = 0, threads = 0;
  bool json = false, out_given = false;
};

std::string bytes_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// K/N, 1 to N.
void read_shard(const std::string& text, MapOrder& order) {
  if (text.empty()) return;
  const char *begin = text.data(), *end = begin + text.size();
  const auto first = std::from_chars(begin, end, order.shard);
  const bool slash = first.ec == std::errc() && first.ptr != end && *first.ptr == '/';
  const auto second = slash ? std::from_chars(first.ptr + 1, end, order.shards) : first;
  if (!slash || second.ec != std::errc() || second.ptr != end || order.shard < 1 ||
      order.shards < order.shard)
    throw InputError("--shard: expected K/N with 1 <= K <= N, found \"" + text + "\"");
}

MapPlan read_plan_of(const Options& options) {
  const cli::Flight flight = cli::read_flight(options.flight);
  const std::vector<std::string> problems = card_check(flight.card, flight.type);
  if (!problems.empty())
    throw InputError(flight.card_file.string() + ": expected a card that " + flight.type.name +
                     " can fly, found " + problems.front());
  if (flight.card.verifies)
    throw InputError(flight.card_file.string() + ": expected a card that teaches, found one that verifies");
  const fs::path recipe_file = find_recipe_file(options.recipe);
  MapSetup setup;
  setup.recipe = load_recipe(recipe_file);
  setup.base.type = flight.type;
  setup.base.loading = flight.loading;
  setup.base.card = flight.card;
  setup.base.instruments = instrument_grade(options.sensors);
  setup.base.airframe_seed = cli::seed_from("--airframe-seed", options.airframe_seed);
  setup.first_seed = cli::seed_from("--seed", options.seed);
  if (options.sorties > 0) setup.sorties = options.sorties;
  setup.aircraft_text = bytes_of(flight.aircraft_file);
  setup.card_text = bytes_of(flight.card_file);
  return map_plan(setup, recipe_file.string());
}

/// Where blocks lie when nobody wants to keep them; goes away with what is in it.
class PassingFolder {
 public:
  PassingFolder() {
    std::string name = (fs::temp_directory_path() / "stallwright-study-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error(name + ": cannot make a folder");
    path_ = name;
  }
  ~PassingFolder() {
    std::error_code error;
    fs::remove_all(path_, error);
  }
  PassingFolder(const PassingFolder&) = delete;
  PassingFolder& operator=(const PassingFolder&) = delete;
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

std::string blocks_words(int blocks) { return std::to_string(blocks) + (blocks == 1 ? " block" : " blocks"); }

void tell_kept(const MapRun& run) {
  if (run.kept > 0)
    std::cerr << "stallwright: " << blocks_words(run.kept) << " of " << run.wanted << " there before, kept\n";
  if (run.damaged > 0) std::cerr << "stallwright: " << blocks_words(run.damaged) << " damaged, flown again\n";
}

int tell_stopped(const MapRun& run, const Options& options) {
  const std::string kept = blocks_words(run.kept + run.flown) + " of " + std::to_string(run.wanted);
  std::cerr << "stallwright: stopped; "
            << (options.out_given
                    ? kept + " are kept in " + options.out + ", the same command goes on from there"
                    : "nothing is kept without --out")
            << '\n';
  return cli::kStopped;
}

int study(const Options& options) {
  MapPlan plan = read_plan_of(options);
  MapOrder order;
  read_shard(options.shard, order);
  if (!options.shard.empty() && !options.out_given)
    throw InputError("--shard: expected --out with it, since the shards are merged later; found none");
  std::optional<PassingFolder> passing;
  if (!options.out_given) passing.emplace();
  order.folder = passing ? passing->path() : fs::path(options.out);
  order.threads = options.threads;
  order.progress = cli::progress_line();
  const cli::StopRequest request;
  order.stop = &request.stop();
  const MapRun run = fly_map(plan, order);
  tell_kept(run);
  if (!run.complete()) return tell_stopped(run, options);
  if (order.shards > 1) {
    std::cout << "Shard " << order.shard << " of " << order.shards << ": " << blocks_words(run.wanted)
              << " in " << options.out << ". Tables come with `stallwright study merge`.\n";
    return cli::kYes;
  }
  if (passing)
    read_results(order.folder, plan.map);
  else
    write_tables(order.folder, plan.map);
  std::cout << (options.json ? map_to_json(plan.map) : cli::map_text(plan.map));
  return cli::kYes;
}

void add_options(CLI::App& command, Options& options) {
  cli::add_flight_options(command, options.flight);
  command
      .add_option("--recipe", options.recipe,
                  "What is flown: a name (" + joined_words(list_recipes()) + ") or a recipe file")
      ->type_name("NAME|FILE")
      ->capture_default_str();
  command.add_option("--sorties", options.sorties, "Sorties in each cell, instead of the recipe's numbers")
      ->type_name("N")
      ->check(CLI::Range(2, kMostSorties));
  command
      .add_option("--seed", options.seed,
                  "Seed of the first sortie of each cell; the others count up from it")
      ->type_name("S")
      ->capture_default_str();
  command
      .add_option("--threads", options.threads,
                  "Threads; 0: as many as the machine has. The result does not depend on it")
      ->type_name("T")
      ->check(CLI::Range(0, 1024))
      ->capture_default_str();
  command
      .add_option("--shard", options.shard, "Fly only part K of N of the blocks; `merge` puts parts together")
      ->type_name("K/N");
  command.add_option("--sensors", options.sensors, "Instruments: ideal or standard")
      ->type_name("NAME")
      ->capture_default_str();
  command
      .add_option("--airframe-seed", options.airframe_seed,
                  "Number that draws the airframe's own small differences; 0: a perfectly even one")
      ->type_name("N")
      ->capture_default_str();
  command
      .add_option(
          "--out", options.out,
          "Folder of the study: new, empty, or this study's, which then goes on; without it nothing is kept")
      ->type_name("DIR");
  command.add_flag("--json", options.json, "Print study.json instead of the summary");
}

}  // namespace

void add_study_command(CLI::App& app, int& exit_code) {
  const auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand(
      "study",
      "How much does rough air cost? Fly a card thousands of times over airs and pilots, and map the errors");
  add_options(*command, *options);
  command->require_subcommand(0, 1);
  add_study_merge_command(*command, exit_code);
  add_study_place_command(*command, exit_code);
  add_study_intervals_command(*command, exit_code);
  command->footer(
      cli::footer("  stallwright study --out study\n"
                  "  stallwright study --recipe hours --sorties 50 --out hours\n"
                  "  stallwright study --out part-1 --shard 1/2   (and --out part-2 --shard 2/2 elsewhere)\n"
                  "  stallwright study merge part-1 part-2 --out study\n\n"
                  "Ctrl-C ends it with exit status 130; what is finished is kept, and the same command goes "
                  "on from there.\n"));
  command->callback([options, command, &exit_code] {
    if (!command->get_subcommands().empty()) return;
    options->out_given = command->count("--out") > 0;
    exit_code = study(*options);
  });
}

}  // namespace stallwright
