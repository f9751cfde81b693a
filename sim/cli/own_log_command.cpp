#include "sim/cli/own_log_command.hpp"

#include <algorithm>
#include <cmath>
#include <iostream>
#include <nlohmann/json.hpp>

#include "aircraft/input_error.hpp"
#include "sim/cli/cli_common.hpp"
#include "sim/cli/set_point_listing.hpp"
#include "sim/reduction/own_reduction.hpp"
#include "sim/reduction/record_finder.hpp"
#include "sim/reduction/set_points_json.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/whole_file.hpp"
#include "sim/sortie/test_card_file.hpp"

namespace stallwright::cli {
namespace {

namespace fs = std::filesystem;

const char* const kRealCaution =
    "These figures come from a log that the program cannot vouch for. Nothing here may be set in a real "
    "aeroplane "
    "without its flight manual, the procedure of the system's maker and a qualified person; where they say "
    "something "
    "else, they govern.";

std::string window_row(const std::string& name, const std::string& begin, const std::string& end,
                       const std::string& length, const std::string& speeds) {
  return "  " + padded(name, 22, false) + padded(begin, 24, true) + padded(end, 24, true) +
         padded(length, 10, true) + padded(speeds, 16, true) + "\n";
}

/// Speeds of a record: the mean of a steady one, first and lowest of a stall.
std::string speed_words(const ChosenRecord& record, const TestCard& card, const OwnLog& log) {
  const Record rows = record_of(log, record);
  double sum = 0.0, lowest = 1e9;
  for (std::size_t i = rows.begin; i < rows.end; ++i) {
    sum += log.rows[i].ias_kt;
    lowest = std::min(lowest, log.rows[i].ias_kt);
  }
  if (card.points[record.point].is_steady())
    return fixed(sum / static_cast<double>(rows.end - rows.begin), 1);
  return fixed(log.rows[rows.begin].ias_kt, 1) + " to " + fixed(lowest, 1);
}

std::string window_listing(const std::vector<ChosenRecord>& records, const TestCard& card,
                           const OwnLog& log) {
  std::string text = "Windows found in " + one_line(log.file) + ", to be approved:\n\n";
  text += window_row("point", "begin", "end", "length, s", "speed, kt");
  text += "  " + std::string(96, '-') + "\n";
  for (const ChosenRecord& record : records)
    text += window_row(one_line(card.points[record.point].name) +
                           (record.repeat > 1 ? " (" + std::to_string(record.repeat) + ")" : ""),
                       moment_text(log, record.begin_s), moment_text(log, record.end_s),
                       fixed(record.end_s - record.begin_s, 1), speed_words(record, card, log));
  for (std::size_t k = 0; k < card.points.size(); ++k) {
    const auto count = std::count_if(records.begin(), records.end(),
                                     [&](const ChosenRecord& record) { return record.point == k; });
    const bool sought = card.points[k].target != TargetKind::slow_through;  // which makes no set point
    if (sought && count < card.points[k].repeats)
      text += "  " + padded(one_line(card.points[k].name), 22, false) + "  " + std::to_string(count) +
              " of " + std::to_string(card.points[k].repeats) + " found\n";
  }
  text += "\n";
  for (const std::string& warning : log.warnings) text += filled("Warning: ", warning);
  return text;
}

std::string window_json(const std::vector<ChosenRecord>& records, const TestCard& card, const OwnLog& log) {
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const ChosenRecord& record : records)
    list.push_back({{"point", card.points[record.point].name},
                    {"flap_setting", card.points[record.point].flap_setting},
                    {"repeat", record.repeat},
                    {"begin_s", record.begin_s},
                    {"end_s", record.end_s}});
  return json_text({{"format", "stallwright-windows-1"},
                    {"accepted", false},
                    {"warnings", log.warnings},
                    {"records", std::move(list)}});
}

int show_windows(const std::vector<ChosenRecord>& records, const TestCard& card, const OwnLog& log,
                 bool json) {
  if (json) {
    std::cout << window_json(records, card, log);
    return kNo;
  }
  std::cout << window_listing(records, card, log)
            << filled("",
                      "Nothing is reduced yet. Hold the windows against the notes of the flight. Then run "
                      "again with --accept, or write them "
                      "with --windows FILE.toml, correct them there and put them at the end of the map.")
            << "\n"
            << filled("Caution: ", kRealCaution);
  return kNo;
}

/// The records, and whether the program found them by itself.
std::vector<ChosenRecord> choose(const ColumnMap& map, const TestCard& card, const OwnLog& log, bool& found) {
  found = map.records.empty() && !map.has(Quantity::mark);
  if (!map.records.empty()) return given_records(map, card, log);
  return found ? find_records_by_flight(map, card, log) : marked_records(map, card, log);
}

}  // namespace

void add_own_log_options(CLI::App& command, OwnLogOptions& options) {
  command
      .add_option(
          "--columns", options.columns,
          "LOG is any recorder's, from a real flight: a map says which columns it has and in which units "
          "(assets/columns/README.md); needs --card")
      ->type_name("MAP");
  command.add_flag(
      "--accept", options.accept,
      "Use the windows that were found in the log; without it they are shown and nothing is reduced");
  command
      .add_option("--windows", options.windows,
                  "Write the windows to this file, to correct and put at the end of MAP")
      ->type_name("FILE");
}

void refuse_without_columns(const OwnLogOptions& options) {
  const char* option = options.accept ? "--accept" : !options.windows.empty() ? "--windows" : nullptr;
  if (option != nullptr)
    throw InputError(std::string(option) + ": expected --columns MAP with it, found none");
}

int reduce_own_log_command(const OwnLogOptions& options, const OwnLogRequest& request) {
  if (request.card.empty())
    throw InputError("--card: expected the card that was flown, since a recorder's log has none beside it");
  const InstrumentGrade instruments =
      instrument_grade(request.sensors.empty() ? "standard" : request.sensors);
  const fs::path card_file = find_card_file(request.card);
  require_writable_place("--out", request.out, {request.log, options.columns, card_file});
  require_writable_place("--windows", options.windows,
                         {request.log, options.columns, card_file, request.out});
  const TestCard card = load_test_card(card_file);
  const ColumnMap map = load_column_map(options.columns, card);
  const OwnLog log = read_own_log(request.log, map);
  bool found = false;
  const std::vector<ChosenRecord> records = choose(map, card, log, found);
  if (found && !options.accept) {
    if (!options.windows.empty()) write_whole_file(options.windows, records_toml(records, card, log));
    return show_windows(records, card, log, request.json);
  }
  SetPoints set_points = reduce_own_log(log, records, map, card, instruments);
  const std::string listing = set_point_listing(set_points, instruments.name, card.wanted_uncertainty_kt) +
                              filled("Caution: ", kRealCaution);
  if (found) set_points.warnings.emplace_back("windows found by the program and accepted as they were");
  set_points.warnings.insert(set_points.warnings.begin(), kRealCaution);
  const std::string text = set_points_to_json(set_points);
  if (!options.windows.empty()) write_whole_file(options.windows, records_toml(records, card, log));
  if (!request.out.empty()) write_whole_file(request.out, text);
  std::cout << (request.json ? text : listing);
  return all_found(set_points) ? kYes : kNo;
}

}  // namespace stallwright::cli
