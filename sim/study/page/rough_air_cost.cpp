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

std::string kt(double value, int decimals = 2) { return fixed(value, decimals) + " kt"; }

/// "199 sorties of the one, 200 of the other", short where they are as many.
std::string sorties_words(int smooth, int rough) {
  return smooth == rough ? std::to_string(smooth) + " sorties in each"
                         : std::to_string(smooth) + " sorties against " + std::to_string(rough);
}

/// What the debrief says of the sorties of an air and one rougher.
std::string kept_words(const StudyMap& map, std::size_t smooth, std::size_t rough, std::size_t hand) {
  const auto percent = [&](std::size_t air) {
    const Chance& kept = map.cell(air, hand).kept;
    const std::string text = fixed(100.0 * kept.share(), 0);
    if (text == "100" && kept.times < kept.of) return std::string("over 99 %");
    return text == "0" && kept.times > 0 ? std::string("under 1 %") : text + " %";
  };
  if (map.cell(smooth, hand).kept.of == 0 || map.cell(rough, hand).kept.of == 0) return "";
  std::string text =
      " The debrief keeps " + percent(smooth) + " of the sets flown " + in_air(map.airs[smooth]);
  if (rough != smooth) text += ", " + percent(rough) + " of those " + in_air(map.airs[rough]);
  return text + ".";
}

/// Nothing to compare: says where too few sorties gave the set point.
std::string unknown_words(const StudyMap& map) {
  const std::optional<std::size_t> line = example_line(map);
  if (!line || map.airs.empty() || map.hands.empty())
    return "This study does not tell what rough air costs: its card has no steady point.";
  const std::vector<std::size_t> airs = airs_by_roughness(map);
  std::string text = "This study does not tell what rough air costs: a " + map.hands[example_hand(map)] +
                     " pilot got the " + line_name(map, *line) + " in ";
  const auto count = [&](std::size_t air) {
    const MapCell& cell = map.cell(air, example_hand(map));
    return std::to_string(cell.lines.at(*line).found) + " of " + std::to_string(cell.sorties) + " sorties " +
           in_air(map.airs[air]);
  };
  text += count(airs.front());
  if (airs.size() > 1) text += ", in " + count(airs.back());
  return text + "; it takes " + std::to_string(kLeastForInterval) + " to tell.";
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
  if (smooth.found < kLeastForInterval || rough.found < kLeastForInterval) return {};
  cost.percentile = std::isfinite(smooth.p95_error_kt.value) && std::isfinite(rough.p95_error_kt.value);
  cost.smooth_kt = cost.percentile ? smooth.p95_error_kt : smooth.rms_error_kt;
  cost.rough_kt = cost.percentile ? rough.p95_error_kt : rough.rms_error_kt;
  if (map.lines[*line].name == "warning") cost.margin_kt = smooth_cell.warning_margin_kt;
  return cost;
}

std::string rough_air_sentence(const StudyMap& map) {
  const std::optional<RoughAirCost> cost = rough_air_cost(map);
  if (!cost) return unknown_words(map);
  const std::string kept = kept_words(map, cost->smooth, cost->rough, cost->hand);
  std::string text =
      capital(in_air(map.airs[cost->smooth])) + " a " + map.hands[cost->hand] + " pilot's " +
      line_name(map, cost->line) +
      (cost->percentile ? " comes out within " + kt(cost->smooth_kt.value) + " (95 % of sorties)"
                        : " is off by " + kt(cost->smooth_kt.value) + " RMS");
  if (cost->rough == cost->smooth) return text + "; the study has no rougher air to compare it with." + kept;
  text += ", " + in_air(map.airs[cost->rough]) + (cost->percentile ? " within " : " by ") +
          kt(cost->rough_kt.value) + ": ";
  const std::string sorties = sorties_words(map.cell(cost->smooth, cost->hand).lines.at(cost->line).found,
                                            map.cell(cost->rough, cost->hand).lines.at(cost->line).found);
  if (!cost->apart())
    return text + "the 95 % intervals of the two overlap, and more sorties might tell them apart (" +
           sorties + ")." + kept;
  text += "rough air costs " + kt(cost->cost_kt());
  if (std::isfinite(cost->margin_kt))
    text += (cost->cost_kt() < cost->margin_kt ? " of the " : ", all of the ") + kt(cost->margin_kt, 1) +
            " that stand between this warning and the stall at 1 g";
  if (!cost->percentile) text += " (" + sorties + ": too few for a percentile)";
  return text + "." + kept;
}

}  // namespace stallwright
