#include "sim/reduction/column_map.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/toml_reader.hpp"

namespace stallwright {
namespace {

std::string quoted(const std::string& text) { return "\"" + text + "\""; }

std::string perhaps(const std::string& word, const std::vector<std::string>& known) {
  const std::string near = nearest_word(word, known);
  return quoted(word) + (near.empty() ? "" : "; perhaps " + quoted(near));
}

std::string listed(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

/// One of a few words, the nearest being named otherwise.
std::string word(const TomlTable& table, const char* key, const std::vector<std::string>& known) {
  std::string found = table.text(key, 60);
  if (std::find(known.begin(), known.end(), found) == known.end())
    table.reject(key, "one of " + listed(known), perhaps(found, known));
  return found;
}

double unit_of(const TomlTable& table, const QuantityKind& kind, MappedColumn& column) {
  if (kind.units.empty()) return 1.0;
  std::vector<std::string> names;
  for (const LogUnit& unit : kind.units) names.emplace_back(unit.name);
  column.unit = word(table, "unit", names);
  const auto at = std::find(names.begin(), names.end(), column.unit);
  return kind.units[static_cast<std::size_t>(at - names.begin())].si;
}

/// SI = sense * unit * (scale * number + offset)
MappedColumn read_column(const TomlTable& table, const QuantityKind& kind, bool may_shift) {
  for (const char* key : {"name", "unit", "positive", "scale", "offset"}) table.announce(key);
  MappedColumn column;
  column.name = table.text("name", 200);
  double si = unit_of(table, kind, column);
  if (*kind.positive != '\0' && table.has("positive") &&
      word(table, "positive", {kind.positive, kind.negative}) == kind.negative)
    si = -si;
  column.factor = si;
  if (!may_shift) return column;
  const double scale = table.number_or({"scale", unit::kNone, -1e6, 1e6}, 1.0);
  if (scale == 0.0) table.reject("scale", "a number that is not zero", "0");
  column.factor = si * scale;
  column.offset = si * table.number_or({"offset", unit::kNone, -1e9, 1e9}, 0.0);
  return column;
}

void read_stick(const TomlTable& table, ColumnMap& map) {
  map.stick_forward = table.number({"forward_stop", unit::kNone, -1e6, 1e6});
  map.stick_aft = table.number({"aft_stop", unit::kNone, -1e6, 1e6});
  if (map.stick_forward == map.stick_aft)
    table.reject("aft_stop", "another number than forward_stop", number_text(map.stick_aft));
}

void read_columns(const TomlTable& root, ColumnMap& map) {
  const TomlTable columns = root.table("column");
  for (const QuantityKind& kind : quantity_kinds()) columns.announce(kind.key);
  for (std::size_t q = 0; q < kQuantities; ++q) {
    const QuantityKind& kind = quantity_kinds()[q];
    if (!columns.has(kind.key)) continue;
    const auto quantity = static_cast<Quantity>(q);
    const TomlTable table = columns.table(kind.key);
    const bool plain = quantity == Quantity::time || quantity == Quantity::mark;
    map.columns[q] = read_column(table, kind, !plain);
    if (quantity == Quantity::stick) read_stick(table, map);
    if (quantity == Quantity::mark)
      map.mark = word(table, "means", {"recording", "point"}) == "point" ? MarkMeaning::point
                                                                         : MarkMeaning::recording;
  }
  if (!map.has(Quantity::time)) columns.table("time");  // refused there: it has to be given
  map.clock = map.column(Quantity::time)->unit == "clock";
  if (!map.has(Quantity::airspeed) && !map.has(Quantity::impact_pressure))
    root.reject("column", "column.airspeed or column.impact_pressure", "neither");
  if (!map.has(Quantity::probe_ratio) && !map.has(Quantity::probe_pressure))
    root.reject("column", "column.probe_ratio or column.probe_pressure", "neither");
  if (map.has(Quantity::probe_ratio) && map.has(Quantity::probe_pressure))
    root.reject("column", "column.probe_ratio or column.probe_pressure", "both");
}

/// KEY_s gives seconds of the log, KEY a time of day.
MapTime read_time(const TomlTable& table, const char* key, const char* key_s, bool needed) {
  table.announce(key);
  table.announce(key_s);
  if (table.has(key)) {
    const std::string text = table.text(key, 30);
    const auto seconds = clock_seconds(text);
    if (!seconds) table.reject(key, "a time of day hh:mm:ss", quoted(text));
    if (table.has(key_s)) table.reject(key, std::string("one of ") + key + " and " + key_s, "both");
    return {*seconds, true};
  }
  if (!needed && !table.has(key_s)) return {};
  return {table.number({key_s, unit::kSecond, -1e9, 1e10}), false};
}

/// Points by name, which is enough where no other flap setting has a point of that name.
std::size_t read_point(const TomlTable& table, const TestCard& card) {
  table.announce("point");
  table.announce("flap_setting");
  const std::string name = table.text("point", 40);
  const double flap = table.number_or({"flap_setting", unit::kNone, 0, 5}, kNone);
  std::vector<std::string> names;
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < card.points.size(); ++i) {
    names.push_back(card.points[i].name);
    const bool same_flap = std::isnan(flap) || static_cast<double>(card.points[i].flap_setting) == flap;
    if (card.points[i].name == name && same_flap) found.push_back(i);
  }
  if (found.empty()) {
    std::vector<std::string> unlike;
    for (const std::string& n : names)
      if (n != name && std::find(unlike.begin(), unlike.end(), n) == unlike.end()) unlike.push_back(n);
    if (unlike.size() < names.size() && std::find(names.begin(), names.end(), name) != names.end())
      table.reject("flap_setting", "a flap setting at which the card has " + quoted(name), number_text(flap));
    table.reject("point", "a point of the card (" + listed(unlike) + ")", perhaps(name, names));
  }
  if (found.size() > 1)
    table.reject("point", "flap_setting beside it, since the card has " + quoted(name) + " at several",
                 "none");
  return found.front();
}

GivenRecord read_record(const TomlTable& table, const TestCard& card) {
  GivenRecord record;
  record.point = read_point(table, card);
  record.begin = read_time(table, "begin", "begin_s", true);
  record.end = read_time(table, "end", "end_s", true);
  record.at_break = read_time(table, "break", "break_s", false);
  if (record.begin.clock == record.end.clock && !record.begin.clock && !(record.end.s > record.begin.s))
    table.reject("end_s", "a time after begin_s", number_text(record.end.s));
  if (record.at_break.given() && !card.points[record.point].is_stall())
    table.reject(record.at_break.clock ? "break" : "break_s", "it at a stall only",
                 "it at " + quoted(card.points[record.point].name));
  return record;
}

GivenTarget read_target(const TomlTable& table, const TestCard& card) {
  GivenTarget target;
  target.point = read_point(table, card);
  target.speed_kt = table.number({"speed_kt", {"kt", 1.0}, 20, 400});
  target.mass_kg = table.number_or({"mass_kg", unit::kKilogram, 50, 20000}, kNone);
  if (!card.points[target.point].is_steady())
    table.reject("point", "a steady point", quoted(card.points[target.point].name));
  return target;
}

void read_constants(const TomlTable& table, ColumnMap& map) {
  for (const char* key : {"mass_kg", "take_off_mass_kg", "fuel_kg_per_h", "flaps_deg"}) table.announce(key);
  map.mass_kg = table.number_or({"mass_kg", unit::kKilogram, 50, 20000}, kNone);
  map.take_off_mass_kg = table.number_or({"take_off_mass_kg", unit::kKilogram, 50, 20000}, kNone);
  map.fuel_kgph = table.number_or({"fuel_kg_per_h", {"kg/h", 1.0}, 0, 1000}, 0.0);
  map.take_off = read_time(table, "take_off", "take_off_s", false);
  if (std::isfinite(map.mass_kg) && std::isfinite(map.take_off_mass_kg))
    table.reject("mass_kg", "one of mass_kg and take_off_mass_kg", "both");
  if (table.has("flaps_deg"))
    map.flaps_deg = table.numbers({"flaps_deg", {"deg", 1.0}, -10, 90}, {1, 6, false});
}

void read_log_shape(const TomlTable& table, ColumnMap& map) {
  for (const char* key : {"header_line", "data_line", "separator", "decimal_comma"}) table.announce(key);
  const auto line = [&](const char* key, double least, double fallback) {
    const double value = table.number_or({key, unit::kNone, least, 100000}, fallback);
    if (value != std::floor(value)) table.reject(key, "a whole number", number_text(value));
    return value;
  };
  const double header = line("header_line", 1, 1);
  map.header_line = static_cast<std::size_t>(header);
  map.data_line = static_cast<std::size_t>(line("data_line", header + 1, header + 1));
  const std::string separator =
      table.has("separator") ? word(table, "separator", {"comma", "semicolon", "tab"}) : "comma";
  map.separator = separator == "tab" ? '\t' : separator == "semicolon" ? ';' : ',';
  map.decimal_comma = table.flag_or("decimal_comma", false);
  if (map.decimal_comma && map.separator == ',')
    table.reject("decimal_comma", "another separator than the comma", "true");
}

}  // namespace

ColumnMap load_column_map(const std::filesystem::path& file, const TestCard& card) {
  const TomlDocument document(file);
  const TomlTable root = document.root();
  for (const char* key : {"format", "log", "column", "constants", "flap", "target", "record"})
    root.announce(key);
  root.choice("format", {"stallwright-columns-1"});
  ColumnMap map;
  map.file = file.string();
  if (root.has("log")) read_log_shape(root.table("log"), map);
  read_columns(root, map);
  if (root.has("constants")) read_constants(root.table("constants"), map);
  for (const TomlTable& table : root.tables("flap", 0, 1000))
    map.flaps.push_back(
        {read_time(table, "from", "from_s", false), table.number({"deg", {"deg", 1.0}, -10, 90})});
  for (const TomlTable& table : root.tables("target", 0, 40)) {
    const GivenTarget target = read_target(table, card);
    for (const GivenTarget& other : map.targets)
      if (other.point == target.point)
        table.reject("point", "one target for each point",
                     "a second for " + quoted(card.points[target.point].name));
    map.targets.push_back(target);
  }
  for (const TomlTable& table : root.tables("record", 0, 1000))
    map.records.push_back(read_record(table, card));
  document.reject_unknown_keys();
  return map;
}

}  // namespace stallwright
