#pragma once
#include <optional>
#include <string>
#include <vector>

#include "sim/study/study_map.hpp"

namespace stallwright {

/// Rules of thumb, read off a map and nothing else.

/// Gusts of an air: gust_rms_mps, root mean square over the pilots.
double air_gust_mps(const StudyMap& map, std::size_t air);

/// Airs of the map from the smoothest to the roughest, by air_gust_mps.
std::vector<std::size_t> airs_by_roughness(const StudyMap& map);

/// What a set point's error hardly ever exceeds: the 95th percentile of |error|; the RMS error where too few sorties gave
/// the set point for a percentile. NaN when none did.
double usual_limit_kt(const LineResult& line);

/// Lines with whole records: one for each set point.
std::vector<std::size_t> whole_lines(const StudyMap& map);

/// "warning", or "warning, flaps 30°" where the card has more sets than one.
std::string line_name(const StudyMap& map, std::size_t line);

/// The roughest air in which a pilot still gets a set point within so many knots: usual_limit_kt is at most that there and
/// in every smoother air of the map. None: not even in the smoothest.
std::optional<std::size_t> roughest_air(const StudyMap& map, std::size_t line, std::size_t hand,
                                        double within_kt);

/// How long to record in an air: the shortest window whose RMS error, over all pilots together, is at most 1.1 times that of
/// the whole record, s. NaN for a stall or where the set point was not found.
double window_enough_s(const StudyMap& map, std::size_t line, std::size_t air);

/// How many records altogether: the fewest that bring the 95 % interval under what the card wants in 95 % of the sorties that
/// gave the set point, over all pilots together, each by its own uncertainty budget. 0: no number up to nine does.
int records_enough(const StudyMap& map, std::size_t line, std::size_t air);

}  // namespace stallwright
