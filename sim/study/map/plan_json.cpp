#include <cmath>
#include <fstream>
#include <iterator>

#include "sim/reduction/set_points_json_node.hpp"
#include "sim/study/map/map_json.hpp"
#include "sim/study/map/map_json_parts.hpp"
#include "sim/study/map/recipe.hpp"
#include "sim/study/sensitivity/sensitivity_plan.hpp"

namespace stallwright {
namespace map_json {

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

/// Null when none is wanted.
Json sensitivity_plan(const Sensitivity& about) {
  if (about.base == 0) return nullptr;
  Json inputs = Json::array();
  for (const Sensitivity::Input& input : about.inputs)
    inputs.push_back({{"name", input.name}, {"from", input.from}, {"to", input.to}});
  return {{"base", about.base},
          {"sorties", about.cell.sorties},
          {"loadings", about.loadings},
          {"inputs", inputs}};
}

Json head(const StudyMap& map, const char* format) {
  Json airs = Json::array(), lines = Json::array();
  for (const MapAir& air : map.airs)
    airs.push_back({{"name", air.name}, {"sigma_mps", number(air.sigma_mps)}});
  for (const MapLine& line : map.lines)
    lines.push_back({{"name", line.name},
                     {"set", line.set},
                     {"card_point", line.card_point},
                     {"flap_deg", number(line.flap_deg)},
                     {"stall", line.is_stall},
                     {"share", number(line.share)},
                     {"window_s", number(line.window_s)}});
  return {{"format", format},
          {"version", map.version},
          {"identity", map.identity},
          {"recipe", {{"key", map.recipe_key}, {"name", map.recipe}, {"summary", map.summary}}},
          {"aircraft", {{"key", map.aircraft_key}, {"name", map.aircraft}}},
          {"card", {{"key", map.card_key}, {"name", map.card}}},
          {"sensors", map.sensors},
          {"first_seed", map.first_seed},
          {"airframe_seed", map.airframe_seed},
          {"mass_kg", number(map.mass_kg)},
          {"cg_aft_m", number(map.cg_aft_m)},
          {"wanted_margin_kt", number(map.wanted_margin_kt)},
          {"wanted_uncertainty_kt", number(map.wanted_uncertainty_kt)},
          {"airs", airs},
          {"pilots", map.hands},
          {"lines", lines},
          {"base_cell", map.base_cell},
          {"sensitivity", sensitivity_plan(map.sensitivity)}};
}

Json planned_cell(const MapCell& cell) {
  return {{"key", cell.key},       {"air", cell.air},     {"pilot", cell.hand},
          {"varied", cell.varied}, {"value", cell.value}, {"sorties", cell.sorties}};
}

std::string text_of(const Json& json) {
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace map_json

namespace {

constexpr const char* kPlanFormat = "stallwright-map-plan-1";

std::size_t index_below(const JsonNode& node, std::size_t end) {
  const int value = node.count();
  if (static_cast<std::size_t>(value) >= end) node.fail("a number under " + std::to_string(end));
  return static_cast<std::size_t>(value);
}

std::uint64_t seed(const nlohmann::json& json, const JsonNode& root, const char* key) {
  const JsonNode node = root.at(key);
  if (!json[key].is_number_unsigned()) node.fail("a whole number of 0 or more");
  return json[key].get<std::uint64_t>();
}

MapCell read_cell(const JsonNode& node, const StudyMap& map) {
  MapCell cell;
  cell.key = node.at("key").text();
  // It names files: nothing that leads out of the folder.
  if (cell.key.empty() ||
      cell.key.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") != std::string::npos)
    node.at("key").fail("small letters, digits and hyphens");
  cell.air = index_below(node.at("air"), map.airs.size());
  cell.hand = index_below(node.at("pilot"), map.hands.size());
  cell.varied = node.at("varied").text();
  cell.value = node.at("value").text();
  cell.sorties = node.at("sorties").count();
  if (cell.sorties < 1 || cell.sorties > kMostSorties)
    node.at("sorties").fail("1 to " + std::to_string(kMostSorties));
  return cell;
}

void read_lines(const JsonNode& root, StudyMap& map) {
  for (const JsonNode& air : root.at("airs").elements())
    map.airs.push_back({air.at("name").text(), air.at("sigma_mps").number_or_none()});
  map.hands = root.at("pilots").texts();
  for (const JsonNode& node : root.at("lines").elements()) {
    MapLine line;
    line.name = node.at("name").text();
    line.set = static_cast<std::size_t>(node.at("set").count());
    line.card_point = static_cast<std::size_t>(node.at("card_point").count());
    line.flap_deg = node.at("flap_deg").number_or_none();
    line.is_stall = node.at("stall").boolean();
    line.share = node.at("share").number_or_none();
    line.window_s = node.at("window_s").number_or_none();
    map.lines.push_back(line);
  }
}

void read_sensitivity(const JsonNode& node, StudyMap& map) {
  Sensitivity& about = map.sensitivity;
  about.base = node.at("base").count();
  if (about.base < 1 || about.base > kMostBase) node.at("base").fail("1 to 65536");
  about.loadings = node.at("loadings").count();
  if (about.loadings < 1 || about.loadings > 12) node.at("loadings").fail("1 to 12");
  for (const JsonNode& input : node.at("inputs").elements())
    about.inputs.push_back({input.at("name").text(), input.at("from").text(), input.at("to").text()});
  if (about.inputs.size() != static_cast<std::size_t>(kSensitivityInputs))
    node.at("inputs").fail(std::to_string(kSensitivityInputs) + " inputs");
  lay_out_sensitivity(map);
}

nlohmann::json parsed(const std::filesystem::path& file) {
  std::error_code error;
  std::ifstream in(file, std::ios::binary);
  if (!in || std::filesystem::is_directory(file, error))
    throw InputError(file.string() + ": expected the plan of a study, found no such file");
  const std::string text(std::istreambuf_iterator<char>(in), {});
  try {
    return nlohmann::json::parse(text);
  } catch (const nlohmann::json::parse_error& e) {
    throw InputError(file.string() + ": expected JSON, found something else at byte " +
                     std::to_string(e.byte));
  }
}

}  // namespace

std::string plan_to_json(const StudyMap& map) {
  map_json::Json json = map_json::head(map, kPlanFormat);
  json["cells"] = json["varied"] = map_json::Json::array();
  for (const MapCell& cell : map.cells) json["cells"].push_back(map_json::planned_cell(cell));
  for (const MapCell& cell : map.varied) json["varied"].push_back(map_json::planned_cell(cell));
  return map_json::text_of(json);
}

StudyMap read_plan(const std::filesystem::path& file) {
  const nlohmann::json json = parsed(file);
  const std::string name = file.string();
  const JsonNode root(json, name, "");
  if (root.at("format").text() != kPlanFormat) root.at("format").fail("\"" + std::string(kPlanFormat) + "\"");
  StudyMap map;
  map.version = root.at("version").text();
  map.identity = root.at("identity").text();
  map.recipe_key = root.at("recipe").at("key").text();
  map.recipe = root.at("recipe").at("name").text();
  map.summary = root.at("recipe").at("summary").text();
  map.aircraft_key = root.at("aircraft").at("key").text();
  map.aircraft = root.at("aircraft").at("name").text();
  map.card_key = root.at("card").at("key").text();
  map.card = root.at("card").at("name").text();
  map.sensors = root.at("sensors").text();
  map.first_seed = seed(json, root, "first_seed");
  map.airframe_seed = seed(json, root, "airframe_seed");
  // A plan may lack the loading: what was flown by it is whole all the same.
  if (root.has("mass_kg")) map.mass_kg = root.at("mass_kg").number_or_none();
  if (root.has("cg_aft_m")) map.cg_aft_m = root.at("cg_aft_m").number_or_none();
  map.wanted_margin_kt = root.at("wanted_margin_kt").number_or_none();
  map.wanted_uncertainty_kt = root.at("wanted_uncertainty_kt").number_or_none();
  read_lines(root, map);
  for (const JsonNode& node : root.at("cells").elements()) map.cells.push_back(read_cell(node, map));
  for (const JsonNode& node : root.at("varied").elements()) map.varied.push_back(read_cell(node, map));
  if (map.cells.size() != map.airs.size() * map.hands.size())
    root.at("cells").fail("as many cells as airs times pilots");
  map.base_cell = index_below(root.at("base_cell"), map.cells.size());
  if (json.contains("sensitivity") && !json["sensitivity"].is_null())
    read_sensitivity(root.at("sensitivity"), map);
  return map;
}

}  // namespace stallwright
