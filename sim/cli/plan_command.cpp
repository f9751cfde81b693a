#include "sim/cli/plan_command.hpp"

#include <cmath>
#include <filesystem>
#include <iostream>
#include <memory>

#include "aircraft/toml_reader.hpp"
#include "sim/air/air_preset.hpp"
#include "sim/cli/flight_plan.hpp"
#include "sim/report/whole_file.hpp"

namespace stallwright {
namespace {

struct Options {
  cli::FlightOptions flight;
  double qnh_hPa = ussa1976::kPressure / 100.0, temperature_offset_K = 0.0;
  std::string html;
  bool json = false;
};

namespace fs = std::filesystem;

double within(const char* option, double value, double low, double high, const char* unit) {
  if (value >= low && value <= high) return value;  // NaN is not
  throw InputError(std::string(option) + ": expected " + number_text(low) + " to " + number_text(high) + " " +
                   unit + ", found " + number_text(value));
}

/// The sun's part of the day comes from the fair-weather day of the library.
ConvectiveDay fair_day() {
  return read_air_preset(find_air_file("day")).convection.value_or(ConvectiveDay{});
}

int plan_command(const Options& options) {
  if (!options.html.empty()) cli::require_writable_place("--html", options.html);
  Day day;
  day.qnh_Pa = 100.0 * within("--qnh", options.qnh_hPa, 800.0, 1100.0, "hPa");
  day.temperature_offset_K = within("--temperature-offset", options.temperature_offset_K, -60.0, 60.0, "K");
  const cli::FlightPlan plan = cli::make_plan(cli::read_flight(options.flight), day, fair_day());
  if (!options.html.empty()) write_whole_file(options.html, cli::plan_page(plan));
  std::cout << (options.json ? cli::plan_json(plan) : cli::plan_text(plan));
  return plan.go() ? cli::kYes : cli::kNo;
}

}  // namespace

void add_plan_command(CLI::App& app, int& exit_code) {
  const auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("plan",
                                         "The flight plan to carry: balance, climb, speeds, floor, air to "
                                         "wait for, and what must be so before you go");
  cli::add_flight_options(*command, options->flight);
  command->add_option("--qnh", options->qnh_hPa, "Altimeter setting, hPa")
      ->type_name("HPA")
      ->capture_default_str();
  command
      ->add_option("--temperature-offset", options->temperature_offset_K,
                   "Degrees above the standard temperature")
      ->type_name("K")
      ->capture_default_str();
  command
      ->add_option("--html", options->html,
                   "Write the plan to this file too, as a page that prints on A4; an older file is replaced")
      ->type_name("FILE");
  command->add_flag("--json", options->json, "Print JSON instead of the text");
  command->footer(cli::footer(
      "  stallwright plan\n"
      "  stallwright plan --aircraft sarsen --load \"bags=10\" --qnh 998 --temperature-offset 12\n"
      "  stallwright plan --card thorough --html plan.html\n"));
  command->callback([options, &exit_code] { exit_code = plan_command(*options); });
}

}  // namespace stallwright
