#include "sim/study/page/rough_air_cost.hpp"

#include <algorithm>
#include <cmath>

#include "sim/report/number_text.hpp"
#include "sim/study/map/rules.hpp"

namespace stallwright {
namespace {

std::optional<std::size_t> example_line(const StudyMap& map) {
  std::optional<std::size_t> steady;
  for (const std::size_t line : whole_lines(map)) {
    if (map.lines[line].is_stall) continue;
    if (map.lines[line].name == "warning") return line;
    if (!steady) steady = line;
  }
  return steady;
}

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string kt(double value) { return fixed(value, 1) + " kt"; }

std::string sorties_words(const StudyMap& map, const RoughAirCost& cost) {
  const int smooth = map.cell(cost.smooth, cost.hand).lines.at(cost.line).found;
  const int rough = map.cell(cost.rough, cost.hand).lines.at(cost.line).found;
  return std::to_string(std::min(smooth, rough));
}

}  // namespace

std::size_t example_hand(const StudyMap& map) {
  const auto current = std::find(map.hands.begin(), map.hands.end(), "current");
  return current != map.hands.end() ? static_cast<std::size_t>(current - map.hands.begin())
                                    : map.hands.size() / 2;
}

std::string in_air(const MapAir& air) {
  const std::string day = "day ";
  return air.name.rfind(day, 0) == 0 ? "at " + air.name.substr(day.size()) + " on a fair day"
                                     : "in " + air.name + " air";
}

std::optional<RoughAirCost> rough_air_cost(const StudyMap& map) {
  const std::optional<std::size_t> line = example_line(map);
  if (!line || map.airs.empty() || map.hands.empty()) return {};
  const std::vector<std::size_t> airs = airs_by_roughness(map);
  RoughAirCost cost;
  cost.line = *line;
  cost.hand = example_hand(map);
  cost.smooth = airs.front();
  cost.rough = airs.back();
  const MapCell& smooth_cell = map.cell(cost.smooth, cost.hand);
  const LineResult& smooth = smooth_cell.lines.at(*line);
  const LineResult& rough = map.cell(cost.rough, cost.hand).lines.at(*line);
  if (smooth.found == 0 || rough.found == 0) return {};
  cost.percentile = std::isfinite(smooth.p95_error_kt.value) && std::isfinite(rough.p95_error_kt.value);
  cost.smooth_kt = cost.percentile ? smooth.p95_error_kt : smooth.rms_error_kt;
  cost.rough_kt = cost.percentile ? rough.p95_error_kt : rough.rms_error_kt;
  if (map.lines[*line].name == "warning") cost.margin_kt = smooth_cell.warning_margin_kt;
  return cost;
}

std::string rough_air_sentence(const StudyMap& map) {
  const std::optional<RoughAirCost> cost = rough_air_cost(map);
  if (!cost) return "This study does not tell what rough air costs: too few sorties gave the set point.";
  std::string text =
      capital(in_air(map.airs[cost->smooth])) + " a " + map.hands[cost->hand] + " pilot's " +
      line_name(map, cost->line) +
      (cost->percentile ? " comes out within " + kt(cost->smooth_kt.value) + " (95 % of sorties)"
                        : " is off by " + kt(cost->smooth_kt.value) + " RMS");
  if (cost->rough == cost->smooth) return text + "; the study has no rougher air to compare it with.";
  text += ", " + in_air(map.airs[cost->rough]) + (cost->percentile ? " within " : " by ") +
          kt(cost->rough_kt.value) + ": ";
  if (!cost->beyond_chance())
    return text + "between the two airs this study sees no difference beyond chance (" +
           sorties_words(map, *cost) + " sorties in each).";
  text += "rough air costs " + kt(cost->cost_kt());
  if (std::isfinite(cost->margin_kt))
    text += (cost->cost_kt() < cost->margin_kt ? " of the " : ", all of the ") + kt(cost->margin_kt) +
            " that stand between warning and stall";
  if (!cost->percentile)
    text += " (" + sorties_words(map, *cost) + " sorties in each: too few for a percentile)";
  return text + ".";
}

}  // namespace stallwright
