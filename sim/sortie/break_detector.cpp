#include "sim/sortie/break_detector.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/math/elementary.hpp"

namespace stallwright {
namespace {
constexpr double kFalling_radps = -2.0 * math::kDegree;
constexpr double kStickForward = 0.04;
constexpr double kAftStop = 0.98;
constexpr double kAtStop_s = 1.0;
constexpr double kDroppedBank_rad = 30.0 * math::kDegree;
constexpr double kLevelBank_rad = 10.0 * math::kDegree;
constexpr double kLiftLost = 0.035;
constexpr double kAngleGained = 0.05;
}  // namespace

void BreakDetector::remember(const BreakSample& now) {
  Held next{now, 0.0, 0.0};
  if (count_ + 1 >= kMean) {
    double lift = now.lift_area_m2, ratio = now.ratio;
    for (std::size_t k = 1; k < kMean; ++k) {
      const BreakSample& before = ring_[(count_ - k) % kWindow].seen;
      lift += before.lift_area_m2;
      ratio += before.ratio;
    }
    next.mean_lift_m2 = lift / static_cast<double>(kMean);
    next.mean_ratio = ratio / static_cast<double>(kMean);
  }
  ring_[count_ % kWindow] = next;
  ++count_;
}

/// Has the wing lost lift that its angle does not account for?
bool BreakDetector::let_go() const {
  std::size_t top = 0;
  for (std::size_t k = 0; k < held(); ++k)
    if (at(k).mean_lift_m2 > at(top).mean_lift_m2) top = k;
  const double most = at(top).mean_lift_m2, angle = at(top).mean_ratio;
  if (most < lift_floor_m2_) return false;
  for (std::size_t k = top; k < held(); ++k) {
    const bool lost = at(k).mean_ratio >= angle && at(k).mean_lift_m2 <= (1.0 - kLiftLost) * most;
    if (lost || at(k).mean_ratio >= angle + kAngleGained) return true;
  }
  return false;
}

std::optional<Break> BreakDetector::nose_fell(const BreakSample& now) const {
  if (!(now.pitch_rate_radps < kFalling_radps)) return std::nullopt;
  std::size_t top = 0;
  double most_aft = -1.0;
  for (std::size_t k = 0; k < held(); ++k) {
    if (at(k).seen.pitch_rad >= at(top).seen.pitch_rad) top = k;
    most_aft = std::max(most_aft, at(k).seen.stick_aft);
  }
  const bool dropped = at(top).seen.pitch_rad - now.pitch_rad >= drop_deg_ * math::kDegree;
  if (!dropped || now.stick_aft < most_aft - kStickForward || !let_go()) return std::nullopt;
  double began_s = now.time_s;
  for (std::size_t k = held(); k-- > top;)
    if (at(k).seen.pitch_rate_radps < kFalling_radps) began_s = at(k).seen.time_s;
  return Break{began_s, "uncommanded nose-down pitch"};
}

std::optional<Break> BreakDetector::wing_dropped(const BreakSample& now) const {
  if (std::abs(now.bank_rad) < kDroppedBank_rad || !let_go()) return std::nullopt;
  std::size_t k = held() - 1;
  while (k > 0 && std::abs(at(k).seen.bank_rad) > kLevelBank_rad) --k;
  return Break{at(k).seen.time_s, "wing drop"};
}

std::optional<Break> BreakDetector::update(const BreakSample& now) {
  remember(now);
  if (called_ || now.indicated_airspeed_mps > below_mps_) {
    at_stop_since_s_ = -1.0;
    return std::nullopt;
  }
  if (now.stick_aft < kAftStop)
    at_stop_since_s_ = -1.0;
  else if (at_stop_since_s_ < 0.0)
    at_stop_since_s_ = now.time_s;
  std::optional<Break> found;
  if (at_stop_since_s_ >= 0.0 && now.time_s - at_stop_since_s_ >= kAtStop_s)
    found = Break{at_stop_since_s_, "control at its aft stop"};
  else if (found = nose_fell(now); !found)
    found = wing_dropped(now);
  called_ = found.has_value();
  return found;
}

}  // namespace stallwright
