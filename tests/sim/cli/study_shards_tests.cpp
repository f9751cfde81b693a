// Shards of a study as our page says to fly them: the lines that a user copies are the lines that run here.
#include <catch2/catch.hpp>
#include <sstream>

#include "tests/sim/cli/tiny_study.hpp"

namespace stallwright::cli_test {
namespace {

const fs::path kRecipes = fs::path(STALLWRIGHT_SOURCE_DIR) / "assets/recipes";

/// Lines of the page's block of commands that begins so, with the tiny study in the place of the page's own.
std::string commands(const std::string& begin) {
  std::string page = text_of(kRecipes / "README.md");
  const std::size_t at = page.find("```sh\n" + begin);
  REQUIRE(at != std::string::npos);
  page.erase(0, at + 6);
  std::string lines = page.substr(0, page.find("```"));
  const std::string own = "--recipe hours";
  const std::size_t recipe = lines.find(own);
  REQUIRE(recipe != std::string::npos);
  return lines.replace(recipe, own.size(), "--recipe tiny.toml --card least.toml");
}

/// Runs them in the folder by bash, with the program in the path. The exit status.
int shell(const Folder& folder, const std::string& lines) {
  const std::string head =
      "set -e\nPATH='" + fs::path(STALLWRIGHT_PROGRAM).parent_path().string() + "':$PATH\nexec >out 2>err\n";
  put(folder / "lines.sh", head + lines);
  const int status = std::system(("cd '" + folder.path().string() + "' && bash lines.sh").c_str());
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

/// Names and bytes of the study flown in one piece.
std::string whole_study() {
  const Folder folder;
  put_inputs(folder);
  REQUIRE(run(folder, kStudy + " --out whole").status == 0);
  return contents(folder / "whole");
}

}  // namespace

TEST_CASE("shards flown by GNU parallel and merged, as the page on recipes says, are the study in one piece",
          "[cli][study][parallel]") {
  const Folder folder;
  put_inputs(folder);
  const int status = shell(folder, commands("parallel "));
  INFO(text_of(folder / "err"));
  REQUIRE(status == 0);
  CHECK(contents(folder / "hours") == whole_study());
}

TEST_CASE("tasks of the Slurm script fly the shards of their array, and no other array", "[cli][study]") {
  const Folder folder;
  put_inputs(folder);
  const std::string task =
      "bash '" + (kRecipes / "shards.slurm").string() + "' --recipe tiny.toml --card least.toml\n";
  const std::string array =
      "export SLURM_CPUS_PER_TASK=1 SLURM_ARRAY_TASK_MIN=1 SLURM_ARRAY_TASK_MAX=3 "
      "SLURM_ARRAY_TASK_COUNT=3\n";
  const int status =
      shell(folder, array + "for SLURM_ARRAY_TASK_ID in 1 2 3; do\nexport SLURM_ARRAY_TASK_ID\n" + task +
                        "done\nstallwright study merge part-* --out hours\n");
  INFO(text_of(folder / "err"));
  REQUIRE(status == 0);
  CHECK(contents(folder / "hours") == whole_study());

  const Folder other;
  put_inputs(other);
  const std::string two_of_five =
      "export SLURM_ARRAY_TASK_ID=3 SLURM_ARRAY_TASK_MIN=3 SLURM_ARRAY_TASK_MAX=5 "
      "SLURM_ARRAY_TASK_COUNT=2\n";
  CHECK(shell(other, two_of_five + task) == 2);
  CHECK(text_of(other / "err").find("--array=1-N") != std::string::npos);
  CHECK(shell(other, task) == 2);
  CHECK_FALSE(fs::exists(other / "part-3"));
}

}  // namespace stallwright::cli_test
