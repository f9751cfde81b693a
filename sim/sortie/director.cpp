#include "sim/sortie/director.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/math/elementary.hpp"
#include "aircraft/math/units.hpp"
#include "sim/air/airspeed.hpp"
#include "sim/sortie/director_rules.hpp"

namespace stallwright {
namespace {

constexpr double kClearingBank_rad = 30.0 * math::kDegree;  ///< two turns of 90 deg (common practice)
constexpr double kWingDrop_rad = 30.0 * math::kDegree;      ///< uncommanded bank at which a stall is ended
constexpr double kClimbBand_m =
    60.0;  ///< below the working height by more than this: climb before the next point

std::string rounded(double value) { return std::to_string(static_cast<long>(std::lround(value))); }

}  // namespace

std::string phase_name(Phase phase) {
  switch (phase) {
    case Phase::clearing:
      return "clearing";
    case Phase::transit:
      return "transit";
    case Phase::settle:
      return "settle";
    case Phase::record:
      return "record";
    case Phase::slow:
      return "slow";
    case Phase::broken:
      return "broken";
    case Phase::recover:
      return "recover";
    case Phase::climb:
      return "climb";
    case Phase::done:
      return "done";
  }
  return "";
}

std::vector<std::string> broken_bands(const TestPoint& point, const PointSpeeds& speeds, double altitude_m,
                                      const Readings<double>& seen) {
  std::vector<std::string> broken;
  const double speed = seen.indicated_airspeed_mps;
  if (speed < speeds.band_low_kt * kKnot)
    broken.push_back(rounded(speeds.target_kt - speed / kKnot) + " kt slow");
  if (speed > speeds.band_high_kt * kKnot)
    broken.push_back(rounded(speed / kKnot - speeds.target_kt) + " kt fast");
  const double off_height = (seen.indicated_altitude_m - altitude_m) / kFoot;
  if (point.power == PowerRule::level && std::abs(off_height) > point.bands.altitude_ft)
    broken.push_back(rounded(std::abs(off_height)) + (off_height > 0.0 ? " ft high" : " ft low"));
  const double wanted_climb = point.power == PowerRule::descent ? -point.descent_fpm : 0.0;
  const double climb = seen.vertical_speed_mps / kFootPerMinute;
  if (point.power != PowerRule::idle && std::abs(climb - wanted_climb) > point.bands.vertical_speed_fpm)
    broken.push_back(rounded(climb) + " ft/min vertical speed");
  if (std::abs(seen.bank_rad) > point.bands.bank_deg * math::kDegree)
    broken.push_back(rounded(std::abs(seen.bank_rad) / math::kDegree) + " deg bank");
  if (std::abs(seen.right_mps2) > point.bands.slip_g * kStandardGravity_mps2) broken.push_back("ball out");
  return broken;
}

Director::Director(const Setup& setup) : setup_(setup), detector_(0.0, 0.0) {
  for (std::size_t i = 0; i < setup.card.points.size(); ++i)
    speeds_.push_back(point_speeds(setup.card.points[i], setup.type, setup.mass_kg));
  tallies_.resize(setup.card.points.size());
  working_altitude_m_ = setup.qnh_terrain_m + setup.card.working_height_ft * kFoot;
  floor_altitude_m_ = setup.qnh_terrain_m + setup.card.floor_ft * kFoot;
  clearing_heading_rad_ = setup.heading_rad;
  begin_attempt(0.0);
}

void Director::note(double time_s, const std::string& kind, const std::string& text) {
  events_.push_back({time_s, index_, kind, text});
}

void Director::enter(Phase phase, double time_s) {
  phase_ = phase;
  phase_since_s_ = time_s;
  marks_.phase = phase;
}

/// Speed that is safe and handy between points: 1.4 times the stall speed here, never faster than a flap limit allows.
double Director::safe_speed_mps() const {
  const double limit = setup_.type.flaps[flap_setting_].limit_speed_mps - 6.0 * kKnot;
  return std::min(
      std::max(1.4 * speeds_[index_].stall_kt * kKnot, std::min(speeds_[index_].set_up_kt() * kKnot, limit)),
      limit);
}

bool Director::flaps_there(const Readings<double>& seen) const {
  return std::abs(seen.flap_rad - flap_rad()) < 0.5 * math::kDegree;
}

bool Director::clearing_wanted() const { return setup_.card.clearing_turns && attempt_ == 1; }

void Director::begin_attempt(double time_s) {
  attempt_since_s_ = time_s;
  met_since_s_ = button_at_s_ = tone_since_s_ = -1.0;
  record_left_band_ = false;
  const double target_kt = point().is_steady() ? speeds_[index_].target_kt : 0.0;
  marks_ = {static_cast<int>(index_) + 1, repeat_, attempt_, target_kt, false, false, true, phase_};
  // The lift that the flight manual's stall speed stands for must have been made, less 3 % for the mass entered and
  // the instruments (the book speed errs on the fast side: wings make 4 to 12 % more before they let go).
  const double stall_mps = speeds_[index_].stall_kt * kKnot;
  detector_ = BreakDetector(
      1.3 * stall_mps, 0.97 * setup_.mass_kg * kStandardGravity_mps2 / impact_pressure_of_cas(stall_mps));
  clearing_leg_ = 0;
  clearing_begun_s_ = time_s;
  enter(clearing_wanted() ? Phase::clearing : Phase::transit, time_s);
}

void Director::next_point_or_repeat(double time_s) {
  attempt_ = 1;
  if (repeat_ < point().repeats) {
    ++repeat_;
  } else {
    repeat_ = 1;
    if (++index_ == setup_.card.points.size()) {
      --index_;
      marks_ = {};
      enter(Phase::done, time_s);
      return;
    }
  }
  begin_attempt(time_s);
}

void Director::attempt_failed(double time_s, const std::string& why) {
  if (attempt_ < point().attempts || setup_.by_hand) {
    ++attempt_;
    begin_attempt(time_s);
    return;
  }
  const bool may_force = point().past_limit == PastLimit::record_flagged && point().is_steady();
  if (may_force) {
    note(time_s, "forced record", why + ", attempt limit reached: recorded, flagged");
    ++tallies_[index_].forced;
    start_record(time_s, true);
    return;
  }
  note(time_s, "given up", why + ", attempt limit reached");
  ++tallies_[index_].given_up;
  next_point_or_repeat(time_s);
}

void Director::start_record(double time_s, bool forced) {
  marks_.recording = true;
  marks_.forced = forced;
  record_left_band_ = forced;
  enter(Phase::record, time_s);
}

void Director::finish_record(double time_s) {
  marks_.recording = false;
  ++tallies_[index_].recorded;
  if (record_left_band_) ++tallies_[index_].flagged;
  next_point_or_repeat(time_s);
}

std::optional<Break> Director::watch_for_break(double time_s, const Readings<double>& seen) {
  const double force = math::sqrt(seen.forward_mps2 * seen.forward_mps2 + seen.right_mps2 * seen.right_mps2 +
                                  seen.down_mps2 * seen.down_mps2);
  const double lift_area = force * setup_.mass_kg / std::max(seen.impact_pressure_pa, 20.0);
  return detector_.update({time_s, seen.pitch_rad, seen.pitch_rate_radps, seen.stick_aft,
                           seen.indicated_airspeed_mps, lift_area, seen.probe_ratio, seen.bank_rad});
}

/// Breaks an attempt off: recover and climb back, then the attempt counts as failed.
void Director::abandon(double time_s) {
  marks_.recording = false;
  after_climb_ = AfterClimb::attempt_failed;
  enter(Phase::recover, time_s);
}

/// The floor and a stall that nobody asked for: each ends the attempt.
void Director::watch_safety(double time_s, const Readings<double>& seen) {
  if (phase_ == Phase::recover || phase_ == Phase::climb || phase_ == Phase::done) return;
  if (seen.indicated_altitude_m < floor_altitude_m_) {
    note(time_s, "knock it off",
         "through the floor of " + rounded(setup_.card.floor_ft) + " ft above ground");
    ++tallies_[index_].knocked_off;
    abandon(time_s);
    return;
  }
  const bool stall_wanted = point().is_stall() && (phase_ == Phase::slow || phase_ == Phase::broken);
  if (stall_wanted) return;
  const auto found = watch_for_break(time_s, seen);
  if (!found) return;
  note(time_s, "unintended stall", found->sign);
  ++tallies_[index_].unintended_stalls;
  abandon(time_s);
}

CrewTask Director::hold_task(const Readings<double>& seen, double speed_mps) const {
  CrewTask task;
  task.speed_mps = speed_mps;
  task.altitude_m = working_altitude_m_;
  task.heading_rad = clearing_heading_rad_;
  // Flaps move only below the limit of where they are going; until they are there the speed stays below it too.
  const double limit = setup_.type.flaps[flap_setting_].limit_speed_mps;
  const bool may_move = seen.indicated_airspeed_mps < limit - 2.0 * kKnot || flap_rad() < seen.flap_rad;
  task.flap_rad = may_move ? flap_rad() : seen.flap_rad;
  if (!flaps_there(seen)) {
    double slowest_limit = limit;
    for (const FlapSetting& f : setup_.type.flaps)
      if (f.deflection_rad <= seen.flap_rad + 0.02)
        slowest_limit = std::min(slowest_limit, f.limit_speed_mps);
    task.speed_mps = std::min(speed_mps, slowest_limit - 6.0 * kKnot);
  }
  return task;
}

CrewTask Director::clearing_task(double time_s, const Readings<double>& seen) {
  if (setup_.by_hand) return clearing_by_hand(time_s, seen);
  CrewTask task = hold_task(seen, safe_speed_mps());
  // Not slower than 1.3 times the stall speed: speed first, then bank (common practice).
  const double least = std::min(1.3 * speeds_[index_].stall_kt * kKnot, safe_speed_mps() - 2.0 * kKnot);
  if (clearing_leg_ == 0 && seen.indicated_airspeed_mps < least && time_s - phase_since_s_ < 30.0) {
    clearing_begun_s_ = time_s;
    return task;
  }
  const double side = clearing_leg_ == 0 ? -1.0 : 1.0;
  const double goal = setup_.heading_rad + (clearing_leg_ == 0 ? -director::kClearingTurn_rad : 0.0);
  task.turning = true;
  task.bank_rad = side * kClearingBank_rad;
  task.heading_rad = goal;
  // Roll out a little early: half the bank angle before the heading (common practice).
  const double to_go = side * director::wrapped_angle(goal - seen.heading_rad);
  if (to_go < 0.5 * kClearingBank_rad && to_go > -1.0 && time_s - clearing_begun_s_ > 3.0) {
    clearing_heading_rad_ = setup_.heading_rad;
    if (++clearing_leg_ == 2) enter(Phase::transit, time_s);
    clearing_begun_s_ = time_s;
  }
  return task;
}

/// Every band met; a slow point is entered from near its speed with the wings level.
bool Director::within_bands(const Readings<double>& seen) const {
  const PointSpeeds& speeds = speeds_[index_];
  if (point().is_steady()) return broken_bands(point(), speeds, working_altitude_m_, seen).empty();
  return std::abs(seen.indicated_airspeed_mps - speeds.entry_kt * kKnot) <
             director::kEntrySpeedBand_kt * kKnot &&
         std::abs(seen.bank_rad) < director::kEntryBank_rad;
}

double Director::settle_time_s() const { return point().is_steady() ? point().settle_s : 3.0; }

CrewTask Director::steady_task(double time_s, const Readings<double>& seen) {
  const PointSpeeds& speeds = speeds_[index_];
  const bool slow_point = !point().is_steady();
  CrewTask task = hold_task(seen, slow_point ? speeds.entry_kt * kKnot : speeds.target_kt * kKnot);
  task.power = slow_point ? PowerRule::level : point().power;
  task.descent_mps = point().descent_fpm * kFootPerMinute;

  if (phase_ == Phase::record) {
    const bool in_band = broken_bands(point(), speeds, working_altitude_m_, seen).empty();
    marks_.in_band = in_band;
    if (!in_band) record_left_band_ = true;
    if (time_s - phase_since_s_ >= point().record_s) finish_record(time_s);
    return task;
  }
  if (phase_ == Phase::transit && flaps_there(seen)) enter(Phase::settle, time_s);

  if (!within_bands(seen) || !flaps_there(seen))
    met_since_s_ = -1.0;
  else if (met_since_s_ < 0.0)
    met_since_s_ = time_s;
  if (met_since_s_ < 0.0) button_at_s_ = -1.0;
  const bool on_condition = met_since_s_ >= 0.0 && time_s - met_since_s_ >= settle_time_s();
  if (on_condition && button_at_s_ < 0.0) button_at_s_ = time_s + setup_.button_delay_s;
  const bool begin =
      setup_.by_hand ? record_wanted(time_s, seen, on_condition) : on_condition && time_s >= button_at_s_;
  if (begin) {
    const bool forced = !on_condition;
    if (slow_point) {
      slow_from_mps_ = seen.indicated_airspeed_mps;
      marks_.recording = true;
      marks_.forced = forced;
      enter(Phase::slow, time_s);
    } else {
      start_record(time_s, forced);
    }
    return task;
  }
  if (!setup_.by_hand && time_s - attempt_since_s_ > point().timeout_s) {
    ++tallies_[index_].timeouts;
    attempt_failed(time_s, "not on condition within the time-out");
  }
  return task;
}

/// A run through a range of speed, in a turn where the card says so. It ends with the tone, where there is one to hear.
CrewTask Director::slow_through_task(CrewTask task, double time_s, const Readings<double>& seen, bool tone) {
  if (point().turn_bank_deg != 0.0) {
    task.turning = true;
    task.bank_rad = -point().turn_bank_deg * math::kDegree;
    task.heading_rad = seen.heading_rad;
  }
  if (tone && tone_since_s_ < 0.0) {
    tone_since_s_ = time_s;
    note(time_s, "tone", "at " + rounded(seen.indicated_airspeed_mps / kKnot) + " kt indicated");
  }
  const bool answered = tone_since_s_ >= 0.0 && time_s - tone_since_s_ >= setup_.reaction_s;
  if (answered || seen.indicated_airspeed_mps <= speeds_[index_].stop_kt * kKnot) finish_record(time_s);
  return task;
}

CrewTask Director::slow_task(double time_s, const Readings<double>& seen, bool tone) {
  const PointSpeeds& speeds = speeds_[index_];
  const double factor = setup_.entry_rate_factor.empty()
                            ? 1.0
                            : setup_.entry_rate_factor[stalls_flown_ % setup_.entry_rate_factor.size()];
  const double rate = point().entry_rate_ktps * kKnot * factor;
  CrewTask task = hold_task(
      seen, std::max(slow_from_mps_ - rate * (time_s - phase_since_s_), 0.4 * speeds.stall_kt * kKnot));
  task.manner = CrewTask::Manner::slow;
  task.speed_rate_mps2 = -rate;
  task.power = point().power;
  task.descent_mps = point().descent_fpm * kFootPerMinute;

  if (!point().is_stall()) return slow_through_task(task, time_s, seen, tone);
  const bool lets_go = setup_.by_hand
                           ? speed_rose_again(time_s, seen)
                           : !setup_.early_release.empty() &&
                                 setup_.early_release[stalls_flown_ % setup_.early_release.size()] &&
                                 seen.indicated_airspeed_mps < 1.05 * speeds.stall_kt * kKnot;
  const auto found = watch_for_break(time_s, seen);
  const bool wing_dropped = std::abs(seen.bank_rad) > kWingDrop_rad;
  if ((found || wing_dropped) && phase_ == Phase::slow) {
    note(time_s, found ? "break" : "wing drop",
         found ? found->sign : "bank beyond 30 deg on the way to the stall");
    enter(Phase::broken, time_s);
  } else if (phase_ == Phase::broken && time_s - phase_since_s_ >= setup_.reaction_s) {
    ++stalls_flown_;
    after_climb_ = AfterClimb::count_stall;
    enter(Phase::recover, time_s);
  } else if (phase_ == Phase::slow && (lets_go || time_s - phase_since_s_ > point().timeout_s)) {
    ++stalls_flown_;
    ++tallies_[index_].no_break;
    note(time_s, "no break", lets_go ? "stick released before the break" : "no break within the time-out");
    abandon(time_s);
  }
  return task;
}

CrewTask Director::recover_task(double time_s, const Readings<double>& seen) {
  CrewTask task = hold_task(seen, 1.15 * speeds_[index_].stall_kt * kKnot);
  task.manner = CrewTask::Manner::recover;
  task.heading_rad = seen.heading_rad;  // wings level, wherever it points
  task.flap_rad = seen.flap_rad;
  constexpr double kTail_s = 2.0;  // the record goes on this long after the break
  if (marks_.recording && time_s - phase_since_s_ >= kTail_s) marks_.recording = false;
  const bool flying = seen.indicated_airspeed_mps > task.speed_mps && seen.pitch_rad > 0.0 &&
                      std::abs(seen.bank_rad) < 15.0 * math::kDegree;
  if (flying && time_s - phase_since_s_ > 3.0) enter(Phase::climb, time_s);
  return task;
}

/// Back to the working height at full power, flaps coming up once the speed is safe; then on with the card.
CrewTask Director::climb_task(double time_s, const Readings<double>& seen) {
  const double stall = speeds_[index_].stall_kt * kKnot;
  if (seen.indicated_airspeed_mps > 1.25 * stall) flap_setting_ = 0;
  CrewTask task = hold_task(seen, 1.5 * stall);
  task.full_power = true;
  // By hand, near enough not to be sent up again at once; the point's own band sees to the rest.
  const double enough_m = working_altitude_m_ - (setup_.by_hand ? 0.5 * kClimbBand_m : 0.0);
  if (seen.indicated_altitude_m < enough_m) return task;
  switch (after_climb_) {
    case AfterClimb::count_stall:
      ++tallies_[index_].recorded;
      next_point_or_repeat(time_s);
      break;
    case AfterClimb::attempt_failed:
      attempt_failed(time_s, events_.back().kind);
      break;
    case AfterClimb::start:
      enter(clearing_wanted() ? Phase::clearing : Phase::transit, time_s);
      attempt_since_s_ = time_s;
      break;
  }
  return task;
}

CrewTask Director::step(double time_s, const Readings<double>& seen, bool tone, const Presses& pressed) {
  if (setup_.by_hand) look_at_presses(time_s, pressed);
  watch_safety(time_s, seen);
  const bool low = seen.indicated_altitude_m < working_altitude_m_ - kClimbBand_m;
  const bool just_begun = time_s == phase_since_s_ && (phase_ == Phase::clearing || phase_ == Phase::transit);
  if (low && just_begun) {
    after_climb_ = AfterClimb::start;
    enter(Phase::climb, time_s);
  }
  switch (phase_) {
    case Phase::clearing:
      flap_setting_ = std::min(flap_setting_, point().flap_setting);
      return clearing_task(time_s, seen);
    case Phase::transit:
    case Phase::settle:
    case Phase::record:
      flap_setting_ = point().flap_setting;
      return steady_task(time_s, seen);
    case Phase::slow:
    case Phase::broken:
      return slow_task(time_s, seen, tone);
    case Phase::recover:
      return recover_task(time_s, seen);
    case Phase::climb:
      return climb_task(time_s, seen);
    case Phase::done:
      break;
  }
  return hold_task(seen, safe_speed_mps());
}

}  // namespace stallwright
