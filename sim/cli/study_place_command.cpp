#include "sim/cli/study_place_command.hpp"

#include <cmath>
#include <iostream>
#include <memory>

#include "aircraft/input_error.hpp"
#include "sim/cli/cli_common.hpp"
#include "sim/cli/study_place_text.hpp"
#include "sim/reduction/flight_log.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/sortie_json.hpp"
#include "sim/study/map/map_json.hpp"
#include "sim/study/map/study_folder.hpp"
#include "sim/truth/truth_log.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;

struct Options {
  std::string sortie, study;
  bool json = false;
};

StudyMap read_study(const std::string& folder) {
  StudyMap map = read_plan(fs::path(folder) / kPlanFile);
  read_results(folder, map);
  return map;
}

/// What other instruments would make of the errors the map cannot say.
void require_same_flight(const std::string& folder, const SortieConfig& flown, const StudyMap& map) {
  const std::string sensors = flown.instruments.name;
  if (flown.type.name == map.aircraft && flown.card.name == map.card && sensors == map.sensors) return;
  throw InputError(folder + ": expected a sortie of " + map.aircraft + " with " + map.card + " and " +
                   map.sensors + " sensors, as the study has, found " + flown.type.name + " with " +
                   flown.card.name + " and " + sensors + " sensors");
}

std::string mass_words(double mass_kg, double cg_aft_m) {
  return fixed(mass_kg, 0) + " kg at " + fixed(cg_aft_m, 3) + " m aft of the datum";
}

/// What moves the errors a little: they are held against the truth of the same loading and airframe.
std::vector<cli::Unlike> unlike_study(const SortieConfig& flown, const StudyMap& map) {
  const MassProperties mass = mass_properties(flown.type, flown.loading);
  std::vector<cli::Unlike> unlike;
  const auto hold = [&](const std::string& what, const std::string& sortie, const std::string& study) {
    if (sortie != study) unlike.push_back({what, sortie, study});
  };
  if (std::isfinite(map.mass_kg))  // a plan may lack it
    hold("mass and balance", mass_words(mass.mass_kg, mass.cg.x_aft_m),
         mass_words(map.mass_kg, map.cg_aft_m));
  hold("airframe", std::to_string(flown.airframe_seed), std::to_string(map.airframe_seed));
  return unlike;
}

/// Without truth the air is known by its name alone.
std::size_t named_air(const StudyMap& map, const FlownSortie& flown, const fs::path& truth) {
  for (std::size_t air = 0; air < map.airs.size(); ++air)
    if (map.airs[air].name == flown.air) return air;
  throw InputError(truth.string() +
                   ": expected the truth of the sortie, for its gusts, or an air that the study has, " +
                   "found no such file and " + flown.air + " air");
}

cli::PlacedSortie find_place(const Options& options, const StudyMap& map) {
  const fs::path folder(options.sortie);
  const FlownSortie flown = read_sortie(folder);
  require_same_flight(options.sortie, flown.config, map);
  const FlightLog log = read_flight_log(folder / "log.csv", flown.config.card);
  std::error_code error;
  const bool has_truth = fs::exists(folder / "truth.csv", error);
  cli::PlacedSortie here;
  here.own = record_rms(log.rows, has_truth ? read_truth_log(folder / "truth.csv") : std::vector<TruthRow>{},
                        flown.config.card);
  if (!std::isfinite(here.own.hold_kt))
    throw InputError((folder / "log.csv").string() + ": expected a steady record, found none");
  if (has_truth) {
    here.place = place_on_map(map, here.own);
  } else {
    here.place = place_in_air(map, named_air(map, flown, folder / "truth.csv"), here.own.hold_kt);
    here.by_name = flown.air;
  }
  here.unlike = unlike_study(flown.config, map);
  return here;
}

}  // namespace

void add_study_place_command(CLI::App& study, int& exit_code) {
  const auto options = std::make_shared<Options>();
  CLI::App* command = study.add_subcommand(
      "place", "You are here: where a rehearsal stands on the map, by its own hold and gusts");
  command->add_option("SORTIE", options->sortie, "Folder of the sortie")->required();
  command->add_option("--study", options->study, "Folder of a study of the same aeroplane, card and sensors")
      ->type_name("DIR")
      ->required();
  command->add_flag("--json", options->json, "Print JSON instead of words");
  command->footer(cli::footer("  stallwright study place sorties/light --study study\n"));
  command->callback([options, &exit_code] {
    const StudyMap map = read_study(options->study);
    const cli::PlacedSortie here = find_place(*options, map);
    std::cout << (options->json ? cli::place_json(map, here) : cli::place_text(map, here));
    exit_code = cli::kYes;
  });
}

}  // namespace stallwright
