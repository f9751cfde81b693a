#include "sim/cli/study_merge_command.hpp"

#include <iostream>
#include <memory>

#include "sim/cli/cli_common.hpp"
#include "sim/cli/study_map_text.hpp"
#include "sim/study/map/map_json.hpp"
#include "sim/study/map/study_folder.hpp"

namespace stallwright {
namespace {

struct Options {
  std::vector<std::string> folders;
  std::string out;
  bool json = false;
};

int merge(const Options& options) {
  const StudyMap map = merge_studies({options.folders.begin(), options.folders.end()}, options.out);
  std::cout << (options.json ? map_to_json(map) : cli::map_text(map));
  return cli::kYes;
}

}  // namespace

void add_study_merge_command(CLI::App& study, int& exit_code) {
  const auto options = std::make_shared<Options>();
  CLI::App* command = study.add_subcommand(
      "merge",
      "Put the shards of one study together: the tables come out as if it had been flown in one place");
  command->add_option("DIR", options->folders, "Folders that `study --shard` has flown")
      ->required()
      ->expected(1, 1000);
  command->add_option("--out", options->out, "Folder of the whole study, new or empty")
      ->type_name("DIR")
      ->required();
  command->add_flag("--json", options->json, "Print study.json instead of the summary");
  command->footer(cli::footer("  stallwright study merge shard-1 shard-2 --out whole\n"));
  command->callback([options, &exit_code] { exit_code = merge(*options); });
}

}  // namespace stallwright
