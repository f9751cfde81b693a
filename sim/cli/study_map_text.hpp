#pragma once
#include <string>

#include "sim/study/study_map.hpp"

namespace stallwright::cli {

/// The map for the terminal: for each set point RMS errors by pilot and air, what one thing changed makes of them, and rules
/// of thumb with their definitions. At most 100 columns, UTF-8, no escape sequences.
std::string map_text(const StudyMap& map);

}  // namespace stallwright::cli
