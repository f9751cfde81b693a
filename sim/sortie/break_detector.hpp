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

/// What the break is judged by, at one moment.
struct BreakSample {
  double time_s, pitch_rad, pitch_rate_radps, stick_aft, indicated_airspeed_mps;
  double lift_area_m2;  ///< n m g/q_c
  double ratio;         ///< of the probe
  double bank_rad;
};

/// Watches pitch and stick at 50 Hz for the break, 14 CFR 23.201(b) (amendment 62):   [14CFR23]
///   - a downward pitching motion that the stick did not command: pitch attitude 4 deg below its highest of the
///     last 2.5 s and still falling, while the stick has not been moved forward by more than 2 % of its whole travel in
///     that time; dated to the moment the nose began to fall faster than 2 deg/s;
///   - or the control at its aft stop (0.98 of travel) for one second: dated to reaching it.
/// Ours, because a wing that drops is as clear a sign: bank beyond 30 deg, dated to passing 10 deg on the way there.
/// Gusts pitch and roll an aeroplane too, and so does a hand a moment before. A nose that falls or a wing that drops is
/// a break only where the wing has let go within the same 2.5 s. By means over 0.42 s:
///   - its lift area had come to `lift_floor_m2`;
///   - and after the most of it, lift was lost at no less an angle (3.5 % of it, at no lower ratio), or the angle grew
///     without lift (0.05 of ratio, about half a degree). In a gust both come down together.
/// The thresholds are ours (the regulation has none). `below_mps` bounds the speed.
/// Value type: copy it, and the copy goes on alike.
class BreakDetector {
 public:
  /// A reader of a log asks for a little less drop than whoever broke the stall off (`drop_deg`), or misses breaks that
  /// were called at the last moment.
  BreakDetector(double below_mps, double lift_floor_m2, double drop_deg = 4.0)
      : below_mps_(below_mps), lift_floor_m2_(lift_floor_m2), drop_deg_(drop_deg) {}

  /// One reading; gives the break once, at the sample at which it is certain.
  std::optional<Break> update(const BreakSample& now);

 private:
  static constexpr std::size_t kWindow = 125, kMean = 21;
  struct Held {
    BreakSample seen;
    double mean_lift_m2, mean_ratio;  ///< of this sample and the 20 before it; 0 while there are fewer
  };
  std::size_t held() const { return count_ < kWindow ? count_ : kWindow; }
  const Held& at(std::size_t k) const { return ring_[(count_ - held() + k) % kWindow]; }  ///< oldest first
  void remember(const BreakSample& now);
  bool let_go() const;
  std::optional<Break> nose_fell(const BreakSample& now) const;
  std::optional<Break> wing_dropped(const BreakSample& now) const;

  std::array<Held, kWindow> ring_{};
  std::size_t count_ = 0;
  double below_mps_, lift_floor_m2_, drop_deg_;
  double at_stop_since_s_ = -1.0;
  bool called_ = false;
};

}  // namespace stallwright
