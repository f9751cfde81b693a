#pragma once
#include <string>
#include <vector>

#include "sim/study/map/place_on_map.hpp"

namespace stallwright::cli {

/// Something in which a sortie is unlike those of the study, so that what the map expects is not quite for it.
struct Unlike {
  std::string what, sortie, study;  ///< "airframe", "7", "1"
};

/// A sortie with its own measures, and where they put it.
struct PlacedSortie {
  RecordRms own;
  PlaceOnMap place;
  std::string by_name;  ///< the air that stood in for the gusts, where truth.csv is not there
  std::vector<Unlike> unlike;
};

/// "You are here", for the terminal; set points of which the map has no number there are left out. UTF-8, at most 100
/// columns.
std::string place_text(const StudyMap& map, const PlacedSortie& sortie);

/// The same as JSON, format "stallwright-place-1"; what does not exist is null.
std::string place_json(const StudyMap& map, const PlacedSortie& sortie);

}  // namespace stallwright::cli
