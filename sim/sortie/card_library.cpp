#include <algorithm>
#include <system_error>

#include "sim/sortie/test_card_file.hpp"

namespace stallwright {
namespace {
std::filesystem::path cards_folder() {
  return std::filesystem::path(STALLWRIGHT_SOURCE_DIR) / "assets" / "cards";
}
}  // namespace

std::vector<std::string> list_cards() {
  std::vector<std::string> out;
  std::error_code error;
  for (const auto& entry : std::filesystem::directory_iterator(cards_folder(), error)) {
    if (entry.path().extension() == ".toml") out.push_back(entry.path().stem().string());
  }
  std::sort(out.begin(), out.end());
  return out;
}

std::filesystem::path find_card_file(const std::string& name_or_path) {
  const std::filesystem::path path(name_or_path);
  if (name_or_path.find('/') != std::string::npos || path.extension() == ".toml") return path;
  const auto known = list_cards();
  if (std::find(known.begin(), known.end(), name_or_path) != known.end()) {
    return cards_folder() / (name_or_path + ".toml");
  }
  std::string names;
  for (const auto& name : known) names += (names.empty() ? "" : ", ") + name;
  throw InputError("card: expected one of " + names + " or a path to a .toml file, found \"" + name_or_path +
                   "\"");
}

}  // namespace stallwright
