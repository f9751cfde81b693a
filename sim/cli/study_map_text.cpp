#include "sim/cli/study_map_text.hpp"

#include <algorithm>
#include <cmath>

#include "sim/cli/cli_common.hpp"
#include "sim/cli/text_table.hpp"
#include "sim/report/number_text.hpp"
#include "sim/study/map/rule_tables.hpp"
#include "sim/study/map/rules.hpp"

namespace stallwright::cli {
namespace {

using Row = std::vector<std::string>;

/// What stands in no cell: an empty one would be one to write in.
std::string number(double value, int decimals) { return fixed(value, decimals); }

/// A table with a name for each row and numbers behind it.
std::string table(const std::string& title, const Row& headings, const std::vector<Row>& rows) {
  std::vector<bool> numeric(headings.size(), true);
  numeric.front() = false;
  return "\n" + filled("", title) + text_table(headings, numeric, rows);
}

/// Pilots down, airs across.
template <class Cell>
std::string by_pilot_and_air(const StudyMap& map, const std::string& title, const Cell& cell_text) {
  Row headings{"pilot"};
  for (const MapAir& air : map.airs) headings.push_back(air.name);
  std::vector<Row> rows;
  for (std::size_t hand = 0; hand < map.hands.size(); ++hand) {
    Row row{map.hands[hand]};
    for (std::size_t air = 0; air < map.airs.size(); ++air) row.push_back(cell_text(map.cell(air, hand)));
    rows.push_back(row);
  }
  return table(title, headings, rows);
}

std::string rms_text(const StudyMap& map, const LineResult& line) {
  const double rms = line.rms_error_kt.value;
  const bool too_much = 2.0 * rms > map.wanted_uncertainty_kt;
  return number(rms, 2) + (too_much ? "*" : " ");
}

std::string percent(const Chance& chance) { return number(100.0 * chance.share(), 1); }

std::string head_text(const StudyMap& map) {
  int sorties = 0, failed = 0;
  for (std::size_t i = 0; i < map.flown_cells(); ++i) {
    sorties += map.flown_cell(i).sorties;
    failed += map.flown_cell(i).failed;
  }
  return filled("", map.recipe + ": " + map.aircraft + ", " + map.card + ", " + map.sensors + " sensors; " +
                        std::to_string(sorties) + " sorties in " + std::to_string(map.flown_cells()) +
                        " groups, seeds from " + std::to_string(map.first_seed) + "; " +
                        std::to_string(failed) + " were not finished.") +
         filled("", "Errors are measured less true, in knots. * twice the RMS is more than the " +
                        number(map.wanted_uncertainty_kt, 1) + " kt of uncertainty that the card wants.");
}

std::string varied_text(const StudyMap& map) {
  if (map.varied.empty()) return "";
  const MapCell& base = map.unvaried;
  Row headings{"changed"};
  for (const std::size_t line : whole_lines(map)) headings.push_back(line_name(map, line));
  std::vector<Row> rows;
  const auto add = [&](const std::string& name, const MapCell& cell) {
    Row row{name};
    for (const std::size_t line : whole_lines(map)) row.push_back(rms_text(map, cell.lines.at(line)));
    rows.push_back(row);
  };
  add("nothing", base);
  for (const MapCell& cell : map.varied) add(cell.varied + " " + cell.value, cell);
  return table("RMS error, kt, with one thing changed: " + map.airs[base.air].name + " air, " +
                   map.hands[base.hand] + " pilot; " + std::to_string(base.sorties) +
                   " sorties with the same seeds",
               headings, rows);
}

std::string rules_text(const StudyMap& map) {
  std::string text = "\nRules of thumb\n";
  for (const RuleTable& rule : rule_tables(map)) text += table(rule.title, rule.headings, rule.rows);
  return text;
}

std::string sensitivity_text(const StudyMap& map) {
  const Sensitivity& about = map.sensitivity;
  if (about.indices.empty()) return "";
  Row headings{"input"};
  for (const std::size_t line : whole_lines(map)) headings.push_back(line_name(map, line));
  std::vector<Row> rows;
  for (std::size_t input = 0; input < about.inputs.size(); ++input) {
    Row row{about.inputs[input].name};
    for (const std::size_t line : whole_lines(map)) {
      const SobolIndex& index = about.indices[line].at(input);
      row.push_back(number(index.first, 2) + " / " + number(index.total, 2));
    }
    rows.push_back(row);
  }
  return table(
      "What matters most: shares of the variance of |error| that go back to each input, alone / with "
      "what it does together with others; " +
          std::to_string(about.cell.sorties) +
          " sorties with everything varied at once; intervals in study.json. From few sorties a share may "
          "come out under 0 or over 1.",
      headings, rows);
}

}  // namespace

std::string map_text(const StudyMap& map) {
  std::string text = head_text(map);
  for (const std::size_t line : whole_lines(map))
    text += by_pilot_and_air(map, "RMS error of the " + line_name(map, line) + ", kt",
                             [&](const MapCell& cell) { return rms_text(map, cell.lines.at(line)); });
  text += by_pilot_and_air(map, "Kept by the debrief, % of the sets that it judged",
                           [](const MapCell& cell) { return percent(cell.kept); });
  text += by_pilot_and_air(map,
                           "Warning less than " + number(map.wanted_margin_kt, 1) +
                               " kt above the true stall at 1 g, % of sorties that gave one",
                           [](const MapCell& cell) { return percent(cell.late_warning); });
  text += by_pilot_and_air(map, "A set out of order, % of sorties with a complete one",
                           [](const MapCell& cell) { return percent(cell.out_of_order); });
  return text + varied_text(map) + sensitivity_text(map) + rules_text(map);
}

}  // namespace stallwright::cli
