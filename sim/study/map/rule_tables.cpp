#include "sim/study/map/rule_tables.hpp"

#include "sim/report/number_text.hpp"
#include "sim/study/map/rules.hpp"

namespace stallwright {
namespace {

RuleTable limits_table(const StudyMap& map, std::size_t line) {
  constexpr double kWithin_kt[] = {1.0, 2.0, 3.0};
  RuleTable table;
  table.title = "Roughest air in which the " + line_name(map, line) +
                " still comes within so many knots, there and in every smoother air of the map (95th "
                "percentile of |error|; RMS where fewer than " +
                std::to_string(kLeastForPercentile) + " sorties gave it)";
  table.headings = {"pilot"};
  for (const double within : kWithin_kt) table.headings.push_back("within " + fixed(within, 0) + " kt");
  for (std::size_t hand = 0; hand < map.hands.size(); ++hand) {
    std::vector<std::string> row{map.hands[hand]};
    for (const double within : kWithin_kt) {
      const auto air = roughest_air(map, line, hand, within);
      row.push_back(air ? map.airs[*air].name : "in none");
    }
    table.rows.push_back(row);
  }
  return table;
}

/// Set points down, airs across.
template <class Cell>
RuleTable by_point_and_air(const StudyMap& map, const std::string& title, const Cell& cell_text) {
  RuleTable table{title, {"set point"}, {}};
  for (const MapAir& air : map.airs) table.headings.push_back(air.name);
  for (const std::size_t line : whole_lines(map)) {
    std::vector<std::string> row{line_name(map, line)};
    for (std::size_t air = 0; air < map.airs.size(); ++air) row.push_back(cell_text(line, air));
    table.rows.push_back(row);
  }
  return table;
}

}  // namespace

std::vector<RuleTable> rule_tables(const StudyMap& map) {
  std::vector<RuleTable> tables;
  if (map.cells.empty() || map.cells.front().lines.empty()) return tables;
  for (const std::size_t line : whole_lines(map))
    if (!map.lines[line].is_stall && map.lines[line].name == "warning")
      tables.push_back(limits_table(map, line));
  tables.push_back(by_point_and_air(
      map,
      "How long to record, s: the shortest of the windows whose RMS error, all pilots together, is within "
      "10 % of the whole record's",
      [&](std::size_t line, std::size_t air) {
        return map.lines[line].is_stall ? std::string(kNoNumber) : shortest(window_enough_s(map, line, air));
      }));
  tables.push_back(
      by_point_and_air(map,
                       "How many records altogether: the fewest that bring the 95 % interval under " +
                           fixed(map.wanted_uncertainty_kt, 1) +
                           " kt in 95 % of sorties, all pilots together, by their own budgets",
                       [&](std::size_t line, std::size_t air) {
                         const int records = records_enough(map, line, air);
                         return records > 0 ? std::to_string(records) : std::string("no number");
                       }));
  return tables;
}

}  // namespace stallwright
