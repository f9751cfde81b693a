#include "sim/study/map/rule_tables.hpp"

#include <algorithm>

#include "sim/report/number_text.hpp"
#include "sim/study/coverage_grid.hpp"
#include "sim/study/map/rules.hpp"

namespace stallwright {
namespace {

/// Which measure the rows of the table go by.
std::string measure_words(const StudyMap& map, std::size_t line) {
  std::size_t by_percentile = 0;
  for (std::size_t hand = 0; hand < map.hands.size(); ++hand)
    by_percentile += has_percentiles(map, line, hand) ? 1 : 0;
  if (by_percentile == map.hands.size()) return "95 % of sorties do";
  return by_percentile == 0 ? "RMS error: too few sorties for a percentile"
                            : "95 % of sorties do; of pilots with *, RMS error: too few sorties";
}

RuleTable limits_table(const StudyMap& map, std::size_t line) {
  constexpr double kWithin_kt[] = {1.0, 2.0, 3.0};
  const std::size_t smoothest = airs_by_roughness(map).front();
  const bool mixed = measure_words(map, line).find('*') != std::string::npos;
  RuleTable table;
  table.title = "Roughest air in which the " + line_name(map, line) +
                " still comes within so many knots, there and in every smoother air of the map (" +
                measure_words(map, line) + ")";
  table.headings = {"pilot"};
  for (const double within : kWithin_kt) table.headings.push_back("within " + fixed(within, 0) + " kt");
  for (std::size_t hand = 0; hand < map.hands.size(); ++hand) {
    std::vector<std::string> row{map.hands[hand] + (mixed && !has_percentiles(map, line, hand) ? "*" : "")};
    const bool known = map.cell(smoothest, hand).lines.at(line).found >= kLeastForInterval;
    for (const double within : kWithin_kt) {
      const auto air = roughest_air(map, line, hand, within);
      row.push_back(air ? map.airs[*air].name : known ? "in none" : kNoNumber);
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
  const std::string asked = fixed(100.0 * kAskedCoverage.lower, 0) + " %";
  tables.push_back(
      by_point_and_air(map, "How often the 95 % intervals hold the truth, % of sorties, all pilots together",
                       [&](std::size_t line, std::size_t air) {
                         return fixed(100.0 * pooled_coverage(map, line, air).share(), 0);
                       }));
  tables.push_back(by_point_and_air(map,
                                    "How long to record, s: the shortest window whose RMS error, all pilots "
                                    "together, is within 10 % of the "
                                    "whole record's and whose intervals hold the truth in " +
                                        asked + " of sorties",
                                    [&](std::size_t line, std::size_t air) {
                                      return map.lines[line].is_stall
                                                 ? std::string(kNoNumber)
                                                 : shortest(window_enough_s(map, line, air));
                                    }));
  tables.push_back(by_point_and_air(
      map,
      "How many records altogether: the fewest that bring the 95 % interval under " +
          fixed(map.wanted_uncertainty_kt, 1) +
          " kt in 95 % of sorties, all pilots together, by their own budgets; none given where "
          "those hold the truth in fewer than " +
          asked + ", for what is off by rule does not average out",
      [&](std::size_t line, std::size_t air) {
        const std::optional<int> records = records_enough(map, line, air);
        if (!records) return std::string(kNoNumber);
        return *records > 0 ? std::to_string(*records) : std::string("no number");
      }));
  return tables;
}

}  // namespace stallwright
