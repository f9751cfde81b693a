#pragma once
#include "sim/study/map/sortie_numbers.hpp"
#include "sim/study/sensitivity/sensitivity_inputs.hpp"
#include "sim/study/study_map.hpp"

namespace stallwright {

/// The sorties that vary everything at once, in the order in which they are flown.
struct SensitivityPlan {
  SortieConfig base;  ///< aeroplane, card, airframe
  SensitivityRanges ranges;
  std::vector<std::vector<double>> points;  ///< of the sample

  SortieConfig config(std::size_t k) const { return sensitivity_sortie(base, ranges, points.at(k)); }
};

/// Cell, sorties and seeds from base and loadings, which are given.
void lay_out_sensitivity(StudyMap& map);

/// Lays them out and tells the map about them. `base_points` 0: none.
SensitivityPlan plan_sensitivity(StudyMap& map, const SortieConfig& base, const SensitivityRanges& ranges,
                                 int base_points);

/// Numbers of a sortie whose steady records are cut to a share: as sortie_numbers, but only lines with whole records get
/// values, and there is no verdict.
SortieNumbers cut_sortie_numbers(EndedSortie& ended, const SortieConfig& config,
                                 const std::vector<TrueSet>& truth, double share);

/// Fills in the indices from the numbers of all its sorties, in the order in which they were flown.
void summarise_sensitivity(StudyMap& map, const std::vector<SortieNumbers>& sorties);

}  // namespace stallwright
