#pragma once
#include "sim/reduction/point_reduction.hpp"

namespace stallwright::detail {

/// What one record of a stall gives. Ratios are of the filtered record.
struct OneStall {
  RecordWindow window;
  bool usable = false;
  double flat_u = 0.0, blurred_u = 0.0, break_ratio = kNone, peak_ratio = kNone, max_ratio = kNone,
         fit_u = kNone, fit_dof = kNone;
  double max_x = kNone, ratio_rate_ps = 0.0, impact_pa = kNone, mass_kg = kNone;
  bool vertex_found = false;
};

/// One record: where it breaks, and where lift is largest before that.
OneStall reduce_stall_record(const SetContext& set, const Record& record);

}  // namespace stallwright::detail
