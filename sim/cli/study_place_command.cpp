#include "sim/cli/study_place_command.hpp"

#include <cmath>
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>

#include "aircraft/input_error.hpp"
#include "sim/cli/cli_common.hpp"
#include "sim/reduction/flight_log.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/sortie_json.hpp"
#include "sim/study/map/map_json.hpp"
#include "sim/study/map/place_on_map.hpp"
#include "sim/study/map/rules.hpp"
#include "sim/study/map/study_folder.hpp"
#include "sim/truth/truth_log.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

struct Options {
  std::string sortie, study;
  bool json = false;
};

/// A sortie with its own measures, and where they put it.
struct Here {
  RecordRms own;
  PlaceOnMap place;
  std::string without_truth;  ///< what stood in for the gusts, where truth.csv is not there
};

StudyMap read_study(const std::string& folder) {
  StudyMap map = read_plan(fs::path(folder) / kPlanFile);
  read_results(folder, map);
  return map;
}

void require_same_flight(const std::string& folder, const FlownSortie& flown, const StudyMap& map) {
  if (flown.config.type.name == map.aircraft && flown.config.card.name == map.card) return;
  throw InputError(folder + ": expected a sortie of " + map.aircraft + " with " + map.card +
                   ", as the study has, found " + flown.config.type.name + " with " + flown.config.card.name);
}

/// Without truth the air is known by its name alone.
std::size_t named_air(const StudyMap& map, const FlownSortie& flown, const fs::path& truth) {
  for (std::size_t air = 0; air < map.airs.size(); ++air)
    if (map.airs[air].name == flown.air) return air;
  throw InputError(truth.string() +
                   ": expected the truth of the sortie, for its gusts, or an air that the study has, " +
                   "found no such file and " + flown.air + " air");
}

Here find_place(const Options& options, const StudyMap& map) {
  const fs::path folder(options.sortie);
  const FlownSortie flown = read_sortie(folder);
  require_same_flight(options.sortie, flown, map);
  const FlightLog log = read_flight_log(folder / "log.csv", flown.config.card);
  std::error_code error;
  const bool has_truth = fs::exists(folder / "truth.csv", error);
  Here here;
  here.own = record_rms(log.rows, has_truth ? read_truth_log(folder / "truth.csv") : std::vector<TruthRow>{},
                        flown.config.card);
  if (!std::isfinite(here.own.hold_kt))
    throw InputError((folder / "log.csv").string() + ": expected a steady record, found none");
  if (has_truth) {
    here.place = place_on_map(map, here.own);
  } else {
    here.place = place_in_air(map, named_air(map, flown, folder / "truth.csv"), here.own.hold_kt);
    here.without_truth = flown.air;
  }
  return here;
}

template <class Name>
std::string between_words(const Between& place, const std::string& beyond, const Name& name) {
  if (place.beyond) return beyond + " " + name(place.from);
  if (place.share <= 0.0) return "at " + name(place.from);
  if (place.share >= 1.0) return "at " + name(place.to);
  return "between " + name(place.from) + " and " + name(place.to);
}

/// "light 1.05 and moderate 2.90"
template <class Name, class Value>
std::string both_words(const Between& place, const Name& name, const Value& value) {
  const auto one = [&](std::size_t i) { return name(i) + " " + fixed(value(i), 2); };
  return one(place.from) + (place.to != place.from ? " and " + one(place.to) : "");
}

std::string here_text(const StudyMap& map, const Here& here) {
  const PlaceOnMap& place = here.place;
  const auto air = [&](std::size_t i) { return map.airs[i].name; };
  const auto hand = [&](std::size_t i) { return map.hands[i]; };
  const auto order = airs_by_roughness(map);
  const std::string past_air = place.air.from == order.front() ? "smoother than" : "rougher than";
  const std::string past_hand =
      here.own.hold_kt < place.hold_rms_kt[place.hand.from] ? "steadier than" : "less steady than";
  std::string expected;
  for (const std::size_t line : whole_lines(map))
    expected += (expected.empty() ? "" : ", ") + std::string("\u00b1") + fixed(place.rms_error_kt[line], 1) +
                " kt at the " + line_name(map, line);
  std::string text = cli::filled("You are here: ", between_words(place.air, past_air, air) + ", " +
                                                       between_words(place.hand, past_hand, hand) +
                                                       ": expect " + expected + " (RMS).");
  const std::string by_gusts =
      "gusts of " + fixed(here.own.gust_mps, 2) + " m/s rms in the steady records; the map has " +
      both_words(place.air, air, [&](std::size_t i) { return air_gust_mps(map, i); });
  const std::string by_name =
      "truth.csv is missing, so its gusts are not known: taken by name, " + here.without_truth;
  const std::string by_hold =
      fixed(here.own.hold_kt, 2) + " kt rms of airspeed less target; in this air the map has " +
      both_words(place.hand, hand, [&](std::size_t i) { return place.hold_rms_kt[i]; });
  text += cli::filled("Air:  ", here.without_truth.empty() ? by_gusts : by_name);
  text += cli::filled("Hold: ", by_hold);
  return text +
         cli::filled("",
                     "Straight lines between the cells; one sortie's few records scatter, so take the place "
                     "for a guess.");
}

Json between_json(const Between& place, const std::string& from, const std::string& to) {
  return {{"from", from}, {"to", to}, {"share", place.share}, {"beyond", place.beyond}};
}

std::string here_json(const StudyMap& map, const Here& here) {
  const auto number = [](double v) { return std::isfinite(v) ? Json(v) : Json(nullptr); };
  const PlaceOnMap& place = here.place;
  Json lines = Json::array();
  for (std::size_t i = 0; i < map.lines.size(); ++i)
    lines.push_back({{"name", map.lines[i].name},
                     {"flap_deg", map.lines[i].flap_deg},
                     {"window_s", number(map.lines[i].window_s)},
                     {"rms_error_kt", number(place.rms_error_kt[i])}});
  const Json json{
      {"format", "stallwright-place-1"},
      {"identity", map.identity},
      {"hold_rms_kt", number(here.own.hold_kt)},
      {"gust_rms_mps", number(here.own.gust_mps)},
      {"air", between_json(place.air, map.airs[place.air.from].name, map.airs[place.air.to].name)},
      {"pilot", between_json(place.hand, map.hands[place.hand.from], map.hands[place.hand.to])},
      {"lines", lines}};
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace

void add_study_place_command(CLI::App& study, int& exit_code) {
  const auto options = std::make_shared<Options>();
  CLI::App* command = study.add_subcommand(
      "place", "You are here: where a rehearsal stands on the map, by its own hold and gusts");
  command->add_option("SORTIE", options->sortie, "Folder of the sortie")->required();
  command->add_option("--study", options->study, "Folder of a study of the same aeroplane and card")
      ->type_name("DIR")
      ->required();
  command->add_flag("--json", options->json, "Print JSON instead of words");
  command->footer(cli::footer("  stallwright study place sorties/light --study study\n"));
  command->callback([options, &exit_code] {
    const StudyMap map = read_study(options->study);
    const Here here = find_place(*options, map);
    std::cout << (options->json ? here_json(map, here) : here_text(map, here));
    exit_code = cli::kYes;
  });
}

}  // namespace stallwright
