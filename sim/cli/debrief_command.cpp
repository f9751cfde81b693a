#include "sim/cli/debrief_command.hpp"

#include <memory>

#include "sim/cli/cli_common.hpp"
#include "sim/cli/debrief_output.hpp"

namespace stallwright {

void add_debrief_command(CLI::App& app, int& exit_code) {
  struct Options {
    std::string folder;
    bool json = false;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand(
      "debrief", "Hold the set points of a sortie folder against the truth again, and write its page anew");
  command->add_option("DIR", options->folder, "Sortie folder, as `rehearse` writes it")
      ->required()
      ->type_name("");
  command->add_flag("--json", options->json, "Print the judgement as JSON instead of the table");
  command->footer(
      cli::footer("  stallwright debrief sorties/light\n"
                  "  stallwright debrief sorties/light --json > answer.json\n\n"
                  "judgement.json and debrief.html are written again. Set points that stand in the folder's\n"
                  "set-points.json are judged as they stand, whoever reduced them.\n"));
  command->callback(
      [options, &exit_code] { exit_code = cli::debrief_and_print(options->folder, options->json); });
}

}  // namespace stallwright
