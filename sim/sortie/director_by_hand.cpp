// The director's side that serves a person: presses, clearing turns either way round, and what a coach may show.
#include <algorithm>
#include <cmath>

#include "sim/sortie/director.hpp"
#include "sim/sortie/director_rules.hpp"

namespace stallwright {
namespace {

constexpr double kTurnedOut_rad = 75.0 * math::kDegree;  ///< near enough to 90 deg
constexpr double kTurnedBack_rad = 15.0 * math::kDegree;
constexpr double kRoseAgain_mps = 3.0 * kKnot;
constexpr double kRefusalStands_s = 4.0;  ///< then what is off now matters more than what was

std::string listed(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : ", ") + part;
  return text;
}

}  // namespace

void Director::remark(double time_s, const std::string& kind, const std::string& text) {
  const bool said =
      std::any_of(events_.begin(), events_.end(), [&](const Event& e) { return e.kind == kind; });
  if (!said) note(time_s, kind, text);
}

void Director::refuse(double time_s, const std::string& why) {
  refusal_ = why;
  refused_at_s_ = time_s;
}

void Director::look_at_presses(double time_s, const Presses& pressed) {
  pressed_ = pressed;
  if (pressed.knock_it_off && phase_ != Phase::recover && phase_ != Phase::climb && phase_ != Phase::done) {
    note(time_s, "knock it off", "called by the pilot");
    ++tallies_[index_].knocked_off;
    refusal_.clear();
    abandon(time_s);
    return;
  }
  const bool record = pressed.record || pressed.record_anyway;
  if (record && phase_ == Phase::clearing)
    refuse(time_s, "look around first: clearing turns, or call the area clear");
  else if (record && (phase_ == Phase::recover || phase_ == Phase::climb || phase_ == Phase::broken))
    refuse(time_s, "recover and climb back first");
  else if (pressed.area_clear && phase_ != Phase::clearing)
    refuse(time_s, "no clearing turns are asked for now");
}

/// Either way round: a quarter turn out, and back again. Calling the area clear ends them early, and is noted.
CrewTask Director::clearing_by_hand(double time_s, const Readings<double>& seen) {
  CrewTask task = hold_task(seen, safe_speed_mps());
  if (time_s == phase_since_s_) cleared_from_rad_ = seen.heading_rad;
  const double turned = std::abs(director::wrapped_angle(seen.heading_rad - cleared_from_rad_));
  if (clearing_leg_ == 0 && turned > kTurnedOut_rad) clearing_leg_ = 1;
  const bool back = clearing_leg_ == 1 && turned < kTurnedBack_rad;
  task.heading_rad = clearing_leg_ == 0 ? cleared_from_rad_ - director::kClearingTurn_rad : cleared_from_rad_;
  if (back || pressed_.area_clear) {
    if (!back) note(time_s, "area called clear", "the clearing turns were cut short");
    refusal_.clear();
    clearing_heading_rad_ = seen.heading_rad;
    enter(Phase::transit, time_s);
  }
  return task;
}

std::vector<std::string> Director::off_condition(const Readings<double>& seen) const {
  std::vector<std::string> words;
  if (!flaps_there(seen)) words.emplace_back("flaps not as the card asks");
  if (point().is_steady()) {
    for (std::string& band : broken_bands(point(), speeds_[index_], working_altitude_m_, seen))
      words.push_back(std::move(band));
    return words;
  }
  const double off_kt = seen.indicated_airspeed_mps / kKnot - speeds_[index_].entry_kt;
  if (std::abs(off_kt) >= director::kEntrySpeedBand_kt)
    words.push_back(std::to_string(std::lround(std::abs(off_kt))) + (off_kt < 0.0 ? " kt slow" : " kt fast"));
  if (std::abs(seen.bank_rad) >= director::kEntryBank_rad)
    words.push_back(std::to_string(std::lround(std::abs(seen.bank_rad) / math::kDegree)) + " deg bank");
  return words;
}

std::string Director::why_not(double time_s, const Readings<double>& seen) const {
  const std::vector<std::string> off = off_condition(seen);
  if (!off.empty()) return "not on condition: " + listed(off);
  const double left_s = settle_time_s() - (time_s - met_since_s_);
  return "settling: " + std::to_string(std::max(1L, std::lround(std::ceil(left_s)))) + " s more";
}

/// Whether the record begins now; says why not where it was asked for.
bool Director::record_wanted(double time_s, const Readings<double>& seen, bool on_condition) {
  if (!pressed_.record && !pressed_.record_anyway) return false;
  if (!on_condition && !pressed_.record_anyway) {
    refuse(time_s, why_not(time_s, seen));
    return false;
  }
  refusal_.clear();
  if (!on_condition) {
    note(time_s, "forced record", why_not(time_s, seen) + "; recorded at the pilot's wish, flagged");
    ++tallies_[index_].forced;
  }
  return true;
}

/// On the way to a stall, by hand: speed gained again means that the stick was let go.
bool Director::speed_rose_again(double time_s, const Readings<double>& seen) const {
  return time_s - phase_since_s_ > 3.0 && seen.indicated_airspeed_mps > slow_from_mps_ + kRoseAgain_mps;
}

Standing Director::standing(double time_s, const Readings<double>& seen) const {
  Standing now;
  if (time_s - refused_at_s_ < kRefusalStands_s) now.refusal = refusal_;
  now.turned_out = phase_ == Phase::clearing && clearing_leg_ == 1;
  const bool wanted = phase_ == Phase::transit || phase_ == Phase::settle || phase_ == Phase::record;
  if (!wanted) return now;
  now.out_of_band = off_condition(seen);
  if (phase_ == Phase::record)
    now.record_share = std::clamp((time_s - phase_since_s_) / point().record_s, 0.0, 1.0);
  else if (met_since_s_ >= 0.0)
    now.settled_share = std::clamp((time_s - met_since_s_) / std::max(settle_time_s(), 0.02), 0.0, 1.0);
  return now;
}

}  // namespace stallwright
