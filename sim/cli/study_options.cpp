#include "sim/cli/study_options.hpp"

#include <charconv>
#include <fstream>
#include <iterator>

#include "aircraft/input_error.hpp"
#include "sim/sortie/card_check.hpp"

namespace stallwright::cli {
namespace {

namespace fs = std::filesystem;

std::string bytes_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

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

MapPlan study_plan(const StudyOptions& options) {
  const Flight flight = read_flight(options.flight);
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
  setup.base.airframe_seed = seed_from("--airframe-seed", options.airframe_seed);
  setup.first_seed = seed_from("--seed", options.seed);
  if (options.sorties > 0) setup.sorties = options.sorties;
  setup.aircraft_text = bytes_of(flight.aircraft_file);
  setup.card_text = bytes_of(flight.card_file);
  return map_plan(setup, recipe_file.string());
}

void add_study_options(CLI::App& command, StudyOptions& options) {
  add_flight_options(command, options.flight);
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

}  // namespace stallwright::cli
