#pragma once
#include <optional>
#include <string>
#include <vector>

#include "sim/sortie/sortie.hpp"
#include "sim/study/map/blocks.hpp"
#include "sim/study/map/recipe.hpp"
#include "sim/study/sensitivity/sensitivity_plan.hpp"
#include "sim/study/study_map.hpp"

namespace stallwright {

/// What a study is made from.
struct MapSetup {
  Recipe recipe;
  SortieConfig base;  ///< aeroplane, loading, card, sensors, airframe; its air, pilot and seed are not used
  std::uint64_t first_seed = 1;
  std::optional<int> sorties;            ///< in each cell, instead of the recipe's numbers
  std::string aircraft_text, card_text;  ///< bytes of the two files, for the identity
};

/// A study before it is flown.
struct MapPlan {
  StudyMap map;                       ///< without results
  std::vector<SortieConfig> configs;  ///< of all cells (StudyMap::any_cell); each sortie sets its own seed
  SensitivityPlan sensitivity;        ///< what is flown after them

  SortieConfig config(const Block& block, int k) const;  ///< of sortie k of a block, with its seed
};

/// Lays out the cells: airs x pilots, then what varies about one of them. The identity is a hash of everything that decides
/// what is flown and of the version. Throws InputError for a loading of the recipe that the aeroplane cannot take, naming
/// the recipe's file.
MapPlan map_plan(const MapSetup& setup, const std::string& recipe_file);

}  // namespace stallwright
