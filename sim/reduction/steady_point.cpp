#include <algorithm>
#include <cmath>
#include <set>

#include "aircraft/math/units.hpp"
#include "sim/air/airspeed.hpp"
#include "sim/motion/flight.hpp"
#include "sim/reduction/least_squares.hpp"
#include "sim/reduction/point_reduction.hpp"
#include "sim/reduction/polynomial_fit.hpp"
#include "sim/reduction/pooled_mean.hpp"
#include "sim/reduction/series.hpp"
#include "sim/reduction/uncertainty.hpp"
#include "sim/sensing/systematic.hpp"

namespace stallwright {

double SetSlope::at(double x) const {
  double slope = 0.0;
  for (std::size_t k = 1; k < coefficients.size(); ++k)
    slope += static_cast<double>(k) * coefficients[k] * std::pow(x, static_cast<double>(k - 1));
  return slope;
}

namespace detail {

double load_factor_scatter(const std::vector<LogRow>& rows, std::size_t begin, std::size_t end) {
  std::vector<double> n;
  for (std::size_t i = begin; i < end; ++i)
    n.push_back(std::hypot(rows[i].forward_mps2, rows[i].right_mps2, rows[i].down_mps2) /
                kStandardGravity_mps2);
  return n.size() > 1 ? sample_sd(n) : kNone;
}

namespace {

/// What moves more slowly than a record is long does not average out: gusts have a time of L/V = 10 to 20 s at these
/// speeds, and power follows them. The slow part of a record shows in the scatter of its block means. Of a first-order
/// signal of 20 s the mean of a 15 s window keeps 0.8 of the variance (window_mean_variance [BENDAT-PIERSOL]), which leaves
/// 0.2 within: a factor of 2 between the two scatters. Part of what is seen is quicker; the factor 1.4 was matched
/// to flights with known truth in light air (95 % interval covering 90 to 99 %).  (tuned)
constexpr double kSlowShare = 1.4;
constexpr std::size_t kBlock = 150;  ///< samples of a block, 3 s

/// Scatter of block means; 0 for fewer than three blocks.
double slow_scatter_of(const std::vector<double>& y) {
  std::vector<double> means;
  for (std::size_t i = 0; i + kBlock <= y.size(); i += kBlock)
    means.push_back(mean(std::span<const double>(y).subspan(i, kBlock)));
  return means.size() >= 3 ? sample_sd(means) : 0.0;
}

struct WindowValues {
  double slow_sd, spot, spot_sd, mean_ratio, mean_x, target_x, impact_pa;
  CorrelatedMean raw, about_curve;
};

WindowValues window_values(const SetContext& set, const Record& record) {
  const std::size_t n = record.end - record.begin;
  std::vector<double> ratio(n), x(n), residual(n);
  double impact = 0.0;
  for (std::size_t i = 0; i < n; ++i) {
    const LogRow& row = set.rows[record.begin + i];
    ratio[i] = row.ratio;
    x[i] = lift_area_m2(row);
    impact += row.impact_pressure_pa / static_cast<double>(n);
  }
  WindowValues w{};
  w.spot = ratio.front();
  w.mean_ratio = mean(ratio);
  w.mean_x = mean(x);
  const LogRow& first = set.rows[record.begin];
  w.target_x = first.mass_kg * kStandardGravity_mps2 / impact_pressure_of_cas(first.target_kt * kKnot);
  w.impact_pa = impact;
  const double b = set.slope.at(w.mean_x);
  for (std::size_t i = 0; i < n; ++i) residual[i] = ratio[i] - b * (x[i] - w.mean_x);
  w.raw = correlated_mean(ratio);
  w.about_curve = correlated_mean(residual);
  w.spot_sd = w.raw.sd;
  w.slow_sd = slow_scatter_of(residual);
  return w;
}

/// Mean of repeats, each with its own Type A uncertainty; scatter beyond it is believed.
Reading pooled(const std::vector<double>& values, const std::vector<double>& u,
               const std::vector<double>& dof) {
  if (values.size() == 1) return {values[0], kNone, u[0], dof[0]};
  std::vector<double> floor_u = u;
  for (double& v : floor_u) v = std::max(v, 1e-9);
  const PooledMean mean = pooled_mean(values, floor_u);
  double total_dof = 0.0;
  for (double d : dof) total_dof += d;
  return {mean.value, kNone, mean.adopted_uncertainty, mean.birge_ratio > 1.0 ? mean.dof : total_dof};
}

}  // namespace

SetSlope fit_slope(const std::vector<LogRow>& rows, const std::vector<Record>& steady) {
  // Ten samples a second are plenty: neighbours say the same thing.
  constexpr std::size_t kEvery = 5;
  std::vector<double> x, r;
  std::set<std::size_t> points;
  for (const Record& record : steady) {
    points.insert(record.point);
    for (std::size_t i = record.begin; i < record.end; i += kEvery) {
      x.push_back(lift_area_m2(rows[i]));
      r.push_back(rows[i].ratio);
    }
  }
  if (x.size() < 8) return {{kNone}};
  const int degree = std::clamp<int>(static_cast<int>(points.size()) - 1, 1, 2);
  const PolynomialFit fit = fit_polynomial(x, r, degree);
  // From the centred variable t = (x - c)/s to powers of x.
  const auto& b = fit.fit.parameters;
  const double c = fit.centre, s = fit.scale;
  const double b2 = degree == 2 ? b[2] / (s * s) : 0.0;
  const double b1 = b[1] / s;
  return {{b[0] - b1 * c + b2 * c * c, b1 - 2.0 * b2 * c, b2}};
}

std::vector<BudgetLine> instrument_budget(const InstrumentGrade& grade, double ratio, double x, double b,
                                          double impact_pa) {
  constexpr double kInfinite = std::numeric_limits<double>::infinity();
  // A static-pressure error d (share of q_c) turns r into r(1+d) and x into x(1+d): at a given x the ratio is off by
  // (r - b x) d. Mass and acceleration shift x alone. The probe's angle acts as 4.5 cos 2a per rad on a round head
  // with ports at 45 deg, r = 2.25 sin 2a.
  const double cosine = std::sqrt(std::max(0.0, 1.0 - (ratio / 2.25) * (ratio / 2.25)));
  return {
      {"position error residual", 'B', std::abs(ratio - b * x) * grade.position_error_share, kInfinite, "",
       Shared::installation},
      {"probe zero", 'B', grade.probe_offset_ratio * kProbeOffsetPressure_pa / impact_pa, kInfinite,
       "a pressure", Shared::installation},
      {"probe scale", 'B', std::abs(ratio) * grade.probe_scale, kInfinite, "", Shared::installation},
      {"probe mounting", 'B', 4.5 * cosine * grade.probe_mount_rad, kInfinite, "round head, ports at 45 deg",
       Shared::installation},
      {"acceleration bias", 'B', std::abs(b * x) * grade.acceleration_bias_mps2 / kStandardGravity_mps2,
       kInfinite, "", Shared::installation},
      {"mass entered", 'B', std::abs(b * x) * grade.mass_share, kInfinite, "", Shared::sortie},
  };
}

void conclude(SetPoint& point) {
  std::vector<Component> components;
  for (const BudgetLine& line : point.budget)
    components.push_back({line.name, line.kind == 'A' ? Evaluation::kTypeA : Evaluation::kTypeB, line.u_ratio,
                          line.dof, 1.0, line.note});
  const CombinedUncertainty total = combine(components);
  point.u = total.standard_uncertainty;
  point.dof = total.effective_dof;
  const Expanded expanded = expand(point.ratio, total);
  point.interval_low = expanded.interval.lower;
  point.interval_high = expanded.interval.upper;
}

SetPoint reduce_steady(const SetContext& set, std::size_t card_point, const std::vector<Record>& records) {
  SetPoint p;
  p.card_point = card_point;
  p.name = set.card.points[card_point].name;
  if (records.empty()) {
    p.flags.push_back("not recorded");
    return p;
  }
  std::vector<double> spot, spot_u, mean_r, mean_u, lift, lift_u, dof_mean, dof_lift, dof_spot;
  double target_x = 0.0, impact = 0.0, hold = 0.0, slow_variance = 0.0;
  for (const Record& record : records) {
    const WindowValues w = window_values(set, record);
    const double b = set.slope.at(0.5 * (w.mean_x + w.target_x));
    spot.push_back(w.spot);
    spot_u.push_back(w.spot_sd);
    dof_spot.push_back(std::max(1.0, w.raw.effective_count - 1.0));
    mean_r.push_back(w.mean_ratio);
    mean_u.push_back(w.raw.standard_uncertainty);
    dof_mean.push_back(w.raw.dof);
    lift.push_back(w.mean_ratio + b * (w.target_x - w.mean_x));
    lift_u.push_back(w.about_curve.standard_uncertainty);
    dof_lift.push_back(w.about_curve.dof);
    const double share = 1.0 / static_cast<double>(records.size());
    target_x += w.target_x * share;
    impact += w.impact_pa * share;
    slow_variance += w.slow_sd * w.slow_sd * share * share;
    hold += std::abs(b * (w.target_x - w.mean_x)) * share;

    const LogRow& first = set.rows[record.begin];
    RecordWindow window;
    window.point = card_point;
    window.repeat = record.repeat;
    window.attempt = record.attempt;
    window.begin_s = window.button_s = first.t_s;
    window.end_s = set.rows[record.end - 1].t_s;
    window.forced = first.forced != 0;
    window.load_factor_sd = load_factor_scatter(set.rows, record.begin, record.end);
    for (std::size_t i = record.begin; i < record.end; ++i)
      if (set.rows[i].in_band == 0) window.left_band = true;
    p.windows.push_back(window);
    p.target_kt = first.target_kt;
  }
  p.speed_kt = p.target_kt;
  const double b = set.slope.at(target_x);
  // dx/dV = -2 x/V at constant weight (incompressible; 0.3 % off at 80 kt).
  p.slope_per_kt = b * -2.0 * target_x / p.target_kt;

  p.spot = pooled(spot, spot_u, dof_spot);
  p.window_mean = pooled(mean_r, mean_u, dof_mean);
  p.lift_corrected = pooled(lift, lift_u, dof_lift);
  p.ratio = p.lift_corrected.ratio;
  p.budget.push_back({"scatter of the record", 'A', p.lift_corrected.type_a_u, p.lift_corrected.dof,
                      "about the curve of ratio against lift, with its autocorrelation"});
  for (BudgetLine& line : instrument_budget(set.instruments, p.ratio, target_x, b, impact))
    p.budget.push_back(std::move(line));
  const double block_dof =
      std::max(2.0, std::floor((p.windows.front().end_s - p.windows.front().begin_s) / 3.0) - 1.0) *
      static_cast<double>(records.size());
  p.budget.push_back(
      {"unsteady air and power", 'B', kSlowShare * std::sqrt(slow_variance), block_dof,
       "what moves more slowly than a record is long averages out over repeats alone; 1.4 times "
       "the scatter of 3 s means"});
  double systematic = 0.0;
  for (const BudgetLine& line : p.budget)
    if (line.kind == 'B') systematic += line.u_ratio * line.u_ratio;
  // Readings that are not corrected carry the hold error as well: what the speed was off, in ratio.
  p.spot.u = std::sqrt(p.spot.type_a_u * p.spot.type_a_u + hold * hold + systematic);
  p.window_mean.u = std::sqrt(p.window_mean.type_a_u * p.window_mean.type_a_u + hold * hold + systematic);
  conclude(p);
  p.lift_corrected.u = p.u;

  for (const RecordWindow& w : p.windows) {
    if (w.forced)
      p.flags.push_back("recorded without being on condition");
    else if (w.left_band)
      p.flags.push_back("left a band while recording");
  }
  std::sort(p.flags.begin(), p.flags.end());
  p.flags.erase(std::unique(p.flags.begin(), p.flags.end()), p.flags.end());
  return p;
}

}  // namespace detail
}  // namespace stallwright
