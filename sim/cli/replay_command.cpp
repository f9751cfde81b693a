#include "sim/cli/replay_command.hpp"

#include <iomanip>
#include <iostream>
#include <memory>
#include <string>

#include "sim/cli/cli_common.hpp"
#include "sim/report/fly_again.hpp"

namespace stallwright {
namespace {

void say(const char* file, const std::optional<double>& differs_s, double flown_s) {
  std::cout << std::fixed << std::setprecision(2);
  if (differs_s)
    std::cout << file << ": differs from " << *differs_s << " s on\n";
  else
    std::cout << file << ": the same, byte for byte, over " << flown_s << " s\n";
}

}  // namespace

void add_replay_command(CLI::App& app, int& exit_code) {
  const auto folder = std::make_shared<std::string>();
  CLI::App* command = app.add_subcommand(
      "replay", "Fly a sortie folder again from its own files and say whether it comes out the same");
  command->add_option("DIR", *folder, "Sortie folder, flown by hand or by a simulated pilot")
      ->required()
      ->type_name("");
  command->footer(
      cli::footer("  stallwright replay sorties/calm\n\n"
                  "A sortie flown by hand has its hands in hands.csv. Nothing is written.\n"));
  command->callback([folder, &exit_code] {
    const FlownAgain again = fly_again(*folder);
    if (again.cut_short) std::cout << "This flight was never ended; it is compared as far as its files go.\n";
    say("log.csv", again.log_differs_s, again.flown_s);
    say("truth.csv", again.truth_differs_s, again.flown_s);
    exit_code = again.same() ? cli::kYes : cli::kNo;
  });
}

}  // namespace stallwright
