#include "sim/truth/knots_map.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "aircraft/math/units.hpp"

namespace stallwright {
namespace {

constexpr double kTangentBelow = 1.05;  ///< times the 1 g stall speed
constexpr double kStep_rad = 0.1 * math::kDegree;
constexpr double kJump = 0.04;
constexpr double kBeyondStall_rad = 10.0 * math::kDegree;

/// Interval [i, i+1] of a rising axis that holds a value, or the end interval nearest to it.
std::size_t interval(const std::vector<double>& axis, double value) {
  const auto above = std::upper_bound(axis.begin(), axis.end(), value);
  const std::ptrdiff_t i = above - axis.begin() - 1;
  return static_cast<std::size_t>(
      std::clamp<std::ptrdiff_t>(i, 0, static_cast<std::ptrdiff_t>(axis.size()) - 2));
}

}  // namespace

KnotsMap::KnotsMap(const Aircraft& aircraft, double flap_rad, const StillAir& air, double fastest_mps) {
  // Where to begin: the angle of the fastest flight wanted, in a glide.
  const StaticPoint fast = steady_at(aircraft, flap_rad, PowerRule::idle, 0.0, air, fastest_mps);
  if (!fast.found) throw std::runtime_error("no steady glide at the fastest speed of the card");
  const std::vector<StaticPoint> sweep =
      angle_sweep(aircraft, flap_rad, PowerRule::idle, 0.0, air, fast.alpha_rad, kStep_rad, kBeyondStall_rad);
  stall_ = maximum_lift(sweep);
  const double to_reference = math::sqrt(aircraft.type.mass.reference_kg / aircraft.mass.mass_kg);
  stall_speed_kt_ = stall_.indicated_mps / kKnot * to_reference;

  double last = -1e9;
  for (const StaticPoint& p : sweep) {
    // The wing's upwash at the probe falls when it stalls; angle must still win, or a ratio would belong to two speeds.
    // Where a sweep jumps from one stalled state to the next, half a degree's worth of ratio may be lost at once.
    const bool fell_back = p.ratio < last - kJump || p.ratio < stall_.ratio - 0.01;
    if (p.alpha_rad > stall_.alpha_rad + kStep_rad && fell_back)
      throw std::runtime_error("the probe's ratio does not rise with angle of attack past the stall");
    // Where a jump goes back in ratio, what it has passed already stands.
    if (p.ratio > last) {
      swept_ratio_.push_back(p.ratio);
      swept_area_m2_.push_back(p.lift_area_m2);
    }
    last = std::max(last, p.ratio);
    const double speed = p.indicated_mps / kKnot * to_reference;
    if (speed < kTangentBelow * stall_speed_kt_ || p.alpha_rad > stall_.alpha_rad) continue;
    if (!ratio_.empty() && (p.ratio <= ratio_.back() || speed >= speed_kt_.back()))
      throw std::runtime_error("the probe's ratio does not rise as speed falls along the trim curve");
    ratio_.push_back(p.ratio);
    speed_kt_.push_back(speed);
    alpha_rad_.push_back(p.alpha_rad);
  }
  if (ratio_.size() < 4) throw std::runtime_error("too few steady glides above the stall");
}

double KnotsMap::ratio_per_kt(double ratio) const {
  const std::size_t i = interval(ratio_, ratio);
  return (ratio_[i + 1] - ratio_[i]) / (speed_kt_[i + 1] - speed_kt_[i]);
}

double KnotsMap::speed_kt(double ratio) const {
  const std::size_t i = interval(ratio_, ratio);
  return speed_kt_[i] + (ratio - ratio_[i]) * (speed_kt_[i + 1] - speed_kt_[i]) / (ratio_[i + 1] - ratio_[i]);
}

double KnotsMap::lift_area_m2(double ratio) const {
  const double r = std::clamp(ratio, swept_ratio_.front(), swept_ratio_.back());
  const std::size_t i = interval(swept_ratio_, r);
  return swept_area_m2_[i] + (r - swept_ratio_[i]) * (swept_area_m2_[i + 1] - swept_area_m2_[i]) /
                                 (swept_ratio_[i + 1] - swept_ratio_[i]);
}

double KnotsMap::ratio_per_rad(double ratio) const {
  const std::size_t i = interval(ratio_, std::clamp(ratio, ratio_.front(), ratio_.back()));
  return (ratio_[i + 1] - ratio_[i]) / (alpha_rad_[i + 1] - alpha_rad_[i]);
}

}  // namespace stallwright
