#include <algorithm>
#include <system_error>

#include "aircraft/type_file.hpp"

namespace stallwright {
namespace {
std::filesystem::path types_folder() {
  return std::filesystem::path(STALLWRIGHT_SOURCE_DIR) / "aircraft" / "types";
}
}  // namespace

std::vector<std::string> list_aircraft_types() {
  std::vector<std::string> out;
  std::error_code error;
  for (const auto& entry : std::filesystem::directory_iterator(types_folder(), error)) {
    if (entry.path().extension() == ".toml") out.push_back(entry.path().stem().string());
  }
  std::sort(out.begin(), out.end());
  return out;
}

std::filesystem::path find_aircraft_file(const std::string& name_or_path) {
  std::filesystem::path path(name_or_path);
  if (name_or_path.find('/') != std::string::npos || path.extension() == ".toml") return path;
  const auto known = list_aircraft_types();
  if (std::find(known.begin(), known.end(), name_or_path) != known.end()) {
    return types_folder() / (name_or_path + ".toml");
  }
  std::string names;
  for (const auto& name : known) names += (names.empty() ? "" : ", ") + name;
  const std::string nearest = nearest_word(name_or_path, known);
  throw InputError("aircraft: expected one of " + names + " or a path to a .toml file, found \"" +
                   name_or_path + "\"" + (nearest.empty() ? "" : "; perhaps " + nearest));
}

}  // namespace stallwright
