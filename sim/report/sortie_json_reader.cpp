#include <cmath>
#include <fstream>
#include <iterator>
#include <limits>
#include <nlohmann/json.hpp>

#include "aircraft/type_file.hpp"
#include "sim/reduction/set_points_json.hpp"
#include "sim/reduction/set_points_json_node.hpp"
#include "sim/report/sortie_json.hpp"
#include "sim/sortie/test_card_file.hpp"

namespace stallwright {
namespace {

using Node = JsonNode;
namespace fs = std::filesystem;

constexpr std::uintmax_t kLargest = 16u << 20;

nlohmann::json parse(const fs::path& file) {
  std::error_code error;
  if (fs::is_directory(file, error)) throw InputError(file.string() + ": expected a file, found a folder");
  const std::uintmax_t size = fs::file_size(file, error);
  std::ifstream in(file, std::ios::binary);
  if (error || !in) throw InputError(file.string() + ": expected a file, found none that can be read");
  if (size > kLargest) throw InputError(file.string() + ": expected at most 16 MB, found more");
  const std::string text(std::istreambuf_iterator<char>(in), {});
  try {
    return nlohmann::json::parse(text);
  } catch (const nlohmann::json::parse_error& e) {
    throw InputError(file.string() + ": expected JSON, found something else at byte " +
                     std::to_string(e.byte));
  }
}

/// A whole number that a double would not hold.
std::uint64_t whole(const nlohmann::json& value, const Node& node, std::uint64_t most) {
  const std::string range = "a whole number from 0 to " + std::to_string(most);
  if (!value.is_number_unsigned() || value.get<std::uint64_t>() > most) node.fail(range);
  return value.get<std::uint64_t>();
}

double number(const Node& node) {
  const double value = node.number_or_none();
  if (!std::isfinite(value)) node.fail("a number");
  return value;
}

Loading read_loading(const Node& node, const AircraftType& type) {
  const std::vector<Node> entries = node.elements();
  if (entries.size() != type.mass.stations.size())
    node.fail("the " + std::to_string(type.mass.stations.size()) + " load stations of " + type.name);
  Loading loading;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const std::string& name = type.mass.stations[i].name;
    if (entries[i].at("station").text() != name) entries[i].at("station").fail("\"" + name + "\"");
    const double kg = number(entries[i].at("kg"));
    if (kg < 0.0 || kg > type.mass.stations[i].max_kg)
      entries[i].at("kg").fail("a mass that the station may carry");
    loading.kg.push_back(kg);
  }
  return loading;
}

PointTally read_tally(const Node& node) {
  PointTally tally;
  tally.recorded = node.at("recorded").count();
  tally.forced = node.at("forced").count();
  tally.flagged = node.at("flagged").count();
  tally.given_up = node.at("given_up").count();
  tally.timeouts = node.at("timeouts").count();
  tally.unintended_stalls = node.at("unintended_stalls").count();
  tally.knocked_off = node.at("knocked_off").count();
  tally.no_break = node.at("no_break").count();
  return tally;
}

void read_outcome(const Node& root, const nlohmann::json& json, FlownSortie& flown) {
  SortieOutcome& outcome = flown.outcome;
  const std::size_t points = flown.config.card.points.size();
  flown.ended = !json.at("ended").is_null();
  if (flown.ended) {
    const Node ended = root.at("ended");
    outcome.finished = ended.at("finished").boolean();
    outcome.failure = ended.at("failure").text();
    if (ended.at("numeric_failure").boolean()) outcome.failure_kind = SortieOutcome::Failure::not_finite;
    outcome.ended_s = number(ended.at("time_s"));
  }
  for (const Node& node : root.at("events").elements()) {
    const int point = node.at("point").count();
    if (static_cast<std::size_t>(point) >= points) node.at("point").fail("the index of a point of the card");
    outcome.events.push_back({number(node.at("time_s")), static_cast<std::size_t>(point),
                              node.at("kind").text(), node.at("text").text()});
  }
  for (const Node& node : root.at("points").elements()) outcome.tallies.push_back(read_tally(node));
  if (!outcome.tallies.empty() && outcome.tallies.size() != points)
    root.at("points").fail("none or the " + std::to_string(points) + " points of the card");
  outcome.entered_mass_kg = number(root.at("mass").at("stated_kg"));
  outcome.errors = drawn_errors(flown.config);
}

void read_taught(const Node& root, const nlohmann::json& json, const fs::path& folder, FlownSortie& flown) {
  if (!root.has("taught") || json["taught"].is_null()) return;
  const std::string power = root.at("taught").at("power").text();
  if (power != "idle" && power != "level" && power != "descent")
    root.at("taught").at("power").fail("\"level\", \"descent\" or \"idle\"");
  Taught taught;
  taught.set_points = read_set_points(folder / "taught.json");
  taught.power = power_named(power);
  flown.config.unit = unit_for(taught.set_points);
  flown.taught = taught;
}

}  // namespace

FlownSortie read_sortie(const fs::path& folder) {
  const std::string file = (folder / "sortie.json").string();
  const nlohmann::json json = parse(file);
  const Node root(json, file, "");
  if (root.at("format").text() != kSortieFormat)
    root.at("format").fail("\"" + std::string(kSortieFormat) + "\"");
  FlownSortie flown;
  SortieConfig& config = flown.config;
  flown.version = root.at("version").text();
  flown.air = root.at("air").at("name").text();
  config.type = load_aircraft_type(folder / "aircraft.toml");
  config.type.key = root.at("aircraft").at("key").text();
  config.card = load_test_card(folder / "card.toml");
  config.card.key = root.at("card").at("key").text();
  std::optional<double> hour;
  if (root.at("air").has("local_hour")) hour = root.at("air").at("local_hour").number_or_none();
  config.air = read_air_preset(folder / "air.toml", hour);
  config.by_hand = root.at("pilot").text() == kByHand;
  config.pilot = config.by_hand ? by_hand_grade() : pilot_grade(root.at("pilot").text());
  config.instruments = instrument_grade(root.at("sensors").text());
  for (const char* key : {"seed", "airframe_seed", "sortie", "ended"}) root.at(key);
  constexpr std::uint64_t kMost = std::numeric_limits<std::uint64_t>::max();
  config.seed = whole(json["seed"], root.at("seed"), kMost);
  config.airframe_seed = whole(json["airframe_seed"], root.at("airframe_seed"), kMost);
  if (root.has("instrument_seed") && !json["instrument_seed"].is_null())
    config.instrument_seed = whole(json["instrument_seed"], root.at("instrument_seed"), kMost);
  config.sortie = static_cast<std::uint32_t>(
      whole(json["sortie"], root.at("sortie"), std::numeric_limits<std::uint32_t>::max()));
  config.loading = read_loading(root.at("loading"), config.type);
  read_taught(root, json, folder, flown);
  read_outcome(root, json, flown);
  return flown;
}

}  // namespace stallwright
