#pragma once
#include <vector>

#include "sim/reduction/set_points.hpp"
#include "sim/report/sortie_json.hpp"
#include "sim/report/sortie_summary.hpp"
#include "sim/report/time_history.hpp"

namespace stallwright {

/// The head of every page and table, from what was flown and the log of it (which tells how often each point
/// was tried, and all that is known of a sortie that was cut off).
SortieSummary flown_summary(const FlownSortie& flown, const std::vector<LogRow>& log);

/// Columns of truth.csv that the debrief draws; all as long as t_s.
struct TruthCurves {
  std::vector<double> t_s, alpha_deg, beta_deg, tas_kt, altitude_ft, attached_left, attached_right,
      gust_forward_mps, gust_down_mps;
};

/// Reads truth.csv. Throws InputError with one line for anything that is not such a file.
TruthCurves read_truth_curves(const std::filesystem::path& file);

/// Log and truth as curves, with the bands of the card and the records that counted. Where the two end at
/// different times, as after a power cut, the shorter one decides.
TimeHistory flown_history(const FlownSortie& flown, const std::vector<LogRow>& log, const TruthCurves& truth,
                          const SetPoints& set_points);

}  // namespace stallwright
