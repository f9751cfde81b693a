#pragma once
#include <string>

#include "sim/study/study_map.hpp"

namespace stallwright {

/// The text of study.csv: RFC 4180, one row for each line of each cell, cells in the order in which they are flown; what is
/// of the whole cell stands in each of its rows. assets/recipes/README.md describes the columns. Numbers stand in the
/// shortest form that reads back exactly; what does not exist is empty.
std::string map_to_csv(const StudyMap& map);

}  // namespace stallwright
