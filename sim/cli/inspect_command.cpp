#include "sim/cli/inspect_command.hpp"

#include <iostream>
#include <memory>

#include "sim/cli/cli_common.hpp"
#include "sim/cli/inspect_report.hpp"

namespace stallwright {

int inspect(const InspectOptions& options, std::ostream& out) {
  const std::filesystem::path file = find_aircraft_file(options.aircraft);
  const cli::Inspection inspection = cli::inspect_aircraft(load_aircraft_type(file), file.string());
  out << (options.json ? cli::inspection_json(inspection) : cli::inspection_text(inspection));
  return inspection.outside() == 0 ? cli::kYes : cli::kNo;
}

void add_inspect_command(CLI::App& app, int& exit_code) {
  const auto options = std::make_shared<InspectOptions>();
  CLI::App* command = app.add_subcommand(
      "inspect",
      "An aeroplane's geometry, stall, performance and modes, against what its class makes credible");
  command->add_option("--aircraft", options->aircraft, "Aeroplane: a name of the library or a type file")
      ->type_name("NAME|FILE")
      ->capture_default_str();
  command->add_flag("--json", options->json, "Print JSON instead of the page");
  command->footer(
      cli::footer("  stallwright inspect\n"
                  "  stallwright inspect --aircraft tarnfell\n"
                  "  stallwright inspect --aircraft my-own.toml --json\n"));
  command->callback([options, &exit_code] { exit_code = inspect(*options, std::cout); });
}

}  // namespace stallwright
