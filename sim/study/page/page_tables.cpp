// The tables of the study page: windows, one thing varied at a time, rules of thumb.
#include <cmath>

#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/study/map/rule_tables.hpp"
#include "sim/study/map/rules.hpp"
#include "sim/study/page/page_parts.hpp"
#include "sim/study/page/rough_air_cost.hpp"

namespace stallwright::study_parts {
namespace {

/// The number large enough to read, its interval small below.
std::string estimate_cell(const Estimate& estimate) {
  if (!std::isfinite(estimate.value)) return kNoNumber;
  const std::string value = page_fixed(estimate.value, 2);
  if (!std::isfinite(estimate.interval.lower)) return value;
  return value + html::text_element(
                     "span",
                     page_fixed(estimate.interval.lower, 2) + " to " + page_fixed(estimate.interval.upper, 2),
                     "class=\"small\"");
}

std::vector<bool> numbers_after_first(std::size_t columns) {
  std::vector<bool> numeric(columns, true);
  numeric.front() = false;
  return numeric;
}

html::Table window_table(const StudyMap& map, std::size_t whole, std::size_t hand) {
  html::Table table;
  table.caption = line_name(map, whole) + ": RMS error, kt";
  table.headings = {"air"};
  std::vector<std::size_t> windows;
  for (std::size_t line = 0; line < map.lines.size(); ++line) {
    const MapLine& l = map.lines[line];
    if (l.is_stall || l.set != map.lines[whole].set || l.card_point != map.lines[whole].card_point) continue;
    windows.push_back(line);
    table.headings.push_back(shortest(l.window_s) + " s");
  }
  table.numeric = numbers_after_first(table.headings.size());
  for (std::size_t air = 0; air < map.airs.size(); ++air) {
    std::vector<std::string> row{escaped(map.airs[air].name)};
    for (const std::size_t line : windows)
      row.push_back(estimate_cell(map.cell(air, hand).lines.at(line).rms_error_kt));
    table.rows.push_back(row);
  }
  return table;
}

}  // namespace

std::string estimate_words(const Estimate& estimate, int decimals) {
  if (!std::isfinite(estimate.value)) return kNoNumber;
  const std::string value = page_fixed(estimate.value, decimals);
  if (!std::isfinite(estimate.interval.lower)) return value;
  return value + " (" + page_fixed(estimate.interval.lower, decimals) + " to " +
         page_fixed(estimate.interval.upper, decimals) + ")";
}

std::string windows(const StudyMap& map) {
  const std::size_t hand = example_hand(map);
  std::string tables;
  for (const std::size_t line : whole_lines(map))
    if (!map.lines[line].is_stall) tables += html::element("div", window_table(map, line, hand).str());
  if (tables.empty()) return "";
  return html::text_element("p", "The same sorties, reduced from the beginning of each record only: a " +
                                     map.hands[hand] + " pilot. 95 % intervals by bootstrap.") +
         html::element("div", tables, "class=\"pair\"");
}

std::string varied(const StudyMap& map) {
  if (map.varied.empty()) return "";
  const MapCell& base = map.unvaried;
  html::Table table;
  table.caption = "RMS error, kt, with its 95 % interval, and mean error; the same seeds in each row; " +
                  in_air(map.airs[base.air]) + ", " + map.hands[base.hand] + " pilot";
  table.headings = {"changed", "sorties"};
  for (const std::size_t line : whole_lines(map)) table.headings.push_back(line_name(map, line));
  table.numeric = numbers_after_first(table.headings.size());
  const auto add = [&](const std::string& name, const MapCell& cell) {
    std::vector<std::string> row{escaped(name), std::to_string(cell.sorties)};
    for (const std::size_t line : whole_lines(map)) {
      const LineResult& result = cell.lines.at(line);
      row.push_back(
          estimate_cell(result.rms_error_kt) +
          html::text_element("span", "mean " + page_fixed(result.mean_error_kt, 2), "class=\"small\""));
    }
    table.rows.push_back(row);
  };
  add("nothing", base);
  for (const MapCell& cell : map.varied) add(cell.varied + ": " + cell.value, cell);
  return table.str();
}

std::string rules(const StudyMap& map) {
  std::string tables;
  for (const RuleTable& rule : rule_tables(map)) {
    html::Table table;
    table.caption = rule.title;
    table.headings = rule.headings;
    table.numeric.assign(rule.headings.size(), false);
    for (const std::vector<std::string>& texts : rule.rows) {
      std::vector<std::string> row;
      for (const std::string& text : texts) row.push_back(escaped(text));
      table.rows.push_back(row);
    }
    tables += html::element("div", table.str());
  }
  return tables.empty() ? "" : html::element("div", tables, "class=\"pair\"");
}

}  // namespace stallwright::study_parts
