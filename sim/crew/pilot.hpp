#pragma once
#include <array>
#include <cstdint>

#include "aircraft/airframe_state.hpp"
#include "sim/crew/experience.hpp"
#include "sim/crew/pilot_grade.hpp"
#include "sim/sensing/readings.hpp"

namespace stallwright {

inline constexpr double kTick_s = 0.02;  ///< sensors and crew, 50 Hz

/// What whoever holds the stick is asked to do just now.
struct CrewTask {
  enum class Manner {
    hold,     ///< hold speed with pitch; height or descent with power, or idle
    slow,     ///< let the speed fall at a steady rate, idle or as `power` says
    recover,  ///< after the break: forward, level, power; then climb away
  };
  Manner manner = Manner::hold;
  PowerRule power = PowerRule::level;
  bool full_power = false;       ///< climb back to the working height
  double speed_mps = 0.0;        ///< indicated; slow: the target of this moment
  double speed_rate_mps2 = 0.0;  ///< slow: negative
  double altitude_m = 0.0;       ///< indicated, for level power
  double descent_mps = 0.0;
  double heading_rad = 0.0;
  double bank_rad = 0.0;  ///< used if `turning`
  bool turning = false;
  double flap_rad = 0.0;
  const SteadyCurve* remembered = nullptr;  ///< for this flap and power; may be null (none)
};

/// The simulated pilot's memory. Value type, part of the sortie's state.
struct PilotState {
  static constexpr std::size_t kDelayTicks = 24;
  std::array<double, kDelayTicks> pitch_command{}, roll_command{}, yaw_command{};
  std::size_t head = 0;
  double stick_aft = 0.0, stick_right = 0.0, pedal_right = 0.0,
         throttle = 0.0;                      ///< hands, after the arm's lag
  double pitch_trim = 0.0, pedal_trim = 0.0;  ///< what has been trimmed out
  double speed_integral_rad = 0.0, power_trim = 0.0;
  double seen_speed_error_mps = 0.0, seen_altitude_error_m = 0.0, seen_climb_mps = 0.0;
  double next_scan_s = 0.0;
  double remnant_pitch = 0.0, remnant_roll = 0.0;
  double pitch_target_rad = 0.0;
  double unloading_s = 0.0;  ///< in a recovery: how long the stick has been forward
  bool unloaded = false;
  bool started = false;
};

/// The simulated pilot: speed closed with pitch, height with power, each through a crossover model; bank with
/// aileron, ball with pedal. Inner loops: the hand asks for omega_c x error / (gain of the aeroplane), after the delay
/// and the arm's lag, so that pilot and aeroplane together look like omega_c exp(-tau s)/s   [MCRUER_KRENDEL].
/// The remnant is first-order noise (corner 3 rad/s) added to the perceived attitude.
class Pilot {
 public:
  /// seed and sortie key the random streams; nothing else is remembered here.
  Pilot(const PilotGrade& grade, const ControlFeel& feel, std::uint64_t seed, std::uint32_t sortie);

  /// Hands for the next tick, from what the instruments and the horizon show at this one.
  Controls<double> step(PilotState& state, const CrewTask& task, const Readings<double>& seen,
                        double time_s) const;

  const PilotGrade& grade() const { return grade_; }

 private:
  void scan(PilotState& state, const CrewTask& task, const Readings<double>& seen, double time_s,
            std::uint64_t tick) const;
  void remnant(PilotState& state, std::uint64_t tick) const;
  double pitch_target(PilotState& state, const CrewTask& task, const Readings<double>& seen) const;
  enum class Recovery { none, unload, level };
  Recovery recovery_stage(PilotState& state, const CrewTask& task, const Readings<double>& seen) const;
  double throttle(PilotState& state, const CrewTask& task, const Readings<double>& seen) const;

  PilotGrade grade_;
  ControlFeel feel_;
  std::uint64_t seed_;
  std::uint32_t sortie_;
  double power_error_ = 0.0;
};

}  // namespace stallwright
