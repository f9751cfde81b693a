#include "sim/sortie/break_detector.hpp"

#include <algorithm>

#include "aircraft/math/elementary.hpp"

namespace stallwright {
namespace {
constexpr double kDrop_rad = 4.0 * math::kDegree;
constexpr double kFalling_radps = -2.0 * math::kDegree;
constexpr double kStickForward = 0.04;
constexpr double kAftStop = 0.98;
constexpr double kAtStop_s = 1.0;
}  // namespace

std::optional<Break> BreakDetector::update(double time_s, double pitch_rad, double pitch_rate_radps,
                                           double stick_aft, double indicated_airspeed_mps, double lift_area_m2) {
  ring_[count_ % kWindow] = {time_s, pitch_rad, pitch_rate_radps, stick_aft, lift_area_m2};
  ++count_;
  if (called_ || indicated_airspeed_mps > below_mps_) {
    at_stop_since_s_ = -1.0;
    return std::nullopt;
  }

  if (stick_aft < kAftStop) at_stop_since_s_ = -1.0;
  else if (at_stop_since_s_ < 0.0) at_stop_since_s_ = time_s;
  if (at_stop_since_s_ >= 0.0 && time_s - at_stop_since_s_ >= kAtStop_s) {
    called_ = true;
    return Break{at_stop_since_s_, "control at its aft stop"};
  }

  // Highest pitch and most aft stick of the window, oldest sample first.
  const std::size_t held = std::min(count_, kWindow);
  std::size_t top = 0;
  double most_aft = -1.0, most_lift = 0.0;
  const auto at = [&](std::size_t k) -> const Sample& { return ring_[(count_ - held + k) % kWindow]; };
  for (std::size_t k = 0; k < held; ++k) {
    if (at(k).pitch_rad >= at(top).pitch_rad) top = k;
    most_aft = std::max(most_aft, at(k).stick_aft);
    most_lift = std::max(most_lift, at(k).lift_area_m2);
  }
  const bool dropped = at(top).pitch_rad - pitch_rad >= kDrop_rad && pitch_rate_radps < kFalling_radps;
  if (!dropped || stick_aft < most_aft - kStickForward || most_lift < lift_floor_m2_) return std::nullopt;
  called_ = true;
  for (std::size_t k = top; k < held; ++k)
    if (at(k).pitch_rate_radps < kFalling_radps) return Break{at(k).time_s, "uncommanded nose-down pitch"};
  return Break{time_s, "uncommanded nose-down pitch"};
}

}  // namespace stallwright
