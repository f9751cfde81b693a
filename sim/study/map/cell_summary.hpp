#pragma once
#include <vector>

#include "sim/study/map/sortie_numbers.hpp"
#include "sim/study/study_map.hpp"

namespace stallwright {

/// Fills in the results of one cell from the numbers of its sorties, in order of seed; of the base cell those of
/// StudyMap::unvaried too.
///   RMS error       root of the mean of e^2, e = error_kt, over the sorties that gave the set point
///   95th percentile of |e|, and quantiles of e: `quantile` (Hyndman and Fan's type 7); see kLeastForPercentile
///   their intervals by bootstrap_intervals, keyed by the study's first seed, the cell and the line
///   hold, gust      root of the mean of the sorties' squares
///   cell  index by StudyMap::any_cell
void summarise_cell(StudyMap& map, std::size_t cell, const std::vector<SortieNumbers>& sorties);

}  // namespace stallwright
