#include "render/view/coach_view.hpp"

#include <cmath>

#include "aircraft/math/elementary.hpp"
#include "aircraft/math/units.hpp"
#include "render/view/set_text.hpp"

namespace stallwright::view {
namespace {

struct Scene {
  const Snapshot& seen;
  const TestCard& card;
  const AircraftType& type;
  const TestPoint& point;
  const PointSpeeds& speeds;
  const KeyNames& keys;
  double working_ft;  ///< indicated
};

double speed_kt(const Snapshot& s) { return s.readings.indicated_airspeed_mps / kKnot; }
double height_ft(const Snapshot& s) { return s.readings.indicated_altitude_m / kFoot; }
double degrees(double rad) { return rad / math::kDegree; }

int compass_deg(double rad) {
  const int whole = static_cast<int>(std::lround(degrees(rad)));
  return (whole % 360 + 360) % 360;
}

const char* power_words(PowerRule power) {
  return power == PowerRule::idle ? ", throttle closed" : power == PowerRule::descent ? ", descending" : "";
}

void name_point(const Scene& s, std::string& text) {
  const FlapSetting& flap = s.type.flaps[s.point.flap_setting];
  char flaps[40] = "flaps up";
  if (s.point.flap_setting > 0)
    std::snprintf(flaps, sizeof flaps, "flaps %.0f°", degrees(flap.deflection_rad));
  char repeat[40] = "";
  if (s.point.repeats > 1)
    std::snprintf(repeat, sizeof repeat, ", record %d of %d", s.seen.marks.repeat, s.point.repeats);
  char again[32] = "";
  if (s.seen.marks.attempt > 1) std::snprintf(again, sizeof again, ", try %d", s.seen.marks.attempt);
  set_text(text, "%d of %zu: %s, %s%s%s", s.seen.marks.point, s.card.points.size(), s.point.name.c_str(),
           flaps, repeat, again);
}

/// What is to be held, in one line.
void say_what(const Scene& s, std::string& text) {
  const Phase phase = s.seen.marks.phase;
  if (phase == Phase::clearing) {
    set_text(text,
             s.seen.turned_out ? "Clearing turns: back to heading %03d"
                               : "Clearing turns: a quarter turn out, to %03d or the other way",
             compass_deg(s.seen.asked.heading_rad));
  } else if (phase == Phase::slow && s.point.is_stall()) {
    set_text(text, "Throttle closed. Let it slow by %.0f kt a second, wings level, to the break",
             s.point.entry_rate_ktps);
    if (s.point.power != PowerRule::idle)
      set_text(text, "Keep the power. Let it slow by %.0f kt a second, wings level, to the break",
               s.point.entry_rate_ktps);
  } else if (phase == Phase::slow) {
    set_text(text, "Let it slow by %.1f kt a second%s%s until the tone", s.point.entry_rate_ktps,
             power_words(s.point.power), s.point.turn_bank_deg > 0.0 ? ", turning left" : "");
  } else if (phase == Phase::broken || phase == Phase::recover) {
    set_text(text, "RECOVER: stick forward, full power, wings level");
  } else if (phase == Phase::climb) {
    set_text(text, "Full power, flaps up: climb to %.0f ft at about %.0f kt", s.working_ft,
             s.seen.asked.speed_mps / kKnot);
  } else if (phase == Phase::done) {
    set_text(text, "The card is flown");
  } else if (!s.point.is_steady()) {
    set_text(text, "Hold %.0f kt with the wings level, then record and begin to slow", s.speeds.entry_kt);
  } else if (s.point.power == PowerRule::descent) {
    set_text(text, "Hold %.0f kt, descending at %.0f ft/min", s.speeds.target_kt, s.point.descent_fpm);
  } else if (s.point.power == PowerRule::idle) {
    set_text(text, "Throttle closed: hold %.0f kt in the glide", s.speeds.target_kt);
  } else {
    set_text(text, "Hold %.0f kt at %.0f ft, wings level", s.speeds.target_kt, s.working_ft);
  }
}

void list_bands(const Scene& s, std::string& text) {
  text.clear();
  for (const std::string& word : s.seen.out_of_band) {
    if (!text.empty()) text += ", ";
    text += word;
  }
}

/// On the way to a stall: how the loss of speed keeps to what is asked.
void say_slowing(const Scene& s, std::string& text) {
  const double off_kt = speed_kt(s.seen) - s.seen.asked.speed_mps / kKnot;
  const char* how = off_kt > 2.5 ? "slow down more" : off_kt < -2.5 ? "not so fast" : "good";
  set_text(text, "%.0f kt now, %.0f by the clock: %s", speed_kt(s.seen), s.seen.asked.speed_mps / kKnot, how);
}

void say_how(const Scene& s, CoachView& view) {
  switch (s.seen.marks.phase) {
    case Phase::clearing:
      set_text(view.now, "heading %03d, %.0f kt", compass_deg(s.seen.readings.heading_rad), speed_kt(s.seen));
      return;
    case Phase::record:
      list_bands(s, view.now);
      if (view.now.empty()) view.now = "hold it";
      return;
    case Phase::slow:
      return say_slowing(s, view.now);
    case Phase::broken:
    case Phase::recover:
      set_text(view.now, "%s", s.seen.last_event.kind.c_str());
      return;
    case Phase::climb:
      set_text(view.now, "%.0f ft to climb", std::fmax(s.working_ft - height_ft(s.seen), 0.0));
      return;
    case Phase::done:
      view.now = "land, and be debriefed";
      return;
    default:
      break;
  }
  list_bands(s, view.now);
  if (!view.now.empty()) return;
  if (s.seen.settled_share >= 1.0)
    set_text(view.now, "on condition: record now (%s)", s.keys.record.c_str());
  else
    view.now = "settling";
}

void add_bar(CoachView& view, const char* name, double off, double low, double high, const char* unit) {
  view.bars.push_back({name, off, low, high, unit, off >= -low && off <= high});
}

/// The bands of the point as bars; on the way to a stall the speed against the clock.
void add_bars(const Scene& s, CoachView& view) {
  view.bars.clear();
  const Bands& b = s.point.bands;
  const Phase phase = s.seen.marks.phase;
  const double bank = degrees(s.seen.readings.bank_rad);
  if (phase == Phase::slow) {
    add_bar(view, "speed", speed_kt(s.seen) - s.seen.asked.speed_mps / kKnot, 3.0, 3.0, "kt");
    if (s.point.turn_bank_deg == 0.0) add_bar(view, "bank", bank, b.bank_deg, b.bank_deg, "°");
  } else if (phase == Phase::transit || phase == Phase::settle || phase == Phase::record) {
    const bool steady = s.point.is_steady();
    const double target = steady ? s.speeds.target_kt : s.speeds.entry_kt;
    add_bar(view, "speed", speed_kt(s.seen) - target, target - s.speeds.band_low_kt,
            s.speeds.band_high_kt - target, "kt");
    const bool level = steady ? s.point.power == PowerRule::level : false;
    if (level) add_bar(view, "height", height_ft(s.seen) - s.working_ft, b.altitude_ft, b.altitude_ft, "ft");
    if (steady && s.point.power != PowerRule::idle) {
      const double wanted = s.point.power == PowerRule::descent ? -s.point.descent_fpm : 0.0;
      add_bar(view, "climb", s.seen.readings.vertical_speed_mps / kFootPerMinute - wanted,
              b.vertical_speed_fpm, b.vertical_speed_fpm, "ft/min");
    }
    add_bar(view, "bank", bank, b.bank_deg, b.bank_deg, "°");
    if (steady) add_bar(view, "ball", s.seen.needles.slip_balls, b.slip_g / 0.24, b.slip_g / 0.24, "");
  }
}

/// What hands do about it, for a first flight. One thing at a time: the flaps, then the speed, then the height.
void say_guide(const Scene& s, std::string& text) {
  const KeyNames& k = s.keys;
  const Phase phase = s.seen.marks.phase;
  if (phase == Phase::clearing) {
    set_text(text,
             "Left or right arrow: bank about 25°, then centre. %s and %s look round. Seen enough? %s calls "
             "the area clear.",
             k.look_left.c_str(), k.look_right.c_str(), k.area_clear.c_str());
  } else if (phase == Phase::broken || phase == Phase::recover) {
    set_text(text,
             "Hold %s until the speed comes back, %s to full power, arrows for the wings; then gently out of "
             "the dive.",
             k.nose_down.c_str(), k.more_power.c_str());
  } else if (phase == Phase::climb) {
    set_text(text, "%s to full power, nose a little above the horizon (%s), trim with %s.",
             k.more_power.c_str(), k.nose_up.c_str(), k.trim_up.c_str());
  } else if (phase == Phase::slow) {
    set_text(text,
             "%s: throttle closed. Keep raising the nose slowly with %s; horn, buffet, then the nose drops "
             "by itself.",
             k.less_power.c_str(), k.nose_up.c_str());
    if (!s.point.is_stall() || s.point.power != PowerRule::idle)
      set_text(text, "Keep raising the nose slowly with %s; speed is lost by the nose, not by the throttle.",
               k.nose_up.c_str());
  } else if (phase == Phase::record) {
    set_text(text, "Small corrections only. A record is %.0f s; leaving a band flags it.", s.point.record_s);
  } else if (phase == Phase::done) {
    text.clear();
  } else {
    const double off = speed_kt(s.seen) - (s.point.is_steady() ? s.speeds.target_kt : s.speeds.entry_kt);
    const double high = height_ft(s.seen) - s.working_ft;
    char usual[80] = "";
    if (std::isfinite(s.seen.usual_pitch_deg) && std::isfinite(s.seen.usual_throttle))
      std::snprintf(usual, sizeof usual, " About %.0f° of pitch and %.0f %% of throttle hold it.",
                    s.seen.usual_pitch_deg, 100.0 * s.seen.usual_throttle);
    if (!s.seen.out_of_band.empty() && s.seen.out_of_band.front().rfind("flaps", 0) == 0)
      set_text(text, "%s lowers the flaps a step, %s raises them.", k.flaps_down.c_str(), k.flaps_up.c_str());
    else if (off < -1.5)
      set_text(text, "Slow: lower the nose a little with %s.%s", k.nose_down.c_str(), usual);
    else if (off > 1.5)
      set_text(text, "Fast: raise the nose a little with %s.%s", k.nose_up.c_str(), usual);
    else if (s.point.power == PowerRule::level && std::abs(high) > 60.0)
      set_text(text, high < 0.0 ? "Low: a little more power with %s." : "High: a little less power with %s.",
               high < 0.0 ? k.more_power.c_str() : k.less_power.c_str());
    else
      set_text(text, "Speed with the nose, height with power. %s and %s trim the stick.%s", k.trim_up.c_str(),
               k.trim_down.c_str(), usual);
  }
}

}  // namespace

void coach_view(const Snapshot& snapshot, const TestCard& card, const AircraftType& type,
                const std::vector<PointSpeeds>& speeds, const KeyNames& keys, bool guide, CoachView& view) {
  view.recording = snapshot.marks.recording;
  view.forced = snapshot.marks.forced;
  view.settled_share = snapshot.settled_share;
  view.record_share = snapshot.record_share;
  view.refusal = snapshot.refusal;
  const Phase phase = snapshot.marks.phase;
  view.urgent = phase == Phase::broken || phase == Phase::recover;
  // After the last point the marks name none.
  const std::size_t index =
      snapshot.marks.point > 0 ? static_cast<std::size_t>(snapshot.marks.point - 1) : card.points.size() - 1;
  const Scene scene{snapshot,
                    card,
                    type,
                    card.points[index],
                    speeds[index],
                    keys,
                    card.terrain_ft + card.working_height_ft};
  if (phase == Phase::done)
    view.point.assign(card.name);
  else
    name_point(scene, view.point);
  say_what(scene, view.phase);
  say_how(scene, view);
  add_bars(scene, view);
  if (guide)
    say_guide(scene, view.guide);
  else
    view.guide.clear();
}

}  // namespace stallwright::view
