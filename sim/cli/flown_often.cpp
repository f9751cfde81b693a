#include "sim/cli/flown_often.hpp"

#include "aircraft/input_error.hpp"
#include "sim/sortie/card_check.hpp"

namespace stallwright::cli {

void add_flown_often(CLI::App& command, FlownOften& options, const std::string& each) {
  add_flight_options(command, options.flight);
  command.add_option("--sensors", options.sensors, "Instruments: ideal or standard")
      ->type_name("NAME")
      ->capture_default_str();
  command
      .add_option("--seed", options.seed,
                  "Seed of the first sortie of each " + each + "; the others count up from it")
      ->type_name("S")
      ->capture_default_str();
  command
      .add_option("--airframe-seed", options.airframe_seed,
                  "Number that draws the airframe's own small differences; 0: a perfectly even one")
      ->type_name("N")
      ->capture_default_str();
  command
      .add_option("--threads", options.threads,
                  "Threads; 0: as many as the machine has. The result does not depend on it")
      ->type_name("T")
      ->check(CLI::Range(0, 1024))
      ->capture_default_str();
}

OftenFlight often_flight(const FlownOften& options) {
  OftenFlight out{read_flight(options.flight), {}};
  const Flight& files = out.files;
  const std::vector<std::string> problems = card_check(files.card, files.type);
  if (!problems.empty())
    throw InputError(files.card_file.string() + ": expected a card that " + files.type.name +
                     " can fly, found " + problems.front());
  if (files.card.verifies)
    throw InputError(files.card_file.string() + ": expected a card that teaches, found one that verifies");
  out.base.type = files.type;
  out.base.loading = files.loading;
  out.base.card = files.card;
  out.base.instruments = instrument_grade(options.sensors);
  out.base.airframe_seed = seed_from("--airframe-seed", options.airframe_seed);
  return out;
}

}  // namespace stallwright::cli
