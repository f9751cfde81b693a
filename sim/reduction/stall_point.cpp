// The stall of a set, from what each record of one gives.
#include <algorithm>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "sim/air/airspeed.hpp"
#include "sim/motion/flight.hpp"
#include "sim/reduction/least_squares.hpp"
#include "sim/reduction/polynomial_fit.hpp"
#include "sim/reduction/pooled_mean.hpp"
#include "sim/reduction/series.hpp"
#include "sim/reduction/stall_record.hpp"

namespace stallwright::detail {
namespace {

/// Lag of lift behind angle: some 5 chords of travel for separation (Goman and Khrabrov's two time constants, from
/// memory [GOMAN_KHRABROV]) and 2 for the induced flow, with a chord of 1.2 to 1.6 m at 20 to 28 m/s: 0.3 to 0.55 s.
/// A reducer does not know the aeroplane, so the middle is taken (kAssumedLiftLag_s).
constexpr double kLiftLagUncertainty_s = 0.15;

/// Share of lift that gusts may have added or taken away at the largest, beyond what light turbulence does (which the
/// scatter about the run has in it already): root mean square of the stalls.
double gust_lift(const std::vector<OneStall>& stalls) {
  constexpr double kLight = 0.06;
  double sum = 0.0;
  for (const OneStall& s : stalls)
    if (s.window.load_factor_sd > kLight)
      sum += (s.window.load_factor_sd * s.window.load_factor_sd - kLight * kLight) /
             static_cast<double>(stalls.size());
  return std::sqrt(sum);
}

/// Do the stalls come at clearly different entry rates? Then lag can be extrapolated away.
bool two_rates(const std::vector<OneStall>& stalls) {
  double least = 1e9, most = -1e9;
  for (const OneStall& s : stalls) {
    least = std::min(least, s.ratio_rate_ps);
    most = std::max(most, s.ratio_rate_ps);
  }
  return stalls.size() >= 3 && least > 0.0 && most > 1.8 * least;
}

}  // namespace

SetPoint reduce_stall(const SetContext& set, const std::vector<Record>& records) {
  SetPoint p;
  p.is_stall = true;
  p.name = "stall";
  if (!records.empty()) p.card_point = records.front().point;
  std::vector<OneStall> good;
  for (const Record& record : records) {
    const OneStall one = reduce_stall_record(set, record);
    p.windows.push_back(one.window);
    if (one.usable) good.push_back(one);
  }
  if (good.empty()) {
    p.flags.push_back(records.empty() ? "not recorded" : "no break found");
    return p;
  }
  if (good.size() < records.size()) p.flags.push_back("no break found in some records");

  std::vector<double> r, u, at_break, peak, rate;
  double impact = 0.0, x = 0.0, mass = 0.0, dof = 0.0;
  bool all_vertices = true;
  for (const OneStall& s : good) {
    r.push_back(s.max_ratio);
    u.push_back(s.fit_u);
    at_break.push_back(s.break_ratio);
    peak.push_back(s.peak_ratio);
    rate.push_back(s.ratio_rate_ps);
    const double share = 1.0 / static_cast<double>(good.size());
    impact += s.impact_pa * share;
    x += s.max_x * share;
    mass += s.mass_kg * share;
    dof += s.fit_dof;
    all_vertices = all_vertices && s.vertex_found;
  }
  const double mean_rate = mean(rate);
  double scatter_u, lag_u;
  std::string lag_note;
  if (two_rates(good)) {
    const PolynomialFit line = fit_polynomial(rate, r, 1);
    const Estimate still = line.value(0.0);
    p.ratio = still.value;
    const double each = pooled_mean(r, u).u_internal;
    scatter_u = std::max(still.standard_uncertainty, each);
    dof = std::max(1, line.fit.dof);
    // What remains is curvature of the effect in rate: a quarter of the correction.
    lag_u = 0.25 * std::abs(mean(r) - still.value);
    lag_note = "corrected by a straight line in the rate of ratio over repeats at different entry rates";
  } else {
    const PooledMean all = pooled_mean(r, u);
    p.ratio = all.value;
    scatter_u = all.adopted_uncertainty;
    if (good.size() > 1 && all.birge_ratio > 1.0) dof = all.dof;
    lag_u = std::abs(mean_rate) * kLiftLagUncertainty_s;
    lag_note = "rate of ratio times the uncertainty of the lag taken, 0.15 s";
  }
  const double g = kStandardGravity_mps2;
  p.speed_kt = cas_of_impact_pressure(mass * g / x) / kKnot;
  p.at_break = {mean(at_break), kNone, good.size() > 1 ? sample_sd(at_break) : kNone,
                static_cast<double>(good.size()) - 1.0};
  p.peak = {mean(peak), kNone, good.size() > 1 ? sample_sd(peak) : kNone,
            static_cast<double>(good.size()) - 1.0};
  p.max_lift = {p.ratio, kNone, scatter_u, dof};

  p.budget.push_back(
      {"scatter of the fit", 'A', scatter_u, dof, "vertex of ratio against lift, and between repeats"});
  const double stalls = static_cast<double>(good.size());
  double flat = 0.0, blurred_variance = 0.0;
  for (const OneStall& s : good) {
    flat += s.flat_u / stalls;
    blurred_variance += s.blurred_u * s.blurred_u / (stalls * stalls);
  }
  p.budget.push_back({"flat maximum", 'B', flat, 8.0,
                      "ratios at which lift is within 0.2 % of its largest; rectangular",
                      Shared::installation});
  p.budget.push_back({"blurred maximum", 'B', std::sqrt(blurred_variance), 8.0 * stalls,
                      "ratios at which lift is within its scatter on the way up, beyond 0.2 %; rectangular"});
  p.budget.push_back({"lift lag", 'B', lag_u, 8.0, lag_note, Shared::installation});
  // At maximum lift the slope of ratio against lift is infinite: mass and acceleration move the lift, not the place
  // of its maximum, so b is taken as zero.
  for (BudgetLine& line : instrument_budget(set.instruments, p.ratio, x, 0.0, impact))
    p.budget.push_back(std::move(line));
  p.slope_per_kt = set.slope.at(0.9 * x) * -2.0 * 0.9 * x / (p.speed_kt * 1.05);
  const double rough = gust_lift(good);
  if (rough > 0.0) {
    // How much ratio goes with so much lift on an attached wing; without steady points: in proportion.
    const double slope = std::abs(set.slope.at(0.9 * x)) * x;
    p.budget.push_back(
        {"gusts on the way to the break", 'B',
         rough * (std::isfinite(slope) ? slope : std::abs(p.ratio)) / std::sqrt(3.0 * stalls), 8.0 * stalls,
         "a gust may end the run before the wing does: load factor's scatter beyond 0.06 g; rectangular"});
    p.flags.push_back("the load factor swung on the way to the break: rough air, or the hand");
  }
  conclude(p);
  p.max_lift.u = p.u;
  p.at_break.u = p.peak.u = std::hypot(p.u, lag_u);
  if (!all_vertices) p.flags.push_back("maximum lift not clearly passed before the break");
  return p;
}

}  // namespace stallwright::detail
