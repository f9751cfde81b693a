#include <algorithm>
#include <cmath>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/units.hpp"
#include "sim/study/entry_rate.hpp"

namespace stallwright {
namespace {

/// Least-squares slope of y against x over the truth from one moment to another.
template <class X, class Y>
double slope(const std::vector<TruthRow>& truth, double from_s, double to_s, const X& x_of, const Y& y_of) {
  double n = 0.0, sx = 0.0, sy = 0.0, sxx = 0.0, sxy = 0.0;
  for (const TruthRow& row : truth) {
    if (row.t_s < from_s || row.t_s > to_s) continue;
    const double x = x_of(row), y = y_of(row);
    n += 1.0;
    sx += x;
    sy += y;
    sxx += x * x;
    sxy += x * y;
  }
  const double spread = n * sxx - sx * sx;
  return n > 3.0 && spread > 0.0 ? (n * sxy - sx * sy) / spread : kNone;
}

}  // namespace

StallObservation observe_stall(const StudySortie& sortie, const std::vector<TruthRow>& truth,
                               double delay_m) {
  StallObservation out;
  out.seed = sortie.seed;
  if (sortie.judgement.sets.empty() || sortie.judgement.sets.front().points.empty()) return out;
  const JudgedPoint& stall = sortie.judgement.sets.front().points.front();
  if (!stall.measured.found() || stall.measured.windows.empty() || !stall.measured.windows.back().broke)
    return out;
  const RecordWindow& window = stall.measured.windows.back();
  const auto at_break =
      std::find_if(truth.begin(), truth.end(), [&](const TruthRow& r) { return r.t_s >= window.break_s; });
  if (at_break == truth.end()) return out;

  out.found = true;
  out.break_sign = window.break_sign;
  out.entry_rate_ktps = window.entry_rate_ktps;
  out.max_lift_error_kt = stall.error_kt;
  out.break_ratio = stall.measured.at_break.ratio;
  out.true_airspeed_mps = at_break->tas_kt * kKnot;
  out.attached_root = at_break->attached_root;
  // Back from the break to the last moment at which the root was still attached.
  auto let_go = at_break;
  while (let_go != truth.begin() && let_go->attached_root <= kAttached) --let_go;
  if (out.attached_root <= kAttached) {
    out.let_go_ratio = let_go->static_ratio;
    out.let_go_rad = let_go->alpha_deg * math::kDegree;
    out.let_go_before_s = at_break->t_s - let_go->t_s;
  }
  out.tau2_s = delay_m / out.true_airspeed_mps;
  const auto alpha = [](const TruthRow& r) { return r.alpha_deg * math::kDegree; };
  const double at_s = let_go->t_s;
  const auto since = [at_s](const TruthRow& r) { return r.t_s - at_s; };
  const auto ratio = [](const TruthRow& r) { return r.static_ratio; };
  out.alpha_rate_radps = slope(truth, at_s - out.tau2_s, at_s, since, alpha);
  out.ratio_per_rad = slope(truth, at_s - out.tau2_s, at_s + out.tau2_s, alpha, ratio);
  return out;
}

}  // namespace stallwright
