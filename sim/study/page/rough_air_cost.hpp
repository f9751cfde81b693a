#pragma once
#include <optional>
#include <string>

#include "sim/sortie/log_row.hpp"
#include "sim/study/study_map.hpp"

namespace stallwright {

/// What rough air costs one pilot at one set point: the map's smoothest air against its roughest.
struct RoughAirCost {
  std::size_t line = 0, hand = 0, smooth = 0, rough = 0;  ///< indices into lines, hands and airs
  bool percentile = false;  ///< both are 95th percentiles of |error|; else both are RMS errors
  Estimate smooth_kt, rough_kt;
  double margin_kt =
      kNone;  ///< that the warning has over the stall in truth, mean in the smooth air; none for other points
  /// Between the two as they are printed, to a hundredth, so that a reader who subtracts agrees.
  double cost_kt() const {
    return as_printed(as_printed(rough_kt.value, 2) - as_printed(smooth_kt.value, 2), 2);
  }
  /// The intervals do not overlap; two that do may still differ. False where one has none.
  bool apart() const { return rough_kt.interval.lower > smooth_kt.interval.upper; }
};

/// The pilot that the page takes as an example: "current" where the map has one, else the middle row.
std::size_t example_hand(const StudyMap& map);

/// "in light air", "at 07:30 on a fair day".
std::string in_air(const MapAir& air);

/// Of the warning of the first set that has one, else of its first steady point. None where fewer than kLeastForInterval
/// sorties gave it in the smoothest or the roughest air.
std::optional<RoughAirCost> rough_air_cost(const StudyMap& map);

/// The same as one sentence, and how often the debrief keeps what the example pilot brings from those two airs.
std::string rough_air_sentence(const StudyMap& map);

}  // namespace stallwright
