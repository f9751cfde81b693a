#include "sim/study/map/rules.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>

#include "sim/report/number_text.hpp"
#include "sim/study/coverage_grid.hpp"

namespace stallwright {
namespace {

/// Mean of f over the pilots of an air, NaN left out and weighted.
template <class Value, class Weight>
double over_pilots(const StudyMap& map, std::size_t air, const Value& value_of, const Weight& weight_of) {
  double sum = 0.0, weights = 0.0;
  for (std::size_t hand = 0; hand < map.hands.size(); ++hand) {
    const MapCell& cell = map.cell(air, hand);
    const double value = value_of(cell), weight = weight_of(cell);
    if (!std::isfinite(value)) continue;
    sum += weight * value;
    weights += weight;
  }
  return weights > 0.0 ? sum / weights : kNone;
}

double pooled_rms_kt(const StudyMap& map, std::size_t line, std::size_t air) {
  const auto square = [&](const MapCell& c) {
    return c.lines.at(line).rms_error_kt.value * c.lines.at(line).rms_error_kt.value;
  };
  return std::sqrt(over_pilots(map, air, square, [&](const MapCell& c) { return c.lines.at(line).found; }));
}

}  // namespace

double air_gust_mps(const StudyMap& map, std::size_t air) {
  const auto square = [](const MapCell& c) { return c.gust_rms_mps * c.gust_rms_mps; };
  return std::sqrt(over_pilots(map, air, square, [](const MapCell&) { return 1.0; }));
}

std::vector<std::size_t> airs_by_roughness(const StudyMap& map) {
  std::vector<std::size_t> airs(map.airs.size());
  std::iota(airs.begin(), airs.end(), std::size_t{0});
  std::vector<double> gusts;
  for (const std::size_t air : airs) {
    const double gust = air_gust_mps(map, air);
    gusts.push_back(std::isfinite(gust) ? gust : std::numeric_limits<double>::infinity());
  }
  std::stable_sort(airs.begin(), airs.end(),
                   [&](std::size_t a, std::size_t b) { return gusts[a] < gusts[b]; });
  return airs;
}

bool has_percentiles(const StudyMap& map, std::size_t line, std::size_t hand) {
  bool all = true;
  for (std::size_t air = 0; air < map.airs.size(); ++air) {
    const LineResult& result = map.cell(air, hand).lines.at(line);
    all = all && (result.found < kLeastForInterval || std::isfinite(result.p95_error_kt.value));
  }
  return all;
}

std::vector<std::size_t> whole_lines(const StudyMap& map) {
  std::vector<std::size_t> lines;
  for (std::size_t i = 0; i < map.lines.size(); ++i)
    if (map.lines[i].share == 1.0) lines.push_back(i);
  return lines;
}

std::string line_name(const StudyMap& map, std::size_t line) {
  const bool several =
      std::any_of(map.lines.begin(), map.lines.end(), [](const MapLine& l) { return l.set > 0; });
  return map.lines[line].name + (several ? ", flaps " + shortest(map.lines[line].flap_deg) + "\u00b0" : "");
}

std::optional<std::size_t> roughest_air(const StudyMap& map, std::size_t line, std::size_t hand,
                                        double within_kt) {
  const bool percentiles = has_percentiles(map, line, hand);
  std::optional<std::size_t> roughest;
  for (const std::size_t air : airs_by_roughness(map)) {
    const LineResult& result = map.cell(air, hand).lines.at(line);
    const double limit_kt = percentiles ? result.p95_error_kt.value : result.rms_error_kt.value;
    if (result.found < kLeastForInterval || !(limit_kt <= within_kt)) break;
    roughest = air;
  }
  return roughest;
}

Chance pooled_coverage(const StudyMap& map, std::size_t line, std::size_t air) {
  Chance pooled;
  for (std::size_t hand = 0; hand < map.hands.size(); ++hand) {
    const Chance& covered = map.cell(air, hand).lines.at(line).covered;
    pooled.times += covered.times;
    pooled.of += covered.of;
  }
  return pooled;
}

double window_enough_s(const StudyMap& map, std::size_t line, std::size_t air) {
  constexpr double kAsGood = 1.1;
  const MapLine& whole = map.lines[line];
  const double rms_kt = pooled_rms_kt(map, line, air);
  if (pooled_coverage(map, line, air).of < kLeastForInterval) return kNone;
  double enough_s = whole.window_s;
  for (std::size_t i = 0; i < map.lines.size(); ++i) {
    const MapLine& other = map.lines[i];
    if (other.is_stall || other.set != whole.set || other.card_point != whole.card_point) continue;
    if (other.window_s < enough_s && pooled_rms_kt(map, i, air) <= kAsGood * rms_kt &&
        pooled_coverage(map, i, air).share() >= kAskedCoverage.lower)
      enough_s = other.window_s;
  }
  return enough_s;
}

std::optional<int> records_enough(const StudyMap& map, std::size_t line, std::size_t air) {
  constexpr int kPercent = 95;
  const Chance covered = pooled_coverage(map, line, air);
  if (covered.of < kLeastForInterval || covered.share() < kAskedCoverage.lower) return {};
  std::array<int, 10> counts{};
  int found = 0;
  for (std::size_t hand = 0; hand < map.hands.size(); ++hand) {
    const LineResult& result = map.cell(air, hand).lines.at(line);
    found += result.found;
    for (std::size_t n = 0; n < counts.size(); ++n) counts[n] += result.records_wanted[n];
  }
  int enough_for = 0;
  for (std::size_t n = 1; n < counts.size(); ++n) {
    enough_for += counts[n];
    if (100 * enough_for >= kPercent * found) return static_cast<int>(n);
  }
  return 0;
}

}  // namespace stallwright
