#pragma once
#include <string>
#include <vector>

#include "sim/study/study_map.hpp"

namespace stallwright {

/// The rules of thumb (rules.hpp) as words, for terminal and page alike.
struct RuleTable {
  std::string title;
  std::vector<std::string> headings;  ///< the first is of the names of rows
  std::vector<std::vector<std::string>> rows;
};

/// For each warning the roughest air in which it still comes within so many knots, by pilot; how often intervals hold the
/// truth, how long to record and how many records, by set point and air. A map without results has none.
std::vector<RuleTable> rule_tables(const StudyMap& map);

}  // namespace stallwright
