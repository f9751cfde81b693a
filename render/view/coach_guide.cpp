#include "render/view/coach_scene.hpp"
#include "render/view/set_text.hpp"

namespace stallwright::view {
namespace {

constexpr double kClosed = 0.03, kFull = 0.95;  // of the throttle
constexpr double kSpeedOff_kt = 1.5, kHeightOff_ft = 60.0, kClimbOff_fpm = 200.0;
constexpr double kNoseEnough_deg = 3.0;  // from where it will end
constexpr double kFlying = 1.15;         // times the stall speed, as the director has it for a recovery

const std::string& towards_level(const CoachScene& s, double bank_deg) {
  return bank_deg > 0.0 ? s.keys.bank_left : s.keys.bank_right;
}

void guide_clearing(const CoachScene& s, std::string& text) {
  const KeyNames& k = s.keys;
  if (s.seen.turned_out)
    set_text(text,
             "Now back the other way with %s or %s. Hold %s or %s to look round; %s calls the area clear.",
             k.bank_left.c_str(), k.bank_right.c_str(), k.look_left.c_str(), k.look_right.c_str(),
             k.area_clear.c_str());
  else
    set_text(text,
             "%s or %s: bank about 25°, then let go. Hold %s or %s to look round. Seen enough? %s calls the "
             "area clear.",
             k.bank_left.c_str(), k.bank_right.c_str(), k.look_left.c_str(), k.look_right.c_str(),
             k.area_clear.c_str());
}

void guide_recovery(const CoachScene& s, std::string& text) {
  const KeyNames& k = s.keys;
  if (s.speed_kt() < kFlying * s.speeds.stall_kt)
    set_text(text, "Hold %s: nose below the horizon. %s: full power. Wings level with %s and %s.",
             k.nose_down.c_str(), k.full_power.c_str(), k.bank_left.c_str(), k.bank_right.c_str());
  else if (s.seen.readings.throttle < kFull)
    set_text(text, "Flying again. Full power: %s.", k.full_power.c_str());
  else if (std::abs(s.bank_deg()) > 10.0)
    set_text(text, "Flying again. Level the wings with %s.", towards_level(s, s.bank_deg()).c_str());
  else
    set_text(text, "Flying again. Gently out of the dive with %s, until the nose is above the horizon.",
             k.nose_up.c_str());
}

void guide_climb(const CoachScene& s, std::string& text) {
  const KeyNames& k = s.keys;
  const double off = s.speed_kt() - s.seen.asked.speed_mps / kKnot;
  if (s.seen.readings.throttle < kFull)
    set_text(text, "Full power: %s.", k.full_power.c_str());
  else if (off < -4.0)
    set_text(text, "Slow: lower the nose a little with %s.", k.nose_down.c_str());
  else if (s.seen.readings.flap_rad > 0.5 * math::kDegree)
    set_text(text, "Flaps up, a step at a time: %s.", k.flaps_up.c_str());
  else if (off > 6.0)
    set_text(text, "Fast: raise the nose a little with %s.", k.nose_up.c_str());
  else
    set_text(text, "Good: let it climb. Tired of holding the stick? Hold it where it is needed and press %s.",
             k.trim.c_str());
}

void guide_slow(const CoachScene& s, std::string& text) {
  const KeyNames& k = s.keys;
  const double off = s.speed_kt() - s.seen.asked.speed_mps / kKnot;
  const double bank_off = s.bank_deg() + s.point.turn_bank_deg;  // the card's turns are to the left
  if (s.point.power == PowerRule::idle && s.seen.readings.throttle > kClosed)
    set_text(text, "Close the throttle: %s.", k.no_power.c_str());
  else if (s.point.turn_bank_deg > 0.0 && std::abs(bank_off) > s.point.bands.bank_deg)
    set_text(text, "Bank %.0f° to the left: %s.", s.point.turn_bank_deg, towards_level(s, bank_off).c_str());
  else if (std::abs(bank_off) > s.point.bands.bank_deg)
    set_text(text, "Level the wings with %s.", towards_level(s, bank_off).c_str());
  else if (off < -2.5)
    set_text(text, "Slowing too fast: leave the nose where it is for a moment.");
  else if (s.point.is_stall())
    set_text(text, "%s nose with %s, a touch at a time. Horn, buffet, then the nose drops by itself.",
             off > 2.5 ? "More: raise the" : "Keep raising the", k.nose_up.c_str());
  else
    set_text(text, "%s nose with %s, a touch at a time, until the tone sounds.",
             off > 2.5 ? "More: raise the" : "Keep raising the", k.nose_up.c_str());
}

/// The flaps that the point asks for, and when they may move. False where they are there.
bool guide_flaps(const CoachScene& s, std::string& text) {
  const FlapSetting& wanted = s.type.flaps[s.point.flap_setting];
  const double off = s.seen.readings.flap_rad - wanted.deflection_rad;
  if (std::abs(off) < 0.5 * math::kDegree) return false;
  const double limit_kt = wanted.limit_speed_mps / kKnot, wanted_deg = wanted.deflection_rad / math::kDegree;
  if (s.point.flap_setting == 0)
    set_text(text, "%s raises the flaps a step: the card asks for flaps up.", s.keys.flaps_up.c_str());
  else if (off > 0.0)
    set_text(text, "%s raises the flaps a step: %.0f° is asked for.", s.keys.flaps_up.c_str(), wanted_deg);
  else if (s.speed_kt() > limit_kt - 2.0)
    set_text(text, "Too fast for the flaps: below %.0f kt first, nose up with %s.", limit_kt,
             s.keys.nose_up.c_str());
  else
    set_text(text, "%s lowers the flaps a step: %.0f° is asked for.", s.keys.flaps_down.c_str(), wanted_deg);
  return true;
}

void guide_begin(const CoachScene& s, std::string& text) {
  const KeyNames& k = s.keys;
  if (s.point.is_steady())
    set_text(text, "Press %s: the record takes %.0f s.", k.record.c_str(), s.point.record_s);
  else if (s.point.power == PowerRule::idle)
    set_text(text, "Press %s, then close the throttle with %s and raise the nose slowly with %s.",
             k.record.c_str(), k.no_power.c_str(), k.nose_up.c_str());
  else
    set_text(text, "Press %s, leave the power, and raise the nose slowly with %s.", k.record.c_str(),
             k.nose_up.c_str());
}

/// " About 2° of pitch and 55 % of throttle hold it.", or nothing.
void add_usual(const CoachScene& s, std::string& text) {
  if (!std::isfinite(s.seen.usual_pitch_deg) || !std::isfinite(s.seen.usual_throttle)) return;
  char usual[80];
  std::snprintf(usual, sizeof usual, " About %.0f° of pitch and %.0f %% of throttle hold it.",
                std::round(s.seen.usual_pitch_deg) + 0.0, 100.0 * s.seen.usual_throttle);
  text += usual;
}

/// Power holds the height, or the rate of descent. False where that is right, or idle is asked for.
bool guide_power(const CoachScene& s, std::string& text) {
  if (s.point.power == PowerRule::idle && s.point.is_steady()) return false;
  const double climb_off = s.climb_fpm() - s.wanted_climb_fpm();
  const double height_off = s.point.power == PowerRule::descent ? 0.0 : s.height_ft() - s.working_ft;
  const bool steady_climb = std::abs(climb_off) <= kClimbOff_fpm;
  if (steady_climb && std::abs(height_off) <= kHeightOff_ft) return false;
  // On its way back to the height it needs no more.
  if (height_off * climb_off < 0.0 && std::abs(height_off) > kHeightOff_ft) return false;
  const bool more = steady_climb ? height_off < 0.0 : climb_off < 0.0;
  const char* what = steady_climb ? (more ? "Low" : "High") : more ? "Sinking" : "Climbing";
  if (s.point.power == PowerRule::descent && s.point.is_steady())
    what = more ? "Sinking too fast" : "Sinking too slowly";
  set_text(text, "%s: a little %s power with %s.", what, more ? "more" : "less",
           (more ? s.keys.more_power : s.keys.less_power).c_str());
  return true;
}

/// Speed follows the nose by many seconds: who goes on lowering it until the needle is there has lowered it too far.
void guide_speed(const CoachScene& s, double off_kt, std::string& text) {
  const bool slow = off_kt < 0.0;
  const double nose_deg = s.seen.readings.pitch_rad / math::kDegree - s.seen.usual_pitch_deg;  // may be NaN
  if (slow ? nose_deg < -kNoseEnough_deg : nose_deg > kNoseEnough_deg)
    set_text(text, "%s, but the nose is %s enough: hold it there and let the speed come.",
             slow ? "Slow" : "Fast", slow ? "low" : "high");
  else
    set_text(text, slow ? "Slow: lower the nose a little with %s." : "Fast: raise the nose a little with %s.",
             (slow ? s.keys.nose_down : s.keys.nose_up).c_str());
}

void guide_set_up(const CoachScene& s, std::string& text) {
  const KeyNames& k = s.keys;
  if (guide_flaps(s, text)) return;
  if (std::abs(s.bank_deg()) > s.bank_band_deg())
    return set_text(text, "Level the wings with %s.", towards_level(s, s.bank_deg()).c_str());
  if (s.seen.settled_share >= 1.0) return guide_begin(s, text);
  if (s.point.power == PowerRule::idle && s.point.is_steady() && s.seen.readings.throttle > kClosed)
    return set_text(text, "Close the throttle: %s.", k.no_power.c_str());
  const double off = s.speed_kt() - s.set_up_kt();
  if (std::abs(off) > kSpeedOff_kt)
    guide_speed(s, off, text);
  else if (!guide_power(s, text))
    set_text(text, "Speed with the nose, height with power. Stick held? %s trims it there.", k.trim.c_str());
  add_usual(s, text);
}

}  // namespace

void say_guide(const CoachScene& s, std::string& text) {
  switch (s.seen.marks.phase) {
    case Phase::clearing:
      return guide_clearing(s, text);
    case Phase::broken:
    case Phase::recover:
      return guide_recovery(s, text);
    case Phase::climb:
      return guide_climb(s, text);
    case Phase::slow:
      return guide_slow(s, text);
    case Phase::record:
      return set_text(text, "Small corrections only; leaving a band flags the record.");
    case Phase::done:
      return text.clear();
    case Phase::transit:
    case Phase::settle:
      return guide_set_up(s, text);
  }
}

}  // namespace stallwright::view
