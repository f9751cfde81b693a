#include "sim/sensing/warning_unit.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/math/elementary.hpp"

namespace stallwright {
namespace {

double set_point_for(const WarningUnit& unit, double flap_deg) {
  const auto nearest =
      std::min_element(unit.warnings.begin(), unit.warnings.end(), [&](const auto& a, const auto& b) {
        return std::abs(a.flap_deg - flap_deg) < std::abs(b.flap_deg - flap_deg);
      });
  return nearest->ratio;
}

}  // namespace

WarningUnitState advance(const WarningUnit& unit, const WarningUnitState& state, const Readings<double>& seen,
                         double dt_s) {
  WarningUnitState next = state;
  if (unit.warnings.empty()) return next;
  if (!state.started) {
    next.smoothed = seen.probe_ratio;
    next.started = true;
  }
  next.smoothed += (1.0 - math::exp(-dt_s / unit.smoothing_s)) * (seen.probe_ratio - next.smoothed);
  const double set_point = set_point_for(unit, seen.flap_rad / math::kDegree);
  next.above_s = next.smoothed >= set_point ? state.above_s + dt_s : 0.0;
  if (next.above_s >= unit.delay_s) next.tone = true;
  if (next.smoothed < set_point - unit.hysteresis_ratio) next.tone = false;
  return next;
}

}  // namespace stallwright
