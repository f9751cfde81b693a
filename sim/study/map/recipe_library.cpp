#include <algorithm>
#include <system_error>

#include "sim/study/map/recipe.hpp"

namespace stallwright {
namespace {
std::filesystem::path recipes_folder() {
  return std::filesystem::path(STALLWRIGHT_SOURCE_DIR) / "assets" / "recipes";
}
}  // namespace

std::vector<std::string> list_recipes() {
  std::vector<std::string> out;
  std::error_code error;
  for (const auto& entry : std::filesystem::directory_iterator(recipes_folder(), error))
    if (entry.path().extension() == ".toml") out.push_back(entry.path().stem().string());
  std::sort(out.begin(), out.end());
  return out;
}

std::filesystem::path find_recipe_file(const std::string& name_or_path) {
  std::filesystem::path path(name_or_path);
  if (name_or_path.find('/') != std::string::npos || path.extension() == ".toml") return path;
  const std::vector<std::string> known = list_recipes();
  if (std::find(known.begin(), known.end(), name_or_path) != known.end())
    return recipes_folder() / (name_or_path + ".toml");
  const std::string nearest = nearest_word(name_or_path, known);
  throw InputError("--recipe: expected one of " + joined_words(known) +
                   " or a path to a .toml file, found \"" + name_or_path + "\"" +
                   (nearest.empty() ? "" : "; perhaps " + nearest));
}

}  // namespace stallwright
