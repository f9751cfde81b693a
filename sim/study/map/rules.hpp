#pragma once
#include <optional>
#include <string>
#include <vector>

#include "sim/study/study_map.hpp"

namespace stallwright {

/// Rules of thumb, read off a map and nothing else.

/// Gusts of an air: gust_rms_mps, root mean square over the pilots.
double air_gust_mps(const StudyMap& map, std::size_t air);

/// Airs of the map from the smoothest to the roughest, by air_gust_mps; last those in which nobody got a record.
std::vector<std::size_t> airs_by_roughness(const StudyMap& map);

/// Whether a pilot's airs are compared by the 95th percentile of |error|: every air of the map has one, but for those in which
/// fewer than kLeastForInterval sorties gave the set point. Otherwise by RMS error, in all airs alike.
bool has_percentiles(const StudyMap& map, std::size_t line, std::size_t hand);

/// Lines with whole records: one for each set point.
std::vector<std::size_t> whole_lines(const StudyMap& map);

/// "warning", or "warning, flaps 30°" where the card has more sets than one.
std::string line_name(const StudyMap& map, std::size_t line);

/// The roughest air in which a pilot still gets a set point within so many knots, there and in every smoother air of the map:
/// the 95th percentile of |error|, or the RMS error (has_percentiles). An air in which fewer than kLeastForInterval sorties
/// gave it is not within anything. None: not even the smoothest.
std::optional<std::size_t> roughest_air(const StudyMap& map, std::size_t line, std::size_t hand,
                                        double within_kt);

/// How often the 95 % intervals of a line hold the truth in an air, all pilots together; no interval of its own.
Chance pooled_coverage(const StudyMap& map, std::size_t line, std::size_t air);

/// How long to record in an air: the shortest window whose RMS error, over all pilots together, is at most 1.1 times that of
/// the whole record and whose intervals hold the truth at least as often as asked (kAskedCoverage), s; else the whole record.
/// NaN for a stall or where fewer than kLeastForInterval sorties gave the set point.
double window_enough_s(const StudyMap& map, std::size_t line, std::size_t air);

/// How many records altogether: the fewest that bring the 95 % interval under what the card wants in 95 % of the sorties that
/// gave the set point, over all pilots together, each by its own uncertainty budget. 0: no number up to nine does. None where
/// fewer than kLeastForInterval gave it, or where those budgets hold the truth less often than asked (kAskedCoverage).
std::optional<int> records_enough(const StudyMap& map, std::size_t line, std::size_t air);

}  // namespace stallwright
