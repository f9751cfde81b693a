#include "sim/crew/pilot.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/math/bisected_table.hpp"
#include "aircraft/math/elementary.hpp"
#include "aircraft/math/units.hpp"
#include "sim/random/philox.hpp"

namespace stallwright {
namespace {

using random::Channel;
using random::Key;

constexpr double kClimbLimit_mps = 2.5;  ///< 500 ft/min: what is used to correct height (common practice)
constexpr double kLargestChase_rad = 3.5 * math::kDegree;  ///< attitude spent on a speed error
constexpr double kPowerGain = 0.5, kPowerTrim_ps = 0.10;   ///< share of the steady answer; per second of it
constexpr double kPowerReach = 0.25;                       ///< how far from the remembered setting
constexpr double kSettledClimb_mps = 1.3;
constexpr double kPitching_radps = 2.5 * math::kDegree;  ///< how fast an attitude is changed on purpose
constexpr double kRecoverPitching_radps = 12.0 * math::kDegree;
constexpr double kStickBack_ps =
    0.06;  ///< stick coming back on the way to the stall, share of travel per second,
constexpr double kStickBackPerRate = 0.12;  ///< and more with the entry rate, per m/s2
constexpr double kUnloadStick = -0.15;      ///< forward of neutral until the wing flies again
constexpr double kPullOut = 2.0;            ///< load factor out of the dive
constexpr double kRudderWithAileron =
    0.45;                            ///< feet go with hands: adverse yaw is met as it comes (common practice)
constexpr double kAgainstYaw = 1.5;  ///< pedal per rad/s, against a wing drop
constexpr double kRemnantCorner_radps = 3.0;  ///< [MCRUER_KRENDEL]

double outside_band(double error, double band) {
  return error > band ? error - band : error < -band ? error + band : 0.0;
}

double wrapped_angle(double a) { return a - 2.0 * math::kPi * math::round(a / (2.0 * math::kPi)); }

/// Approach of a value to a target with a first-order lag over one tick.
double lagged(double present, double target, double lag_s) {
  return target + (present - target) * math::exp(-kTick_s / lag_s);
}

}  // namespace

Pilot::Pilot(const PilotGrade& grade, const ControlFeel& feel, std::uint64_t seed, std::uint32_t sortie)
    : grade_(grade), feel_(feel), seed_(seed), sortie_(sortie) {
  power_error_ = grade.power_sd * random::normal(Key{seed, sortie}.stream(Channel::kPilotPower), 0);
}

void Pilot::scan(PilotState& s, const CrewTask& task, const Readings<double>& seen, double time_s,
                 std::uint64_t tick) const {
  if (time_s < s.next_scan_s) return;
  const double jitter = 0.75 + 0.5 * random::uniform(Key{seed_, sortie_}.stream(Channel::kPilotScan), tick);
  s.next_scan_s = time_s + grade_.scan_s * jitter;
  s.seen_speed_error_mps =
      outside_band(seen.indicated_airspeed_mps - task.speed_mps, grade_.speed_band_kt * kKnot);
  s.seen_altitude_error_m =
      outside_band(seen.indicated_altitude_m - task.altitude_m, grade_.altitude_band_ft * kFoot);
  s.seen_climb_mps = seen.vertical_speed_mps;
}

void Pilot::remnant(PilotState& s, std::uint64_t tick) const {
  const double keep = math::exp(-kRemnantCorner_radps * kTick_s);
  const double fresh = math::sqrt(1.0 - keep * keep) * grade_.remnant_deg * math::kDegree;
  const random::Stream stream = Key{seed_, sortie_}.stream(Channel::kPilotRemnant);
  s.remnant_pitch = keep * s.remnant_pitch + fresh * random::normal(stream, tick, 0);
  s.remnant_roll = keep * s.remnant_roll + fresh * random::normal(stream, tick, 1);
}

double Pilot::pitch_target(PilotState& s, const CrewTask& task, const Readings<double>& seen) const {
  if (task.manner == CrewTask::Manner::recover) {
    // Forward until the speed is safe, then up to a climbing attitude.
    s.speed_integral_rad = 0.0;
    return seen.indicated_airspeed_mps > task.speed_mps ? 6.0 * math::kDegree : -6.0 * math::kDegree;
  }
  double base = seen.pitch_rad;
  if (task.remembered != nullptr)
    base = math::interpolate_bisected(task.remembered->speed_mps, task.remembered->pitch_rad, task.speed_mps);
  if (task.full_power) base = 7.0 * math::kDegree;
  // dV/dt = -g x (pitch above the steady one): speed answers pitch like an integrator of gain g. A large error is
  // flown off at a steady few degrees, not chased.
  const double lead =
      task.manner == CrewTask::Manner::slow ? -task.speed_rate_mps2 / kStandardGravity_mps2 : 0.0;
  const double gain = grade_.speed_crossover_radps / kStandardGravity_mps2;
  const double chase = std::clamp(gain * s.seen_speed_error_mps, -kLargestChase_rad, kLargestChase_rad);
  const bool close = math::abs(gain * s.seen_speed_error_mps) < kLargestChase_rad;
  if (close)
    s.speed_integral_rad =
        std::clamp(s.speed_integral_rad + chase * kTick_s / grade_.trim_time_s, -0.15, 0.15);
  return std::clamp(base + lead + chase + s.speed_integral_rad, -0.5, 0.6);
}

double Pilot::throttle(PilotState& s, const CrewTask& task, const Readings<double>&) const {
  if (task.full_power || task.manner == CrewTask::Manner::recover) return 1.0;
  if (task.power == PowerRule::idle) return 0.0;
  double base = 0.4;
  if (task.remembered != nullptr)
    base = math::interpolate_bisected(task.remembered->speed_mps, task.remembered->throttle, task.speed_mps);
  const double wanted = task.power == PowerRule::descent
                            ? -task.descent_mps
                            : std::clamp(-0.08 * s.seen_altitude_error_m, -kClimbLimit_mps, kClimbLimit_mps);
  // Near the remembered setting: what is left is corrected a little at once and trimmed out slowly. While the speed is
  // still changing the climb says nothing about the setting, so a large error is not trimmed out.
  const double error = (wanted - s.seen_climb_mps) / feel_.climb_per_throttle;
  const bool settled = math::abs(wanted - s.seen_climb_mps) < kSettledClimb_mps;
  if (settled)
    s.power_trim = std::clamp(s.power_trim + kPowerTrim_ps * error * kTick_s, -kPowerReach, kPowerReach);
  return std::clamp(
      base + power_error_ + std::clamp(kPowerGain * error, -kPowerReach, kPowerReach) + s.power_trim, 0.0,
      1.0);
}

/// Unload until half a second has gone, the speed is safe and the yaw has stopped; then level and pull out.
Pilot::Recovery Pilot::recovery_stage(PilotState& s, const CrewTask& task,
                                      const Readings<double>& seen) const {
  if (task.manner != CrewTask::Manner::recover) {
    s.unloading_s = 0.0;
    s.unloaded = false;
    return Recovery::none;
  }
  s.unloading_s += kTick_s;
  const bool flying = s.unloading_s > 0.5 && seen.indicated_airspeed_mps > 0.93 * task.speed_mps &&
                      math::abs(seen.yaw_rate_radps) < 0.45;
  s.unloaded = s.unloaded || flying || s.unloading_s > 6.0;
  return s.unloaded ? Recovery::level : Recovery::unload;
}

Controls<double> Pilot::step(PilotState& s, const CrewTask& task, const Readings<double>& seen,
                             double time_s) const {
  const std::uint64_t tick = static_cast<std::uint64_t>(std::llround(time_s / kTick_s));
  if (!s.started) {
    s.started = true;
    s.stick_aft = seen.stick_aft;
    s.stick_right = seen.stick_right;
    s.pedal_right = seen.pedal_right;
    s.throttle = seen.throttle;
    s.pitch_target_rad = seen.pitch_rad;
    s.pitch_command.fill(seen.stick_aft);
    s.roll_command.fill(seen.stick_right);
    s.yaw_command.fill(seen.pedal_right);
    s.pedal_trim = seen.pedal_right;
    if (task.remembered == nullptr) s.pitch_trim = seen.stick_aft;
  }
  scan(s, task, seen, time_s, tick);
  remnant(s, tick);

  const double speed = std::max(seen.indicated_airspeed_mps, 10.0);
  const double grip = speed / feel_.reference_mps;

  // Pitch: attitude closed with stick about the remembered stick position for this speed.
  const bool recovering = task.manner == CrewTask::Manner::recover;
  const double quickest = (recovering ? kRecoverPitching_radps : kPitching_radps) * kTick_s;
  s.pitch_target_rad += std::clamp(pitch_target(s, task, seen) - s.pitch_target_rad, -quickest, quickest);
  const double pitch_error = s.pitch_target_rad - seen.pitch_rad + s.remnant_pitch;
  const double asked_rate = grade_.pitch_crossover_radps * pitch_error;
  double stick = 0.0;
  if (task.remembered != nullptr)
    stick = math::interpolate_bisected(task.remembered->speed_mps, task.remembered->stick_aft, speed);
  const double per_rate = 1.0 / (feel_.pitch_rate_per_stick * grip);
  const double rate_damping = 0.15 * seen.pitch_rate_radps;
  s.pitch_trim =
      std::clamp(s.pitch_trim + asked_rate * per_rate * kTick_s / (0.35 * grade_.trim_time_s), -0.8, 0.8);
  double pitch_stick = stick + (asked_rate - rate_damping) * per_rate + s.pitch_trim;
  if (task.manner == CrewTask::Manner::slow) {
    // On the way to the stall the stick comes back steadily; a nose that drops is not caught with it.
    const double last = s.pitch_command[(s.head + PilotState::kDelayTicks - 1) % PilotState::kDelayTicks];
    pitch_stick =
        std::min(pitch_stick, last + (kStickBack_ps - kStickBackPerRate * task.speed_rate_mps2) * kTick_s);
  }
  const Recovery stage = recovery_stage(s, task, seen);
  if (stage == Recovery::unload) pitch_stick = kUnloadStick;
  if (recovering) {
    s.pitch_trim = lagged(s.pitch_trim, 0.0, 0.5);
    // Out of the dive gently: the pull is eased as the load comes on.
    const double load = -seen.down_mps2 / kStandardGravity_mps2;
    pitch_stick = std::min(pitch_stick, stick + 0.4 * (kPullOut - load));
  }

  // Roll: bank closed with aileron; the bank asked for holds the heading unless a turn is flown.
  const double heading_error = wrapped_angle(task.heading_rad - seen.heading_rad);
  const double wanted_bank = task.turning ? task.bank_rad : std::clamp(0.6 * heading_error, -0.15, 0.15);
  const double bank_error =
      outside_band(wanted_bank - seen.bank_rad, grade_.bank_band_deg * math::kDegree) + s.remnant_roll;
  const double roll_rate = grade_.roll_crossover_radps * bank_error;
  double roll_stick = (roll_rate - 0.3 * seen.roll_rate_radps) / (feel_.roll_rate_per_stick * grip);
  if (stage == Recovery::unload) roll_stick = 0.0;  // ailerons neutral until the wing flies

  // Yaw: step on the ball (it lies opposite to the side that the seat pushes to), slowly; stop a swing.
  s.pedal_trim = std::clamp(s.pedal_trim - 0.25 * seen.right_mps2 * kTick_s, -0.9, 0.9);
  const double turn_rate = kStandardGravity_mps2 * math::tan(std::clamp(seen.bank_rad, -1.0, 1.0)) / speed;
  double pedal = s.pedal_trim - 0.06 * seen.right_mps2 - 0.8 * (seen.yaw_rate_radps - turn_rate) +
                 kRudderWithAileron * roll_stick;
  if (stage == Recovery::unload) pedal = s.pedal_trim - kAgainstYaw * seen.yaw_rate_radps;

  // The delay line: what is decided now moves the hand `delay_s` later, through the arm's lag.
  const std::size_t ticks = std::min<std::size_t>(PilotState::kDelayTicks - 1,
                                                  static_cast<std::size_t>(grade_.delay_s / kTick_s + 0.5));
  s.pitch_command[s.head] = std::clamp(pitch_stick, -1.0, 1.0);
  s.roll_command[s.head] = std::clamp(roll_stick, -1.0, 1.0);
  s.yaw_command[s.head] = std::clamp(pedal, -1.0, 1.0);
  const std::size_t from = (s.head + PilotState::kDelayTicks - ticks) % PilotState::kDelayTicks;
  s.stick_aft = lagged(s.stick_aft, s.pitch_command[from], grade_.neuromuscular_s);
  s.stick_right = lagged(s.stick_right, s.roll_command[from], grade_.neuromuscular_s);
  s.pedal_right = lagged(s.pedal_right, s.yaw_command[from], grade_.neuromuscular_s);
  s.head = (s.head + 1) % PilotState::kDelayTicks;
  s.throttle = lagged(s.throttle, throttle(s, task, seen), 0.4);

  Controls<double> hands;
  hands.stick_aft = std::clamp(s.stick_aft, -1.0, 1.0);
  hands.stick_right = std::clamp(s.stick_right, -1.0, 1.0);
  hands.pedal_right = std::clamp(s.pedal_right, -1.0, 1.0);
  hands.throttle = std::clamp(s.throttle, 0.0, 1.0);
  hands.flap_rad = task.flap_rad;
  return hands;
}

}  // namespace stallwright
