// The `stallwright` program: commands are put together here, and errors become one line and an exit status.
#include <CLI/CLI.hpp>
#include <exception>
#include <iostream>

#include "aircraft/input_error.hpp"
#include "sim/cli/cli_common.hpp"
#include "sim/cli/debrief_command.hpp"
#include "sim/cli/inspect_command.hpp"
#include "sim/cli/plan_command.hpp"
#include "sim/cli/reduce_command.hpp"
#include "sim/cli/rehearse_command.hpp"
#include "sim/cli/replay_command.hpp"
#include "sim/cli/study_command.hpp"

namespace {

int complain(const std::string& message, int status) {
  std::cerr << "stallwright: " << stallwright::cli::one_line(message) << '\n';
  return status;
}

}  // namespace

int main(int argc, char** argv) {
  using namespace stallwright;
  CLI::App app(
      "Rehearse teaching an angle-of-attack system where the wing is, on the ground, with the truth on the "
      "table.\nA rehearsal aid: the flight manual, local rules and a qualified instructor govern.",
      "stallwright");
  app.set_version_flag("--version", "stallwright " STALLWRIGHT_VERSION);
  app.require_subcommand(0, 1);
  app.footer(
      cli::footer("  stallwright plan\n"
                  "  stallwright rehearse --air light --seed 3 --out sorties/light\n"
                  "  stallwright debrief sorties/light\n"));
  int exit_code = cli::kYes;
  add_plan_command(app, exit_code);
  add_rehearse_command(app, exit_code);
  add_reduce_command(app, exit_code);
  add_debrief_command(app, exit_code);
  add_replay_command(app, exit_code);
  add_inspect_command(app, exit_code);
  add_study_command(app, exit_code);
  try {
    app.parse(argc, argv);
    if (app.get_subcommands().empty())
      return complain("expected a command, found none; --help lists them", cli::kBadInput);
    std::cout.flush();
    if (!std::cout) return complain("the standard output cannot be written", cli::kFailure);
    return exit_code;
  } catch (const CLI::ParseError& e) {
    if (e.get_exit_code() == 0) return app.exit(e);  // help and version
    return complain(std::string(e.what()) + " (--help tells the options)", cli::kBadInput);
  } catch (const InputError& e) {
    return complain(e.what(), cli::kBadInput);
  } catch (const std::exception& e) {
    return complain(e.what(), cli::kFailure);
  }
}
