#include "sim/cli/debrief_command.hpp"

#include <memory>

#include "sim/cli/cli_common.hpp"
#include "sim/cli/debrief_output.hpp"
#include "sim/cli/who_options.hpp"

namespace stallwright {

void add_debrief_command(CLI::App& app, int& exit_code) {
  struct Options {
    std::string folder;
    bool json = false;
    Who who;
  };
  const auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand(
      "debrief", "Hold the set points of a sortie folder against the truth again, and write its page anew");
  command->add_option("DIR", options->folder, "Sortie folder, as `rehearse` writes it")
      ->required()
      ->type_name("");
  cli::add_who_options(*command, options->who);
  command->add_flag("--json", options->json, "Print the judgement as JSON instead of the table");
  command->footer(cli::footer(
      "  stallwright debrief sorties/light\n"
      "  stallwright debrief sorties/light --json > answer.json\n\n"
      "judgement.json, debrief.html and record.html are written again (verification.json and .html\n"
      "for a verifying card). Set points that stand in the folder's set-points.json are judged as they\n"
      "stand, whoever reduced them. Names and date are kept in the folder's who.json; remove that file\n"
      "and they are gone.\n"));
  command->callback([options, &exit_code] {
    check_who(options->who);
    exit_code = cli::debrief_and_print(options->folder, options->json, options->who);
  });
}

}  // namespace stallwright
