#pragma once
#include <vector>

#include "tests/sim/cli/least_card.hpp"
#include "tests/sim/cli/run_program.hpp"

namespace stallwright::cli_test {

/// Four cells and one more, two sorties each: five blocks.
inline const std::string kTinyRecipe = R"(format = "stallwright-recipe-1"
[map]
name = "Tiny"
summary = "For tests."
sorties = 2
pilots = ["sharp", "current"]
[[air]]
use = "calm"
[[air]]
use = "light"
[varied]
sorties = 2
air = "calm"
pilot = "sharp"
sensors = ["ideal"]
)";

inline const std::string kStudy = "study --recipe tiny.toml --card least.toml";

inline void put_inputs(const Folder& folder) {
  put(folder / "tiny.toml", kTinyRecipe);
  put(folder / "least.toml", kLeastCard);
}

/// All files of a study, names and bytes; what an interrupted write left behind is none of it.
inline std::string contents(const fs::path& study) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(study))
    if (entry.is_regular_file() && entry.path().filename().string().front() != '.')
      files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  std::string all;
  for (const fs::path& file : files) all += fs::relative(file, study).string() + "\n" + text_of(file);
  return all;
}

}  // namespace stallwright::cli_test
