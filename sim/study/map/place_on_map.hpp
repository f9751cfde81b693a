#pragma once
#include <vector>

#include "sim/study/study_map.hpp"
#include "sim/truth/record_gust.hpp"

namespace stallwright {

/// Where something lies between two neighbours: `share` of the way from one to the other. Beyond the last the two are the
/// same, and `beyond` says so.
struct Between {
  std::size_t from = 0, to = 0;
  double share = 0.0;
  bool beyond = false;
};

/// Where a sortie stands on a map.
struct PlaceOnMap {
  Between air;                       ///< by its gusts, among air_gust_mps of the airs
  Between hand;                      ///< by its hold, among the pilots' hold_rms_kt in that air
  std::vector<double> hold_rms_kt;   ///< of each pilot in that air, straight between the two airs
  std::vector<double> rms_error_kt;  ///< of each line: straight between the airs, then between the pilots
};

/// Straight lines between cells, in rms of gusts, hold and error alike; beyond the ends the last cell holds. The map must
/// have results.
///   own  hold and gusts of the sortie, both finite
PlaceOnMap place_on_map(const StudyMap& map, const RecordRms& own);

/// The same in an air of the map that is known without gusts.
PlaceOnMap place_in_air(const StudyMap& map, std::size_t air, double hold_kt);

}  // namespace stallwright
