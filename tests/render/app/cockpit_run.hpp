#pragma once
#include <string>
#include <vector>

#include "render/app/cockpit.hpp"
#include "render/app/options.hpp"
#include "tests/sim/cli/run_program.hpp"

/// The cockpit itself, off the screen, inside the test's own process.
namespace stallwright::app_test {

/// Options as a command line would give them, everything remembered and written inside `folder`; nothing is drawn but what a
/// picture is taken of.
inline app::Options options(const std::filesystem::path& folder, const std::vector<std::string>& more = {}) {
  std::vector<std::string> words = {"stallwright-cockpit",
                                    "--headless",
                                    "--silent",
                                    "--size",
                                    "960x540",
                                    "--draw-every",
                                    "100000",
                                    "--settings",
                                    (folder / "settings").string(),
                                    "--sorties",
                                    (folder / "sorties").string()};
  words.insert(words.end(), more.begin(), more.end());
  std::vector<char*> argv;
  for (std::string& word : words) argv.push_back(word.data());
  return app::read_options(static_cast<int>(argv.size()), argv.data());
}

/// The only sortie folder below.
inline std::filesystem::path only_sortie(const std::filesystem::path& folder) {
  std::filesystem::path found;
  for (const auto& entry : std::filesystem::directory_iterator(folder / "sorties")) {
    if (!found.empty()) throw std::runtime_error("more than one sortie");
    found = entry.path();
  }
  return found;
}

}  // namespace stallwright::app_test
