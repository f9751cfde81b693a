#pragma once
#include <algorithm>
#include <stdexcept>

#include "sim/motion/trim.hpp"

namespace stallwright::published {

/// Somebody who flies a stall as the regulation has it: slows down at a set rate with the stick alone, holds a bank with
/// stick and feet, and then does as told. Angles in rad, speeds in m/s.
class StallPilot {
 public:
  enum class Nose { slow_down, keep_stick, lower };

  StallPilot(const Aircraft& aircraft, double speed_mps, double bank_rad)
      : aircraft_(aircraft), bank_rad_(bank_rad) {
    TrimCondition c;
    c.true_airspeed_mps = speed_mps;
    c.power = TrimCondition::Power::throttle;  // idle
    c.bank_rad = bank_rad;
    c.altitude_m = 1500.0;
    const Trim t = find_trim(aircraft, c);
    if (!t.converged) throw std::runtime_error("no glide found");
    state_ = t.state;
    hands_ = trimmed_ = t.controls;
    trimmed_rate_ = t.state.rigid.rate_B_radps;
    wanted_mps_ = speed_mps;
    stick_ = t.controls.stick_aft;
  }

  double slowing_mps2 = 0.0;  ///< how fast speed is let go
  Nose nose = Nose::slow_down;
  double throttle = 0.0;
  double safe_mps = 0.0, safe_alpha_rad = 0.0;  ///< when and how hard to pull out, once the nose is lowered

  void step() {
    const auto angles = euler_angles(state_.rigid.attitude_EB);
    const Vec3<double>& w = state_.rigid.rate_B_radps;
    // Wings: stick against the bank's error and the roll, feet against the ball and the yaw of the turn.
    const double turn = trimmed_rate_.z;
    const double off = bank_rad_ - angles.roll_rad;
    bank_sum_ = std::clamp(bank_sum_ + off * kStep_s, -0.3, 0.3);
    hands_.stick_right =
        std::clamp(trimmed_.stick_right + 1.5 * off + 0.5 * bank_sum_ - 0.4 * w.x, -1.0, 1.0);
    hands_.pedal_right = std::clamp(trimmed_.pedal_right - 0.06 * side_mps2_ - 0.5 * (w.z - turn), -1.0, 1.0);
    if (nose != Nose::keep_stick) {
      const double error = std::clamp(pitch_rate_wanted(), -0.25, 0.6) - w.y;
      stick_ = std::clamp(stick_ + 1.5 * error * kStep_s, -1.0, 1.0);
      hands_.stick_aft = std::clamp(stick_ + 0.8 * error, -1.0, 1.0);
    }
    hands_.throttle = throttle;
    wanted_mps_ -= slowing_mps2 * kStep_s;
    const auto d = flight_derivative(aircraft_, state_, hands_, AirSample<double>{});
    side_mps2_ = d.specific_force_B_mps2.y;
    const double speed = speed_mps();
    slowing_now_ = -(dot(d.specific_force_B_mps2, state_.rigid.velocity_B_mps) / speed -
                     kStandardGravity_mps2 * climb_mps() / speed);
    lift_ = -d.specific_force_B_mps2.z * aircraft_.mass.mass_kg /
            (0.5 * 1.225 * speed * speed * aircraft_.wing_area_m2);
    load_factor_ = -d.specific_force_B_mps2.z / kStandardGravity_mps2;
    state_ = flight_step(aircraft_, state_, hands_, AirSample<double>{});
  }

  double speed_mps() const { return norm(state_.rigid.velocity_B_mps); }
  double alpha_rad() const {
    return math::atan2(state_.rigid.velocity_B_mps.z, state_.rigid.velocity_B_mps.x);
  }
  double bank_rad() const { return euler_angles(state_.rigid.attitude_EB).roll_rad; }
  double pitch_rad() const { return euler_angles(state_.rigid.attitude_EB).pitch_rad; }
  double height_m() const { return -state_.rigid.position_E_m.z; }
  double climb_mps() const {
    return -(rotation_EB(state_.rigid.attitude_EB) * state_.rigid.velocity_B_mps).z;
  }
  double lift() const { return lift_; }  ///< normal-force coefficient
  double load_factor() const { return load_factor_; }
  const Controls<double>& hands() const { return hands_; }
  const FlightState<double>& state() const { return state_; }

 private:
  double pitch_rate_wanted() const {
    const double path = math::asin(std::clamp(climb_mps() / speed_mps(), -1.0, 1.0));
    if (nose == Nose::slow_down) return slowing_rate(path);
    if (speed_mps() < safe_mps) return 1.5 * (safe_alpha_rad - 0.1 - alpha_rad());
    return std::min(1.0 * (0.05 - path), 2.0 * (safe_alpha_rad - alpha_rad()) + 0.2);
  }

  /// Slower by a steeper path, which takes load factor, which takes angle of attack, in a bank as wings level. When the wing
  /// gives no more, the stick goes on coming back.
  double slowing_rate(double path_rad) const {
    const double g = kStandardGravity_mps2, speed = speed_mps();
    const double late = slowing_mps2 - slowing_now_ + 0.1 * (speed - wanted_mps_);
    const double path_rate = std::clamp(0.8 * late / g, -0.08, 0.08);
    const double load = (math::cos(path_rad) + speed * path_rate / g) / math::cos(bank_rad_);
    const double alpha_rate = 2.0 * (load / std::max(0.3, load_factor_) - 1.0) * (alpha_rad() + 0.06);
    return g / speed * (load_factor_ - math::cos(pitch_rad()) * math::cos(bank_rad())) + alpha_rate;
  }

  const Aircraft& aircraft_;
  double bank_rad_;
  FlightState<double> state_;
  Controls<double> hands_, trimmed_;
  Vec3<double> trimmed_rate_;
  double bank_sum_ = 0.0, wanted_mps_ = 0.0, stick_ = 0.0, side_mps2_ = 0.0, lift_ = 0.0, load_factor_ = 1.0,
         slowing_now_ = 0.0;
};

}  // namespace stallwright::published
