#pragma once
#include <vector>

#include "sim/reduction/set_points.hpp"
#include "sim/report/sortie_json.hpp"
#include "sim/report/sortie_summary.hpp"
#include "sim/report/time_history.hpp"
#include "sim/sortie/log_row.hpp"

namespace stallwright {

/// The head of every page and table, from what was flown and the log of it (which tells how often each point
/// was tried, and all that is known of a sortie that was cut off).
SortieSummary flown_summary(const FlownSortie& flown, const std::vector<LogRow>& log);

/// Log and truth as curves, with the bands of the card and the records that counted. Where the two end at
/// different times, as after a power cut, the shorter one decides.
TimeHistory flown_history(const FlownSortie& flown, const std::vector<LogRow>& log,
                          const std::vector<TruthRow>& truth, const SetPoints& set_points);

}  // namespace stallwright
