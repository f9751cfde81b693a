#include "sim/cli/rehearse_command.hpp"

#include <unistd.h>

#include <algorithm>
#include <iostream>
#include <memory>

#include "aircraft/input_error.hpp"
#include "sim/cli/cli_common.hpp"
#include "sim/cli/debrief_output.hpp"
#include "sim/cli/who_options.hpp"
#include "sim/report/sortie_folder.hpp"
#include "sim/report/taught.hpp"
#include "sim/sortie/card_check.hpp"
#include "sim/truth/ready_sortie.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;

struct Options {
  cli::FlightOptions flight;
  std::string air = "calm", pilot = "current", sensors = "standard", seed = "1", airframe_seed = "1", out;
  std::string instrument_seed, set_points;
  Who who;
  bool json = false, out_given = false;
};

/// Tells on a terminal how far the flight is; a pipe gets nothing.
class Progress {
 public:
  explicit Progress(const TestCard& card) : card_(card), shown_(::isatty(STDERR_FILENO) == 1) {}
  ~Progress() {
    if (shown_) std::cerr << "\r\033[K";
  }
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  void show(const LogRow& row) {
    constexpr double kEvery_s = 10.0;
    if (!shown_ || row.t_s < next_s_) return;
    next_s_ += kEvery_s;
    std::cerr << "\r\033[K" << static_cast<long>(row.t_s) << " s";
    if (row.point > 0) std::cerr << ", " << card_.points.at(static_cast<std::size_t>(row.point - 1)).name;
    std::cerr << ", " << row.phase << std::flush;
  }

 private:
  const TestCard& card_;
  bool shown_;
  double next_s_ = 0.0;
};

class WatchedFolder : public SortieSink {
 public:
  WatchedFolder(SortieFolder& folder, Progress& progress) : folder_(folder), progress_(progress) {}
  void row(const LogRow& log, const TruthRow& truth) override {
    folder_.row(log, truth);
    progress_.show(log);
  }

 private:
  SortieFolder& folder_;
  Progress& progress_;
};

/// sorties/<card>-<aircraft>-<air>-seed<N>, with -2, -3, ... where that one is taken.
fs::path usual_folder(const FlownSortie& flown) {
  std::string air = flown.air;
  std::replace(air.begin(), air.end(), ' ', '-');
  std::erase(air, ':');
  const std::string stem = flown.config.card.key + "-" + flown.config.type.key + "-" + air + "-seed" +
                           std::to_string(flown.config.seed);
  fs::path folder = fs::path("sorties") / stem;
  for (int k = 2; fs::exists(folder) && !fs::is_empty(folder); ++k)
    folder = fs::path("sorties") / (stem + "-" + std::to_string(k));
  return folder;
}

void require_card_fits(const cli::Flight& flight) {
  const std::vector<std::string> problems = card_check(flight.card, flight.type);
  if (problems.empty()) return;
  const std::string more = problems.size() > 1 ? " (and " + std::to_string(problems.size() - 1) +
                                                     " more; `stallwright plan` lists them)"
                                               : "";
  throw InputError(flight.card_file.string() + ": expected a card that " + flight.type.name +
                   " can fly, found " + problems.front() + more);
}

int rehearse(const Options& options) {
  check_who(options.who);
  const cli::Flight flight = cli::read_flight(options.flight);
  require_card_fits(flight);
  FlownSortie flown;
  flown.version = STALLWRIGHT_VERSION;
  const NamedAir air = find_air(options.air);
  SourceFiles sources{flight.aircraft_file, flight.card_file, air.file};
  flown.air = air.label;
  SortieConfig& config = flown.config;
  config.type = flight.type;
  config.loading = flight.loading;
  config.card = flight.card;
  config.air = air.preset;
  config.pilot = pilot_grade(options.pilot);
  config.instruments = instrument_grade(options.sensors);
  config.seed = cli::seed_from("--seed", options.seed);
  config.airframe_seed = cli::seed_from("--airframe-seed", options.airframe_seed);
  if (!options.instrument_seed.empty())
    config.instrument_seed = cli::seed_from("--instrument-seed", options.instrument_seed);
  if (config.card.verifies && !options.who.empty()) throw InputError(cli::kNoRecord);
  load_unit(options.set_points, flown, sources);
  const fs::path out = options.out_given ? fs::path(options.out) : usual_folder(flown);
  require_new_folder(out);

  Sortie sortie = ready_sortie(config);
  flown.outcome.entered_mass_kg = sortie.outcome().entered_mass_kg;
  SortieFolder folder(out, sources, flown);
  {
    Progress progress(config.card);
    WatchedFolder watched(folder, progress);
    while (sortie.tick(watched)) {
    }
  }
  folder.close(sortie.outcome());
  return cli::debrief_and_print(out, options.json, options.who);
}

}  // namespace

void add_rehearse_command(CLI::App& app, int& exit_code) {
  const auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand(
      "rehearse", "Fly a test card with a simulated pilot, write the sortie folder, and say what came of it");
  cli::add_flight_options(*command, options->flight);
  command
      ->add_option("--air", options->air,
                   "Air: calm, light, moderate, severe, day:HH:MM (local solar time), or a weather file")
      ->type_name("NAME|FILE")
      ->capture_default_str();
  command->add_option("--pilot", options->pilot, std::string("How current the hands are: ") + kPilotGrades)
      ->type_name("NAME")
      ->capture_default_str();
  command->add_option("--sensors", options->sensors, "Instruments: ideal or standard")
      ->type_name("NAME")
      ->capture_default_str();
  command->add_option("--seed", options->seed, "Number that draws air, hands and sensor errors")
      ->type_name("N")
      ->capture_default_str();
  command
      ->add_option("--airframe-seed", options->airframe_seed,
                   "Number that draws the airframe's own small differences; 0: a perfectly even one")
      ->type_name("N")
      ->capture_default_str();
  command
      ->add_option("--instrument-seed", options->instrument_seed,
                   "Number that draws the instruments' own errors, the same for sorties of one aeroplane; "
                   "otherwise --seed draws them")
      ->type_name("N");
  command
      ->add_option("--set-points", options->set_points,
                   "With a card that verifies: set points to listen to, a sortie folder or a set-points file")
      ->type_name("DIR|FILE");
  command->add_option("--out", options->out, "Sortie folder, new or empty; otherwise one below sorties/")
      ->type_name("DIR");
  cli::add_who_options(*command, options->who);
  command->add_flag("--json", options->json, "Print the judgement as JSON instead of the table");
  command->footer(
      cli::footer("  stallwright rehearse\n"
                  "  stallwright rehearse --air light --pilot rusty --seed 3 --out sorties/rusty\n"
                  "  stallwright rehearse --card verify --set-points sorties/rusty\n"
                  "  stallwright rehearse --aircraft tarnfell --card thorough --load \"front seat=80\"\n"));
  command->callback([options, command, &exit_code] {
    options->out_given = command->count("--out") > 0;
    exit_code = rehearse(*options);
  });
}

}  // namespace stallwright
