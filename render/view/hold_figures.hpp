#pragma once
#include <string>
#include <vector>

#include "sim/reduction/set_points.hpp"
#include "sim/sortie/log_row.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright::view {

/// How one record that counted was flown, by the recorder. NaN: the point asks for no such thing.
struct HoldFigures {
  std::string point;  ///< with its repeat where the card wants several
  double flap_deg = 0.0;
  bool is_stall = false, left_band = false, forced = false;
  double begin_s = 0.0, end_s = 0.0;
  double target_kt = kNone;
  double speed_rms_kt = kNone;   ///< root of the mean square of speed less target
  double speed_mean_kt = kNone;  ///< speed less target; positive: fast
  double bank_rms_deg = kNone, slip_rms_g = kNone;
  double slip_mean_g = kNone;  ///< of the ball; positive: it lies to the right, that is the pedal to press
  double entry_rate_ktps = kNone, entry_wanted_ktps = kNone;
  Bands bands;
};

/// One for each record window of the set points, in order of time.
///   rows  the recorder's, in order of time
std::vector<HoldFigures> hold_figures(const std::vector<LogRow>& rows, const SetPoints& set_points,
                                      const TestCard& card);

/// Root mean square of speed less target over every row of the records that count, kt; NaN without one. Rows that are not
/// recording may be left out.
double hold_rms_kt(const std::vector<LogRow>& rows);

}  // namespace stallwright::view
