#pragma once
#include <string>

#include "sim/reduction/set_points.hpp"
#include "sim/report/sortie_summary.hpp"

namespace stallwright {

/// What `rehearse` and `debrief` print: a heading, one table (set point, ratio ± expanded uncertainty, truth,
/// error in degrees and knots, in order or not), the verdict with its reason, the caution. At most 100
/// columns, UTF-8 with nothing wider than a letter, no escape sequences; control characters in names become
/// '?'.
std::string result_table(const Judgement& judgement, const SortieSummary& summary);

}  // namespace stallwright
