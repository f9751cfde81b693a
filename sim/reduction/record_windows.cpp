#include "sim/reduction/record_windows.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "aircraft/input_error.hpp"
#include "aircraft/toml_reader.hpp"

namespace stallwright {
namespace {

constexpr double kShortest_s = 1.0;

/// Repeats of a point are counted in order of time.
std::vector<ChosenRecord> numbered(std::vector<ChosenRecord> records) {
  std::stable_sort(records.begin(), records.end(),
                   [](const ChosenRecord& a, const ChosenRecord& b) { return a.begin_s < b.begin_s; });
  std::map<std::size_t, int> count;
  for (ChosenRecord& record : records) record.repeat = ++count[record.point];
  return records;
}

const GivenTarget* target_of(const ColumnMap& map, std::size_t point) {
  const auto at = std::find_if(map.targets.begin(), map.targets.end(),
                               [&](const GivenTarget& target) { return target.point == point; });
  return at == map.targets.end() ? nullptr : &*at;
}

/// Within the bands that the log can tell of; height is held against the beginning of the record.
bool in_bands(const LogRow& row, const LogRow& first, const TestPoint& point, const Lacks& lacks) {
  const Bands& bands = point.bands;
  const double off_kt = row.ias_kt - row.target_kt;
  const bool height_ok = lacks.altitude || point.power != PowerRule::level ||
                         std::abs(row.altitude_ft - first.altitude_ft) <= bands.altitude_ft;
  return off_kt >= -bands.speed_low_kt && off_kt <= bands.speed_high_kt && height_ok &&
         std::abs(row.bank_deg) <= bands.bank_deg;
}

void set_flap(const ColumnMap& map, const TestPoint& point, LogRow& row) {
  if (std::isfinite(row.flap_deg) && (map.has(Quantity::flap) || !map.flaps.empty())) return;
  if (point.flap_setting < map.flaps_deg.size())
    row.flap_deg = map.flaps_deg[point.flap_setting];
  else if (point.flap_setting == 0)
    row.flap_deg = 0.0;
  else
    throw InputError(map.file +
                     ": constants.flaps_deg: expected the angles of the card's flap settings up to " +
                     std::to_string(point.flap_setting) + ", found " + std::to_string(map.flaps_deg.size()));
}

void mark_rows(const ChosenRecord& chosen, const Record& record, const ColumnMap& map, const TestCard& card,
               OwnLog& log) {
  const TestPoint& point = card.points[chosen.point];
  for (std::size_t i = record.begin; i < record.end; ++i) {
    LogRow& row = log.rows[i];
    row.point = static_cast<int>(chosen.point) + 1;
    row.repeat = chosen.repeat;
    row.attempt = 1;
    row.recording = 1;
    set_flap(map, point, row);
    if (log.lacks.mass) row.mass_kg = stand_in_mass_kg(map, chosen.point);
    if (!point.is_steady()) continue;
    row.target_kt = own_target_kt(map, card, chosen.point, row.mass_kg);
    row.in_band = in_bands(row, log.rows[record.begin], point, log.lacks) ? 1 : 0;
  }
}

std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (const char c : text) out += c == '"' || c == '\\' ? std::string("\\") + c : std::string(1, c);
  return out + "\"";
}

/// Two decimals, as the rows have them.
std::string seconds_text(double s) { return number_text(std::round(s * 100.0) / 100.0); }

}  // namespace

std::vector<ChosenRecord> given_records(const ColumnMap& map, const TestCard& card, const OwnLog& log) {
  std::vector<ChosenRecord> records;
  const double first_s = log.rows.front().t_s, last_s = log.rows.back().t_s;
  for (std::size_t k = 0; k < map.records.size(); ++k) {
    const GivenRecord& given = map.records[k];
    const ChosenRecord record{given.point, 1, log_seconds(log, given.begin), log_seconds(log, given.end),
                              log_seconds(log, given.at_break)};
    const std::string at = map.file + ": record[" + std::to_string(k + 1) + "] (" +
                           card.points[given.point].name + "): expected ";
    const std::string found =
        ", found " + moment_text(log, record.begin_s) + " to " + moment_text(log, record.end_s);
    if (record.begin_s < first_s - 0.5 || record.end_s > last_s + 0.5)
      throw InputError(at + "times within the log, " + moment_text(log, first_s) + " to " +
                       moment_text(log, last_s) + found);
    if (record.end_s - record.begin_s < kShortest_s)
      throw InputError(at + "an end a second or more after the beginning" + found);
    if (record.break_s < record.begin_s || record.break_s > record.end_s)
      throw InputError(at + "the break between beginning and end, found " + moment_text(log, record.break_s));
    for (const ChosenRecord& other : records)
      if (record.begin_s < other.end_s && other.begin_s < record.end_s)
        throw InputError(at + "a time of its own, found that it overlaps the record from " +
                         moment_text(log, other.begin_s));
    records.push_back(record);
  }
  return numbered(std::move(records));
}

std::vector<ChosenRecord> marked_records(const ColumnMap& map, const TestCard& card, const OwnLog& log) {
  const std::string column = "column " + map.column(Quantity::mark)->name;
  std::vector<ChosenRecord> records;
  for (std::size_t i = 0; i < log.mark.size();) {
    std::size_t j = i + 1;
    while (j < log.mark.size() && log.mark[j] == log.mark[i]) ++j;
    const double number = log.mark[i];
    const bool is_point =
        number == std::floor(number) && number >= 1.0 && number <= static_cast<double>(card.points.size());
    if (number != 0.0 && map.mark == MarkMeaning::point && !is_point)
      throw InputError(log.file + ": " + column + ": expected 0 or the number of a point of the card, 1 to " +
                       std::to_string(card.points.size()) + ", found " + number_text(number) + " at " +
                       moment_text(log, log.rows[i].t_s));
    if (number != 0.0)
      records.push_back({map.mark == MarkMeaning::point ? static_cast<std::size_t>(number) - 1 : 0, 1,
                         log.rows[i].t_s, log.rows[j - 1].t_s});
    i = j;
  }
  if (map.mark == MarkMeaning::point) return numbered(std::move(records));
  std::vector<std::size_t> order;
  for (std::size_t k = 0; k < card.points.size(); ++k)
    order.insert(order.end(), static_cast<std::size_t>(card.points[k].repeats), k);
  if (records.size() != order.size())
    throw InputError(log.file + ": " + column + ": expected " + std::to_string(order.size()) +
                     " marked stretches, one for each point and repeat of the card, found " +
                     std::to_string(records.size()) + "; [[record]] in the map can list them instead");
  for (std::size_t k = 0; k < order.size(); ++k) records[k].point = order[k];
  return numbered(std::move(records));
}

double own_target_kt(const ColumnMap& map, const TestCard& card, std::size_t point, double mass_kg) {
  if (const GivenTarget* target = target_of(map, point))
    return std::isfinite(target->mass_kg) ? target->speed_kt * std::sqrt(mass_kg / target->mass_kg)
                                          : target->speed_kt;
  if (card.points[point].target == TargetKind::speed) return card.points[point].target_value;
  throw InputError(map.file + ": target: expected a [[target]] with speed_kt for the point " +
                   quoted(card.points[point].name) +
                   ", whose speed the card leaves to the aeroplane, found none");
}

double stand_in_mass_kg(const ColumnMap& map, std::size_t point) {
  const GivenTarget* own = target_of(map, point);
  if (own != nullptr && std::isfinite(own->mass_kg)) return own->mass_kg;
  for (const GivenTarget& target : map.targets)
    if (std::isfinite(target.mass_kg)) return target.mass_kg;
  throw InputError(
      map.file +
      ": expected the mass: column.mass, constants.mass_kg, constants.take_off_mass_kg or at least "
      "target.mass_kg, found none");
}

Record record_of(const OwnLog& log, const ChosenRecord& chosen) {
  return {row_at(log, chosen.begin_s), row_at(log, chosen.end_s + 0.5 * 0.02), chosen.point, chosen.repeat,
          1};
}

void mark_records(const std::vector<ChosenRecord>& records, const ColumnMap& map, const TestCard& card,
                  OwnLog& log) {
  for (const ChosenRecord& chosen : records) {
    const Record record = record_of(log, chosen);
    const std::string which = card.points[chosen.point].name + " from " + moment_text(log, chosen.begin_s);
    const double covered_s = 0.02 * static_cast<double>(record.end - record.begin);
    if (!unbroken(log, record.begin, record.end) || covered_s + 0.5 < chosen.end_s - chosen.begin_s)
      log.warnings.push_back(which + ": left out, the log has a gap in it");
    else if (covered_s < kShortest_s)
      log.warnings.push_back(which + ": left out, shorter than a second");
    else
      mark_rows(chosen, record, map, card, log);
  }
}

std::string records_toml(const std::vector<ChosenRecord>& records, const TestCard& card, const OwnLog& log) {
  std::string text =
      "# Found by the program, not by the pilot: hold each against the notes of the flight and correct it. "
      "Then put "
      "the\n# tables at the end of the map.\n";
  for (const ChosenRecord& record : records) {
    const TestPoint& point = card.points[record.point];
    text += "\n[[record]]\npoint = " + quoted(point.name) + "\n";
    text += "flap_setting = " + std::to_string(point.flap_setting) + "\n";
    const auto moment = [&](const char* key, double s) {
      return std::string(key) + " = " + seconds_text(s) + (log.clock ? "  # " + clock_text(s) : "") + "\n";
    };
    text += moment("begin_s", record.begin_s) + moment("end_s", record.end_s);
    if (std::isfinite(record.break_s)) text += moment("break_s", record.break_s);
  }
  return text;
}

}  // namespace stallwright
