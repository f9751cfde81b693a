#pragma once
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "aircraft/toml_reader.hpp"
#include "sim/air/air_preset.hpp"

namespace stallwright {

/// What a study flies: airs x pilots, so many sorties in each; assets/recipes/README.md documents every field.

struct RecipeAir {
  std::string name;  ///< "light", "day 07:30", or its own
  AirPreset preset;
  std::string source;  ///< bytes that decide what it is: the weather file's with the hour, or name and sigma
};

/// One thing changed at a time about one cell of the map.
struct RecipeVaried {
  int sorties = 200;
  std::size_t air = 0, pilot = 0;  ///< the cell: indices into airs and pilots
  std::vector<double> entry_rates_ktps;
  std::vector<std::string> sensors;   ///< grades of instruments
  std::vector<std::string> loadings;  ///< "light", "heavy", or "STATION=KG, STATION=KG"
  std::vector<RecipeAir> airs;        ///< other airs than the columns of the map
};

struct Recipe {
  std::string key, name, summary;
  int sorties = 500;  ///< in each cell
  std::vector<RecipeAir> airs;
  std::vector<std::string> pilots;
  std::optional<RecipeVaried> varied;
  int sobol_base = 0;  ///< base samples of the sensitivity indices; 0: none are wanted
};

inline constexpr int kMostBase = 65536;     ///< of Sobol' indices
inline constexpr int kMostSorties = 50000;  ///< of a cell

/// Reads a recipe and the airs that it names. Throws InputError with one line `FILE:LINE: field: expected ..., found ...`.
Recipe load_recipe(const std::filesystem::path& file);

/// As above, and tells which fields the loader knows (for the check against the page that documents them).
Recipe load_recipe(const std::filesystem::path& file, std::vector<KnownField>& known);

/// Names of the recipes that come with the program, sorted (`assets/recipes/NAME.toml`).
std::vector<std::string> list_recipes();

/// A name of the list, or a path to a recipe (it has a slash or ends in .toml). An unknown name throws InputError listing
/// the known ones; a path is returned as it is, and loading it reports what is wrong with it.
std::filesystem::path find_recipe_file(const std::string& name_or_path);

}  // namespace stallwright
