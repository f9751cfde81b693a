// What one record of a stall gives: its break, and the ratio at which lift was largest.
#include "sim/reduction/stall_record.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "sim/air/airspeed.hpp"
#include "sim/motion/flight.hpp"
#include "sim/reduction/polynomial_fit.hpp"
#include "sim/reduction/series.hpp"
#include "sim/sortie/break_detector.hpp"

namespace stallwright::detail {
namespace {

constexpr double kSampling_s = 0.02;
constexpr std::size_t kHalfFilter =
    15;  ///< triangular filter of +-0.3 s: passes the stall, stops buffet and noise
constexpr std::size_t kBeforeBreak = 50;  ///< samples left out before the break when the air is judged, 1 s
constexpr double kNearMaximum = 0.96;     ///< lower limit of the fit, relative to the largest lift area
constexpr double kBreakLift = 0.9;        ///< and needs this share of the largest lift just before it
constexpr double kBreakDrop_deg = 3.5;
constexpr double kBreakBelow =
    1.3;                            ///< a break is looked for below this times the lowest speed of the record
constexpr double kTopFlat = 0.002;  ///< of lift: differences that no record tells

std::vector<double> smoothed(const std::vector<double>& y) {
  std::vector<double> out(y.size());
  const auto n = static_cast<std::ptrdiff_t>(y.size());
  for (std::ptrdiff_t i = 0; i < n; ++i) {
    // Near an end the window shrinks on both sides alike, so that a slope is not shifted in time.
    const std::ptrdiff_t reach = std::min({static_cast<std::ptrdiff_t>(kHalfFilter), i, n - 1 - i});
    double sum = 0.0, weight = 0.0;
    for (std::ptrdiff_t k = -reach; k <= reach; ++k) {
      const double w = static_cast<double>(reach + 1 - std::abs(k));
      sum += w * y[static_cast<std::size_t>(i + k)];
      weight += w;
    }
    out[static_cast<std::size_t>(i)] = sum / weight;
  }
  return out;
}

/// Takes over the break of the same record of another reduction.
void copy_break(const SetPoints& from, RecordWindow& window) {
  for (const SetPointSet& set : from.sets)
    for (const SetPoint& point : set.points)
      for (const RecordWindow& w : point.windows)
        if (point.is_stall && w.point == window.point && w.repeat == window.repeat &&
            w.attempt == window.attempt) {
          window.broke = w.broke;
          window.break_s = w.break_s;
          window.break_sign = w.break_sign;
        }
}

/// The angle that the separating flow has seen: the ratio behind a first-order lag. On a steady pull this is
/// r - tau dr/dt; against it, lift shows its static maximum nearly where it would at rest.
std::vector<double> lagged_by_flow(const std::vector<double>& ratio, double lag_s) {
  std::vector<double> out = ratio;
  const double keep = lag_s > 0.0 ? std::exp(-kSampling_s / lag_s) : 0.0;
  for (std::size_t i = 1; i < ratio.size(); ++i) out[i] = ratio[i] + keep * (out[i - 1] - ratio[i]);
  return out;
}

/// Slope of y against time around sample k, by least squares over +-half samples.
double local_rate(const std::vector<double>& y, std::size_t k, std::size_t half) {
  const std::size_t from = k > half ? k - half : 0, to = std::min(y.size() - 1, k + half);
  double st = 0.0, sy = 0.0, stt = 0.0, sty = 0.0, n = 0.0;
  for (std::size_t i = from; i <= to; ++i) {
    const double t = kSampling_s * static_cast<double>(i);
    st += t;
    sy += y[i];
    stt += t * t;
    sty += t * y[i];
    n += 1.0;
  }
  return (n * sty - st * sy) / std::max(n * stt - st * st, 1e-12);
}

/// Where lift is largest, and where the run over the top ends.
struct Top {
  std::size_t at, until;
};

/// Scatter of lift about a parabola in ratio on the way up (0.8 to 0.97 of the largest), relative: what the air and the
/// instruments do to it, whatever the wing does.
double relative_scatter(const std::vector<double>& ratio, const std::vector<double>& lift,
                        std::size_t at_break) {
  const double largest = *std::max_element(lift.begin(), lift.begin() + static_cast<long>(at_break) + 1);
  std::vector<double> r, x;
  for (std::size_t i = 0; i <= at_break && lift[i] < 0.97 * largest; ++i) {
    if (lift[i] < 0.8 * largest) continue;
    r.push_back(ratio[i]);
    x.push_back(lift[i]);
  }
  if (r.size() < 25) return 0.0;
  try {
    return fit_polynomial(r, x, 2).fit.residual_sd / largest;
  } catch (const std::invalid_argument&) {
    return 0.0;
  }
}

/// The first maximum of lift that is the wing's own: afterwards lift has fallen although the angle has not (in a
/// gust both fall together), by 1 % or three times the scatter on the way up. What comes later, with the stick still coming back and the angle running away, is
/// lift that only the haste keeps up. Without such a fall: the largest lift before the break.
Top first_top(const std::vector<double>& ratio, const std::vector<double>& lift, std::size_t at_break) {
  const double fallen = 1.0 - std::max(0.01, 3.0 * relative_scatter(ratio, lift, at_break));
  constexpr double kSameAngle = 0.02;  ///< of ratio, about a quarter of a degree
  constexpr double kNear = 0.97;       ///< of the largest lift: an earlier bump is not the stall
  const double largest = *std::max_element(lift.begin(), lift.begin() + static_cast<long>(at_break) + 1);
  Top top{0, at_break};
  for (std::size_t i = 1; i <= at_break; ++i) {
    if (lift[i] > lift[top.at]) {
      top.at = i;
    } else if (lift[top.at] > kNear * largest && lift[i] < fallen * lift[top.at] &&
               ratio[i] > ratio[top.at] - kSameAngle) {
      top.until = i;
      break;
    }
  }
  return top;
}

}  // namespace

void find_break(const std::vector<LogRow>& rows, const Record& record, RecordWindow& window) {
  double slowest = 1e9;
  std::vector<double> lift;
  for (std::size_t i = record.begin; i < record.end; ++i) {
    slowest = std::min(slowest, rows[i].ias_kt);
    lift.push_back(lift_area_m2(rows[i]));
  }
  lift = smoothed(lift);
  const double most_lift = *std::max_element(lift.begin(), lift.end());
  BreakDetector detector(kBreakBelow * slowest * kKnot, kBreakLift * most_lift, kBreakDrop_deg);
  for (std::size_t i = record.begin; i < record.end; ++i) {
    const LogRow& r = rows[i];
    const auto found =
        detector.update({r.t_s, r.pitch_deg * math::kDegree, r.pitch_rate_degps * math::kDegree, r.stick_aft,
                         r.ias_kt * kKnot, lift_area_m2(r), r.ratio, r.bank_deg * math::kDegree});
    if (!found) continue;
    window.broke = true;
    window.break_s = found->time_s;
    window.break_sign = found->sign;
    return;
  }
}

OneStall reduce_stall_record(const SetContext& set, const Record& record) {
  const std::vector<LogRow>& rows = set.rows;
  OneStall out;
  out.window.point = record.point;
  out.window.repeat = record.repeat;
  out.window.attempt = record.attempt;
  out.window.begin_s = rows[record.begin].t_s;
  out.window.end_s = rows[record.end - 1].t_s;
  std::vector<double> ratio, x, speed;
  for (std::size_t i = record.begin; i < record.end; ++i) {
    ratio.push_back(rows[i].ratio);
    x.push_back(lift_area_m2(rows[i]));
    speed.push_back(rows[i].ias_kt);
  }
  const std::vector<double> raw = smoothed(ratio), r = smoothed(lagged_by_flow(ratio, set.terms.lift_lag_s)),
                            lift = smoothed(x);
  if (set.terms.breaks != nullptr)
    copy_break(*set.terms.breaks, out.window);
  else
    find_break(rows, record, out.window);
  if (!out.window.broke) return out;
  std::size_t at_break = 0;
  while (at_break + 1 < r.size() && rows[record.begin + at_break].t_s < out.window.break_s) ++at_break;
  if (at_break < 2 * kHalfFilter) return out;
  // Until a second before the break: what the wing itself does there is not the air's.
  if (at_break > kBeforeBreak)
    out.window.load_factor_sd =
        load_factor_scatter(rows, record.begin, record.begin + at_break - kBeforeBreak);

  const Top found = first_top(r, lift, at_break);
  const std::size_t top = found.at, last = found.until;
  out.break_ratio = raw[at_break];
  out.peak_ratio = *std::max_element(
      raw.begin(), raw.begin() + static_cast<long>(std::min(raw.size() - 1, at_break + 50)));
  out.max_ratio = r[top];
  out.max_x = lift[top];
  out.impact_pa = rows[record.begin + top].impact_pressure_pa;
  out.mass_kg = rows[record.begin].mass_kg;
  // Entry rate: over the four seconds before the lift is largest.
  const std::size_t early = top > 200 ? top - 200 : 0;
  if (top > early + 10)
    out.window.entry_rate_ktps =
        (speed[early] - speed[top]) / (kSampling_s * static_cast<double>(top - early));
  out.ratio_rate_ps = local_rate(r, top, 25);

  // The run up to and over the top: from where the lift first stays within 4 % of its largest.
  std::size_t from = top;
  while (from > 0 && lift[from - 1] >= kNearMaximum * lift[top]) --from;
  std::vector<double> fit_r(r.begin() + static_cast<long>(from), r.begin() + static_cast<long>(last) + 1);
  std::vector<double> fit_x(lift.begin() + static_cast<long>(from),
                            lift.begin() + static_cast<long>(last) + 1);
  out.usable = true;
  out.fit_u = 0.5 * std::abs(out.ratio_rate_ps) * kSampling_s * static_cast<double>(kHalfFilter);
  out.fit_dof = 4.0;
  // Ratios at which lift is within 0.2 %, or the scatter that the air puts on it, of its largest: no record tells them
  // apart. Without a vertex, the width of the run over the last 4 % stands in for the curvature.
  const double told_apart = kTopFlat, blurred = std::max(0.0, relative_scatter(r, lift, at_break) - kTopFlat);
  const auto [low, high] = std::minmax_element(fit_r.begin(), fit_r.end());
  const auto rectangular = [](double half_width) { return half_width / std::sqrt(3.0); };
  out.flat_u = rectangular((*high - *low) * std::sqrt(told_apart / (1.0 - kNearMaximum)));
  out.blurred_u = rectangular((*high - *low) * std::sqrt(blurred / (1.0 - kNearMaximum)));
  if (fit_r.size() < 12) return out;
  try {
    const LocalQuadratic fit =
        fit_local_quadratic(fit_r, fit_x, *std::min_element(fit_r.begin(), fit_r.end()),
                            *std::max_element(fit_r.begin(), fit_r.end()));
    std::vector<double> residual(fit.polynomial.fit.residuals.data(),
                                 fit.polynomial.fit.residuals.data() + fit.polynomial.fit.residuals.size());
    const double correlated = residual.size() >= 8 ? correlated_mean(residual).autocorrelation_time : 1.0;
    const Vertex vertex = vertex_of({fit.polynomial.fit.with_variance_factor(std::max(1.0, correlated)),
                                     fit.polynomial.centre, fit.polynomial.scale});
    const double spread = fit_r.back() - fit_r.front();
    if (vertex.is_maximum && vertex.curvature_ratio > 4.0 &&
        vertex.x.value < *std::max_element(fit_r.begin(), fit_r.end()) + 0.1 * std::abs(spread) &&
        vertex.x.value > fit_r.front()) {
      out.vertex_found = true;
      out.max_ratio = vertex.x.value;
      out.max_x = vertex.y.value;
      const double per_lift = 2.0 * vertex.y.value / std::abs(vertex.second_derivative);
      out.flat_u = rectangular(std::sqrt(told_apart * per_lift));
      out.blurred_u = rectangular(std::sqrt(blurred * per_lift));
      out.fit_u = std::max(vertex.x.standard_uncertainty, 1e-6);
      out.fit_dof = std::max(2.0, static_cast<double>(fit_r.size()) / std::max(1.0, correlated) - 3.0);
    }
  } catch (const std::invalid_argument&) {
    // Too few different ratios near the top: the largest filtered sample stands, with its coarser uncertainty.
  }
  return out;
}

}  // namespace stallwright::detail
