#pragma once
#include <string>
#include <vector>

#include "sim/reduction/set_points.hpp"
#include "sim/report/sortie_summary.hpp"
#include "sim/report/time_history.hpp"
#include "sim/truth/protection.hpp"

namespace stallwright {

/// The one map from ratio to knots of a flap setting, sampled: for the knots axis beside the ratio axis.
struct KnotsScale {
  double flap_deg = 0.0;
  std::vector<double> ratio;     ///< rising
  std::vector<double> speed_kt;  ///< as long, falling
};

/// Everything that the debrief shows.
struct DebriefInput {
  SortieSummary summary;
  SetPoints set_points;
  Judgement judgement;
  Protection protection;           ///< without rows: no warning was recorded
  TimeHistory history;             ///< may be empty
  std::vector<KnotsScale> scales;  ///< a set without one is drawn with the judged points as the map
};

/// The debrief of a sortie as one HTML file: nothing else is loaded, no script; UTF-8; it is well-formed XML
/// too. It prints on A4 and reads in grey. From top: what was flown, verdict and what to do next, the set
/// points against the truth, what the warning protects, the three readings of each, the uncertainty budgets, time histories, events and
/// counts, cautions. Same input, same bytes: no date stands in it. Numbers that do not exist show as a dash.
std::string debrief_page(const DebriefInput& input);

}  // namespace stallwright
