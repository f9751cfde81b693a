#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

#include "aircraft/math/units.hpp"
#include "sim/report/whole_file.hpp"
#include "sim/study/map/map_plan.hpp"
#include "sim/study/map/recipe.hpp"
#include "tests/sim/cli/run_program.hpp"
#include "tests/sim/study/study_setup.hpp"

namespace stallwright {
namespace {

using cli_test::Folder;
using cli_test::text_of;

const std::string kPage = std::string(STALLWRIGHT_SOURCE_DIR) + "/assets/recipes/README.md";

std::string example() {
  const std::string text = text_of(kPage);
  const auto begin = text.find("```toml\n") + 8;
  return text.substr(begin, text.find("```", begin) - begin);
}

/// What the loader says of a text, without the place of the file; empty when it is a recipe.
std::string complaint(const std::string& text) {
  const Folder folder;
  write_whole_file(folder / "r.toml", text);
  try {
    load_recipe(folder / "r.toml");
  } catch (const InputError& e) {
    const std::string said = e.what();
    return said.substr(said.find("r.toml"));
  }
  return "";
}

std::string with(const std::string& what, const std::string& instead) {
  std::string text = example();
  const std::size_t at = text.find(what);
  if (at == std::string::npos) throw std::runtime_error("no " + what);
  return text.replace(at, what.size(), instead);
}

MapSetup setup_of(const std::string& recipe, const std::string& type) {
  MapSetup setup;
  setup.base = study_test::sortie(type, "current", "standard");
  setup.recipe = load_recipe(find_recipe_file(recipe));
  return setup;
}

}  // namespace

TEST_CASE("the default recipe is four airs by five pilots, 10000 sorties, and five cells with one change",
          "[study][recipe]") {
  for (const char* type : {"marram", "sarsen", "tarnfell"}) {
    INFO(type);
    const MapPlan plan = map_plan(setup_of("air-and-hands", type), "air-and-hands");
    CHECK(plan.map.cells.size() == 20);
    CHECK(plan.map.varied.size() == 6);
    int sorties = 0;
    for (const MapCell& cell : plan.map.cells) sorties += cell.sorties;
    CHECK(sorties == 10000);
    CHECK(plan.map.cells[plan.map.base_cell].key == "13-light-current");
    CHECK(plan.configs.size() == 26);
    CHECK(plan.configs[20].card.points.back().entry_rate_ktps == 0.5);
    CHECK(plan.configs[22].instruments.name == "ideal");
    const auto mass_kg = [&](std::size_t i) {
      return mass_properties(plan.configs[i].type, plan.configs[i].loading).mass_kg;
    };
    CHECK(mass_kg(23) < mass_kg(0));
    CHECK_THAT(mass_kg(24), Catch::WithinAbs(plan.configs[0].type.mass.max_kg, 1e-6));
    CHECK(check_envelope(plan.configs[23].type, plan.configs[23].loading).empty());
    CHECK(plan.configs[25].air.severity == Severity::kModerate);
    CHECK(plan.map.varied[5].key == "26-light-current-air-moderate");
  }
}

TEST_CASE("slight air has half the gusts of light air at 3000 ft, lively air half as much again",
          "[study][recipe]") {
  const Recipe recipe = load_recipe(find_recipe_file("air-and-hands"));
  REQUIRE(recipe.airs.at(1).name == "slight");
  const double light_mps = severity_sigma_kt(Severity::kLight, 3000.0 * kFoot) * kKnot;
  CHECK_THAT(recipe.airs[1].preset.sigma_mps, Catch::WithinRel(0.5 * light_mps, 0.01));
  REQUIRE(recipe.airs.at(3).name == "lively");
  CHECK_THAT(recipe.airs[3].preset.sigma_mps, Catch::WithinRel(1.5 * light_mps, 0.01));
}

TEST_CASE("the recipe of hours has the airs of one day", "[study][recipe]") {
  const Recipe recipe = load_recipe(find_recipe_file("hours"));
  CHECK(recipe.airs.at(0).name == "day 06:00");
  CHECK(recipe.airs.at(0).preset.convection->hour == 6.0);
  CHECK(recipe.airs.at(5).preset.convection->hour == 14.0);
  CHECK_FALSE(recipe.varied);
}

TEST_CASE("the page on recipes lists every field that the loader knows with its unit and range, and no other",
          "[study][recipe]") {
  const Folder folder;
  write_whole_file(folder / "r.toml", example() + "\n[sobol]\nbase = 64\n");
  std::vector<KnownField> known;
  const Recipe recipe = load_recipe(folder / "r.toml", known);
  CHECK(recipe.sobol_base == 64);
  CHECK(recipe.airs.size() == 3);
  std::map<std::string, std::vector<std::string>> rows;
  std::istringstream page(text_of(kPage));
  for (std::string line; std::getline(page, line) && line != "## What comes of it";) {
    if (line.rfind("| `", 0) != 0) continue;
    const std::size_t end = line.find('`', 3);
    std::istringstream cells(line.substr(end + 3));
    std::string unit, range;
    std::getline(cells, unit, '|');
    std::getline(cells, range, '|');
    rows[line.substr(3, end - 3)] = {unit.substr(1, unit.size() - 2), range.substr(1, range.size() - 2)};
  }
  std::set<std::string> of_loader;
  for (const KnownField& field : known) {
    INFO(field.path);
    of_loader.insert(field.path);
    REQUIRE(rows.count(field.path) == 1);
    CHECK(rows[field.path][0] == (field.unit.empty() ? "-" : field.unit));
    if (field.path == "varied.air" || field.path == "varied.pilot") continue;  // what the recipe itself names
    if (field.range.find("tables") == std::string::npos) CHECK(rows[field.path][1] == field.range);
  }
  CHECK(rows.size() == of_loader.size());
}

TEST_CASE("a recipe that is wrong is refused with file, line, what was expected and what was found",
          "[study][recipe]") {
  CHECK(complaint(example()) == "");
  const auto refused = [](const std::string& what, const std::string& instead,
                          const std::vector<std::string>& words) {
    const std::string said = complaint(with(what, instead));
    INFO(instead << "\n" << said);
    CHECK(said.rfind("r.toml:", 0) == 0);
    CHECK(std::count(said.begin(), said.end(), '\n') == 0);
    for (const std::string& word : words) CHECK(said.find(word) != std::string::npos);
  };
  refused("stallwright-recipe-1", "stallwright-card-1", {":1:", "format", "stallwright-recipe-1"});
  refused("sorties = 200", "sorties = 1", {":6:", "map.sorties", "2 to 50000", "found 1"});
  refused("sorties = 200", "sorties = 2.5", {":6:", "a whole number", "found 2.5"});
  refused("sorties = 200", "sortie = 200", {":6:", "perhaps sorties"});
  refused("pilots = [\"current\", \"rusty\"]", "pilots = [\"current\", \"tired\"]",
          {":7:", "sharp-current", "tired"});
  refused("pilots = [\"current\", \"rusty\"]", "pilots = [\"rusty\", \"rusty\"]",
          {":7:", "each once", "again"});
  refused("pilots = [\"current\", \"rusty\"]", "pilots = []", {":7:", "a list of 1 to 12 texts"});
  refused("pilots = [\"current\", \"rusty\"]", "pilots = \"rusty\"", {":7:", "a list", "\"rusty\""});
  refused("use = \"calm\"", "use = \"clam\"", {":10:", "air[1].use", "perhaps calm"});
  refused("use = \"calm\"", "use = \"calm:07:00\"", {":10:", "convection"});
  refused("use = \"calm\"", "use = \"calm\"\nsigma_mps = 1", {":11:", "either use", "both"});
  refused("use = \"calm\"", "use = \"day:14:00\"", {"not there yet", "day 14:00"});
  refused("sigma_mps = 0.8", "sigma_mps = -0.8", {":17:", "0 to 20 m/s", "-0.8"});
  refused("air = \"calm\"", "air = \"light\"", {"varied.air", "calm, day 14:00, gusty", "light"});
  refused("entry_rates_ktps = [0.5, 2.0]", "entry_rates_ktps = [2.0, 0.5]", {"rise"});
  refused("sensors = [\"ideal\"]", "sensors = [\"good\"]", {"varied.sensors", "ideal", "standard", "good"});
  CHECK_THAT(complaint("format = "), Catch::Contains("not TOML"));
}

TEST_CASE("a loading that the aeroplane cannot take is refused naming the recipe", "[study][recipe]") {
  MapSetup setup = setup_of("air-and-hands", "marram");
  setup.recipe.varied->loadings = {"third seat=80"};
  CHECK_THROWS_WITH(map_plan(setup, "mine.toml"), Catch::Contains("mine.toml: varied.loadings") &&
                                                      Catch::Contains("front seat") &&
                                                      Catch::Contains("third seat"));
  setup.recipe.varied->loadings = {"front seat=60, rear seat=0"};
  setup.recipe.varied->airs.clear();
  CHECK(map_plan(setup, "mine.toml").configs.back().loading.kg[0] == 60.0);
}

TEST_CASE("recipes are found by name or path, and an unknown name lists the known ones", "[study][recipe]") {
  CHECK(list_recipes() == std::vector<std::string>{"air-and-hands", "hours"});
  CHECK(find_recipe_file("mine.toml") == "mine.toml");
  CHECK_THROWS_WITH(find_recipe_file("hour"),
                    Catch::Contains("air-and-hands, hours") && Catch::Contains("perhaps hours"));
}

}  // namespace stallwright
