#pragma once
#include <array>
#include <cstddef>
#include <optional>
#include <string>

namespace stallwright {

/// The moment of stall as the regulation defines it, found from readings alone.
struct Break {
  double time_s = 0.0;
  std::string sign;  ///< which of the two definitions
};

/// Watches pitch and stick at 50 Hz for the break, 14 CFR 23.201(b) (amendment 62):   [14CFR23]
///   - a downward pitching motion that the stick did not command: pitch attitude 4 deg below its highest of the
///     last 2.5 s and still falling, while the stick has not been moved forward by more than 2 % of its whole travel in
///     that time and the wing has just made nearly all the lift it can; dated to the moment the nose began to fall
///     faster than 2 deg/s;
///   - or the control at its aft stop (0.98 of travel) for one second: dated to reaching it.
/// The thresholds are ours (the regulation has none). `below_mps` bounds the speed; `lift_floor_m2` is the lift area
/// n m g/q_c that must have been reached within the last 2.5 s, so that a nose lowered on purpose is not a break.
/// Value type: copy it, and the copy goes on alike.
class BreakDetector {
 public:
  BreakDetector(double below_mps, double lift_floor_m2) : below_mps_(below_mps), lift_floor_m2_(lift_floor_m2) {}

  /// One reading; gives the break once, at the sample at which it is certain.
  std::optional<Break> update(double time_s, double pitch_rad, double pitch_rate_radps, double stick_aft,
                              double indicated_airspeed_mps, double lift_area_m2);

 private:
  static constexpr std::size_t kWindow = 125;
  struct Sample {
    double time_s, pitch_rad, pitch_rate_radps, stick_aft, lift_area_m2;
  };
  std::array<Sample, kWindow> ring_{};
  std::size_t count_ = 0;
  double below_mps_, lift_floor_m2_;
  double at_stop_since_s_ = -1.0;
  bool called_ = false;
};

}  // namespace stallwright
