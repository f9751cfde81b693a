#include <algorithm>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "aircraft/input_error.hpp"
#include "sim/reduction/set_points_json.hpp"
#include "sim/reduction/set_points_json_node.hpp"

namespace stallwright {
namespace {

using Json = nlohmann::json;
using Node = JsonNode;

double optional_number(const Node& node, const char* key) {
  return node.has(key) ? node.at(key).number_or_none() : kNone;
}

bool optional_boolean(const Node& node, const char* key) { return node.has(key) && node.at(key).boolean(); }

int optional_count(const Node& node, const char* key) { return node.has(key) ? node.at(key).count() : 0; }

std::vector<std::string> optional_texts(const Node& node, const char* key) {
  return node.has(key) ? node.at(key).texts() : std::vector<std::string>{};
}

Reading read_reading(const Node& node) {
  Reading reading;
  reading.ratio = node.at("ratio").number_or_none();
  reading.u = node.at("u").uncertainty();
  reading.type_a_u = node.has("type_a_u") ? node.at("type_a_u").uncertainty() : kNone;
  reading.dof = node.has("dof") ? node.at("dof").degrees_of_freedom(reading.u) : kNone;
  return reading;
}

void read_readings(const Node& node, SetPoint& point) {
  point.is_stall = node.has("max_lift");
  if (point.is_stall) {
    point.at_break = read_reading(node.at("break"));
    point.peak = read_reading(node.at("peak"));
    point.max_lift = read_reading(node.at("max_lift"));
  } else {
    point.spot = read_reading(node.at("spot"));
    point.window_mean = read_reading(node.at("window_mean"));
    point.lift_corrected = read_reading(node.at("lift_corrected"));
  }
}

Shared read_shared(const Node& node) {
  const std::string text = node.text();
  if (text == "record") return Shared::record;
  if (text == "sortie") return Shared::sortie;
  if (text == "installation") return Shared::installation;
  node.fail("\"record\", \"sortie\" or \"installation\"");
}

BudgetLine read_budget_line(const Node& node) {
  BudgetLine line;
  line.name = node.at("name").text();
  const std::string kind = node.at("kind").text();
  if (kind != "A" && kind != "B") node.at("kind").fail("\"A\" or \"B\"");
  line.kind = kind[0];
  line.u_ratio = node.at("u_ratio").uncertainty();
  line.dof = node.at("dof").degrees_of_freedom(line.u_ratio);
  if (node.has("shared")) line.shared = read_shared(node.at("shared"));
  if (node.has("note")) line.note = node.at("note").text();
  return line;
}

RecordWindow read_window(const Node& node) {
  RecordWindow window;
  window.point = static_cast<std::size_t>(node.at("point").count());
  window.sortie = optional_count(node, "sortie");
  window.repeat = optional_count(node, "repeat");
  window.attempt = optional_count(node, "attempt");
  window.begin_s = node.at("begin_s").number_or_none();
  window.end_s = node.at("end_s").number_or_none();
  window.button_s = optional_number(node, "button_s");
  window.left_band = optional_boolean(node, "left_band");
  window.forced = optional_boolean(node, "forced");
  window.broke = optional_boolean(node, "broke");
  window.break_s = optional_number(node, "break_s");
  if (node.has("break_sign")) window.break_sign = node.at("break_sign").text();
  window.entry_rate_ktps = optional_number(node, "entry_rate_ktps");
  window.load_factor_sd = optional_number(node, "load_factor_sd");
  return window;
}

SetPoint read_point(const Node& node) {
  SetPoint point;
  point.name = node.at("name").text();
  point.ratio = node.at("ratio").number_or_none();
  point.u = node.at("u").uncertainty();
  point.dof = node.at("dof").degrees_of_freedom(point.u);
  const std::vector<Node> interval = node.at("interval_95").elements();
  if (interval.size() != 2) node.at("interval_95").fail("a list of 2, low and high");
  point.interval_low = interval[0].number_or_none();
  point.interval_high = interval[1].number_or_none();
  if (point.interval_low > point.interval_high) interval[1].fail("a number not below interval_95[0]");
  point.speed_kt = node.at("speed_kt").number_or_none();
  point.target_kt = optional_number(node, "target_kt");
  point.slope_per_kt = optional_number(node, "slope_per_kt");
  point.card_point = static_cast<std::size_t>(optional_count(node, "card_point"));
  for (const Node& line : node.at("budget").elements()) point.budget.push_back(read_budget_line(line));
  point.flags = node.at("flags").texts();
  read_readings(node.at("readings"), point);
  if (node.has("windows"))
    for (const Node& window : node.at("windows").elements()) point.windows.push_back(read_window(window));
  return point;
}

SetPointSet read_set(const Node& node) {
  SetPointSet set;
  set.flap_deg = node.at("flap_deg").number_or_none();
  set.mass_kg = node.at("mass_kg").number_or_none();
  set.order_ok = node.at("order_ok").boolean();
  set.order_notes = optional_texts(node, "order_notes");
  set.slope_per_x = optional_number(node, "slope_per_x");
  for (const Node& point : node.at("points").elements()) set.points.push_back(read_point(point));
  return set;
}

Json parsed(std::string_view text, const std::string& file) {
  try {
    return Json::parse(text);
  } catch (const Json::parse_error& error) {
    const std::size_t place = std::min(error.byte > 0 ? error.byte - 1 : 0, text.size());
    const auto line = 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(place), '\n');
    const bool at_end = place >= text.size();
    throw InputError(file + ":" + std::to_string(line) + ": expected JSON, found " +
                     (at_end ? "the end of the file"
                             : "'" + JsonNode::one_line(std::string(text.substr(place, 20))) + "'"));
  } catch (const Json::exception&) {
    throw InputError(file + ": expected numbers that a double can hold, found a larger one");
  }
}

}  // namespace

SetPoints set_points_from_json(std::string_view text, const std::string& file) {
  const Json json = parsed(text, file);
  const Node root(json, file, "");
  if (root.at("format").text() != kSetPointsFormat)
    root.at("format").fail('"' + std::string(kSetPointsFormat) + '"');
  SetPoints set_points;
  set_points.card = root.at("card").text();
  set_points.aircraft = root.at("aircraft").text();
  set_points.warnings = optional_texts(root, "warnings");
  for (const Node& set : root.at("sets").elements()) set_points.sets.push_back(read_set(set));
  return set_points;
}

SetPoints read_set_points(const std::filesystem::path& file) {
  if (std::filesystem::is_directory(file))
    throw InputError(file.string() + ": expected a set-points file, found a folder");
  std::ifstream in(file, std::ios::binary);
  if (!in) throw InputError(file.string() + ": expected a set-points file, found none that can be read");
  const std::string text((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
  return set_points_from_json(text, file.string());
}

}  // namespace stallwright
