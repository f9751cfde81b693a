#pragma once
#include <vector>

#include "sim/sortie/log_row.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// Rms of the vertical gusts about their mean in the roughest record, m/s; NaN without a record of five seconds.
double record_gust_mps(const std::vector<LogRow>& log, const std::vector<TruthRow>& truth);

/// How well the speed was held and how rough the air was, over all rows of the steady records that count.
struct RecordRms {
  double hold_kt;   ///< airspeed read less target; NaN without such a record
  double gust_mps;  ///< true vertical gust (about nothing: a thermal's rise counts); NaN without truth
};
RecordRms record_rms(const std::vector<LogRow>& log, const std::vector<TruthRow>& truth,
                     const TestCard& card);

}  // namespace stallwright
