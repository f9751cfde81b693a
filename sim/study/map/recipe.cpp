#include "sim/study/map/recipe.hpp"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>

#include "sim/air/air_library.hpp"
#include "sim/crew/pilot_grade.hpp"
#include "sim/sensing/instrument_grade.hpp"

namespace stallwright {
namespace {

constexpr std::size_t kMostRows = 12, kLongestName = 40;
constexpr FileUnit kMetrePerSecond{"m/s", 1.0}, kKnotPerSecond{"kt/s", 1.0};

int whole(const TomlTable& table, const NumberField& field, int fallback) {
  const double value = table.number_or(field, fallback);
  if (value != std::floor(value)) table.reject(field.key, "a whole number", number_text(value));
  return static_cast<int>(value);
}

/// What another reader says of a value, at the line of the value.
template <class Read>
auto told_at(const TomlTable& table, const char* key, const std::string& found, const Read& read) {
  try {
    return read();
  } catch (const InputError& e) {
    table.reject(key, "a value that can be used (" + std::string(e.what()) + ")", "\"" + found + "\"");
  }
}

std::string bytes_of(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

RecipeAir named_air(const TomlTable& table, const char* key, const std::string& use) {
  const NamedAir named = told_at(table, key, use, [&] { return find_air(use); });
  return {named.label, named.preset, bytes_of(named.file) + (named.hour ? number_text(*named.hour) : "")};
}

RecipeAir read_air(const TomlTable& table) {
  for (const char* key : {"use", "name", "sigma_mps"}) table.announce(key);
  RecipeAir air;
  if (table.has("use")) {
    for (const char* key : {"name", "sigma_mps"})
      if (table.has(key)) table.reject(key, "either use, or name and sigma_mps", "both");
    return named_air(table, "use", table.text("use", 400));
  }
  air.name = table.text("name", kLongestName);
  air.preset.name = air.name;
  air.preset.severity.reset();
  air.preset.sigma_mps = table.number({"sigma_mps", kMetrePerSecond, 0.0, 20.0});
  air.source = air.name + " " + number_text(air.preset.sigma_mps);
  return air;
}

std::vector<RecipeAir> read_airs(const TomlTable& root) {
  std::vector<RecipeAir> airs;
  for (const TomlTable& table : root.tables("air", 1, kMostRows)) {
    airs.push_back(read_air(table));
    for (std::size_t i = 0; i + 1 < airs.size(); ++i)
      if (airs[i].name == airs.back().name)
        table.reject(table.has("use") ? "use" : "name", "an air that is not there yet",
                     "\"" + airs[i].name + "\" again");
  }
  return airs;
}

/// Texts of which each may stand once.
std::vector<std::string> different(const TomlTable& table, const char* key, std::size_t longest,
                                   std::size_t least) {
  std::vector<std::string> out = table.texts(key, longest, {.least = least, .most = kMostRows});
  for (std::size_t i = 0; i < out.size(); ++i)
    if (std::count(out.begin(), out.end(), out[i]) > 1)
      table.reject(key, "each once", "\"" + out[i] + "\" again");
  return out;
}

std::vector<std::string> read_pilots(const TomlTable& table) {
  std::vector<std::string> pilots = different(table, "pilots", kLongestName, 1);
  for (const std::string& pilot : pilots) told_at(table, "pilots", pilot, [&] { return pilot_grade(pilot); });
  return pilots;
}

RecipeVaried read_varied(const TomlTable& table, const Recipe& recipe) {
  for (const char* key : {"sorties", "air", "pilot", "entry_rates_ktps", "sensors", "loadings", "airs"})
    table.announce(key);
  RecipeVaried varied;
  varied.sorties = whole(table, {"sorties", unit::kNone, 2, kMostSorties}, varied.sorties);
  std::vector<std::string> airs;
  for (const RecipeAir& air : recipe.airs) airs.push_back(air.name);
  const std::string air = table.choice("air", airs), pilot = table.choice("pilot", recipe.pilots);
  varied.air = static_cast<std::size_t>(std::find(airs.begin(), airs.end(), air) - airs.begin());
  varied.pilot = static_cast<std::size_t>(std::find(recipe.pilots.begin(), recipe.pilots.end(), pilot) -
                                          recipe.pilots.begin());
  if (table.has("entry_rates_ktps"))
    varied.entry_rates_ktps = table.numbers({"entry_rates_ktps", kKnotPerSecond, 0.2, 6.0},
                                            {.least = 1, .most = kMostRows, .rising = true});
  if (table.has("sensors")) varied.sensors = different(table, "sensors", kLongestName, 1);
  for (const std::string& grade : varied.sensors)
    told_at(table, "sensors", grade, [&] { return instrument_grade(grade); });
  if (table.has("loadings")) varied.loadings = different(table, "loadings", 400, 1);
  if (table.has("airs"))
    for (const std::string& use : different(table, "airs", 400, 1))
      varied.airs.push_back(named_air(table, "airs", use));
  return varied;
}

}  // namespace

Recipe load_recipe(const std::filesystem::path& file, std::vector<KnownField>& known) {
  const TomlDocument document(file);
  const TomlTable root = document.root();
  for (const char* key : {"format", "map", "air", "varied", "sobol"}) root.announce(key);
  root.choice("format", {"stallwright-recipe-1"});
  Recipe recipe;
  recipe.key = file.stem().string();
  const TomlTable map = root.table("map");
  for (const char* key : {"name", "summary", "sorties", "pilots"}) map.announce(key);
  recipe.name = map.text("name", 60);
  recipe.summary = map.text("summary", 400);
  recipe.sorties = whole(map, {"sorties", unit::kNone, 2, kMostSorties}, recipe.sorties);
  recipe.pilots = read_pilots(map);
  recipe.airs = read_airs(root);
  if (root.has("varied")) recipe.varied = read_varied(root.table("varied"), recipe);
  if (root.has("sobol"))
    recipe.sobol_base = whole(root.table("sobol"), {"base", unit::kNone, 0, kMostBase}, 0);
  document.reject_unknown_keys();
  known = document.known_fields();
  return recipe;
}

Recipe load_recipe(const std::filesystem::path& file) {
  std::vector<KnownField> known;
  return load_recipe(file, known);
}

}  // namespace stallwright
