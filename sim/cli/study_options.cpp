#include "sim/cli/study_options.hpp"

#include <charconv>
#include <fstream>
#include <iterator>

#include "aircraft/input_error.hpp"

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
  const OftenFlight often = often_flight(options.often);
  const fs::path recipe_file = find_recipe_file(options.recipe);
  MapSetup setup;
  setup.recipe = load_recipe(recipe_file);
  setup.base = often.base;
  setup.first_seed = options.often.first_seed();
  if (options.sorties > 0) setup.sorties = options.sorties;
  setup.aircraft_text = bytes_of(often.files.aircraft_file);
  setup.card_text = bytes_of(often.files.card_file);
  return map_plan(setup, recipe_file.string());
}

void add_study_options(CLI::App& command, StudyOptions& options) {
  add_flown_often(command, options.often, "cell");
  command
      .add_option("--recipe", options.recipe,
                  "What is flown: a name (" + joined_words(list_recipes()) + ") or a recipe file")
      ->type_name("NAME|FILE")
      ->capture_default_str();
  command.add_option("--sorties", options.sorties, "Sorties in each cell, instead of the recipe's numbers")
      ->type_name("N")
      ->check(CLI::Range(2, kMostSorties));
  command
      .add_option("--shard", options.shard, "Fly only part K of N of the blocks; `merge` puts parts together")
      ->type_name("K/N");
  command
      .add_option(
          "--out", options.out,
          "Folder of the study: new, empty, or this study's, which then goes on; without it nothing is kept")
      ->type_name("DIR");
  command.add_flag("--json", options.json, "Print study.json instead of the summary");
}

}  // namespace stallwright::cli
