#include "render/view/coach_view.hpp"

#include "render/flight/needles.hpp"
#include "render/view/coach_scene.hpp"
#include "render/view/set_text.hpp"

namespace stallwright::view {
namespace {

using Scene = CoachScene;

/// As it is spoken: north is 360.
int compass_deg(double rad) {
  const int whole = static_cast<int>(std::lround(rad / math::kDegree));
  const int turned = (whole % 360 + 360) % 360;
  return turned == 0 ? 360 : turned;
}

const char* power_words(PowerRule power) {
  return power == PowerRule::idle ? ", throttle closed" : power == PowerRule::descent ? ", descending" : "";
}

void name_point(const Scene& s, std::string& text) {
  const FlapSetting& flap = s.type.flaps[s.point.flap_setting];
  char flaps[40] = "flaps up";
  if (s.point.flap_setting > 0)
    std::snprintf(flaps, sizeof flaps, "flaps %.0f°", flap.deflection_rad / math::kDegree);
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
    char turn[40] = "";
    if (s.point.turn_bank_deg > 0.0)
      std::snprintf(turn, sizeof turn, ", %.0f° of bank to the left", s.point.turn_bank_deg);
    set_text(text, "Let it slow by %.1f kt a second%s%s, until the tone", s.point.entry_rate_ktps,
             power_words(s.point.power), turn);
  } else if (phase == Phase::broken || phase == Phase::recover) {
    set_text(text, "RECOVER: stick forward, full power, wings level");
  } else if (phase == Phase::climb) {
    set_text(text, "Full power, flaps up: climb to %.0f ft at about %.0f kt", s.working_ft,
             s.seen.asked.speed_mps / kKnot);
  } else if (phase == Phase::done) {
    set_text(text, "The card is flown");
  } else if (!s.point.is_steady()) {
    set_text(text, "Hold %.0f kt, wings level: record, then slow down", s.speeds.entry_kt);
  } else if (s.point.power == PowerRule::descent) {
    set_text(text, "Hold %.0f kt, descending at %.0f ft/min", s.speeds.target_kt, s.point.descent_fpm);
  } else if (s.point.power == PowerRule::idle) {
    set_text(text, "Throttle closed: hold %.0f kt in the glide", s.speeds.target_kt);
  } else {
    set_text(text, "Hold %.0f kt at %.0f ft, wings level", s.speeds.target_kt, s.working_ft);
  }
}

constexpr std::size_t kMostListed = 3;  ///< hands put right one thing at a time, and the bars show them all

void list_bands(const Scene& s, std::string& text) {
  text.clear();
  for (std::size_t k = 0; k < s.seen.out_of_band.size(); ++k) {
    if (k > 0) text += ", ";
    if (k == kMostListed) {
      text += "…";
      return;
    }
    text += s.seen.out_of_band[k];
  }
}

/// As much of a refusal, which lists what is off, too.
void say_refusal(const Scene& s, std::string& text) {
  text = s.seen.refusal;
  std::size_t comma = 0;
  for (std::size_t k = 0; k < kMostListed; ++k) {
    comma = text.find(", ", comma);
    if (comma == std::string::npos) return;
    comma += 2;
  }
  text.resize(comma);
  text += "…";
}

/// On the way to a stall: how the loss of speed keeps to what is asked.
void say_slowing(const Scene& s, std::string& text) {
  const double off_kt = s.speed_kt() - s.seen.asked.speed_mps / kKnot;
  const char* how = off_kt > 2.5 ? "slow down more" : off_kt < -2.5 ? "not so fast" : "good";
  set_text(text, "%.0f kt now, %.0f by the clock: %s", s.speed_kt(), s.seen.asked.speed_mps / kKnot, how);
}

void say_how(const Scene& s, CoachView& view) {
  switch (s.seen.marks.phase) {
    case Phase::clearing:
      set_text(view.now, "heading %03d, %.0f kt", compass_deg(s.seen.readings.heading_rad), s.speed_kt());
      return;
    case Phase::record:
      list_bands(s, view.now);
      if (view.now.empty())
        set_text(view.now, "hold it: %.0f s more",
                 std::ceil(s.point.record_s * (1.0 - s.seen.record_share) - 1e-6));
      return;
    case Phase::slow:
      return say_slowing(s, view.now);
    case Phase::broken:
    case Phase::recover:
      set_text(view.now, s.seen.last_event.text.empty() ? "%s" : "%s: %s", s.seen.last_event.kind.c_str(),
               s.seen.last_event.text.c_str());
      return;
    case Phase::climb:
      set_text(view.now, "%.0f ft to climb", std::fmax(s.working_ft - s.height_ft(), 0.0));
      return;
    case Phase::done:
      view.now = "land, and be debriefed";
      return;
    default:
      break;
  }
  list_bands(s, view.now);
  if (!view.now.empty()) return;
  if (s.seen.settled_share >= 1.0 && view.watched)
    view.now = "on condition";
  else if (s.seen.settled_share >= 1.0)
    set_text(view.now, "on condition: record now (%s)", s.keys.record.c_str());
  else
    view.now = "settling";
}

void add_bar(CoachView& view, const char* name, double off, double low, double high, const char* unit) {
  view.bars.push_back({name, off, low, high, unit, off >= -low && off <= high});
}

/// Right positive, in ball's widths, as the band is given: by the side force of this moment, not by the ball's own lag.
void add_ball(const Scene& s, CoachView& view) {
  const double allowed = s.point.bands.slip_g / kBall_g;
  add_bar(view, "ball", -s.seen.readings.right_mps2 / kStandardGravity_mps2 / kBall_g, allowed, allowed, "");
}

/// The bands of the point as bars; on the way to a stall the speed against the clock.
void add_bars(const Scene& s, CoachView& view) {
  view.bars.clear();
  const Bands& b = s.point.bands;
  const Phase phase = s.seen.marks.phase;
  if (phase == Phase::slow) {
    add_bar(view, "speed", s.speed_kt() - s.seen.asked.speed_mps / kKnot, 3.0, 3.0, "kt");
    add_bar(view, "bank", s.bank_deg() + s.point.turn_bank_deg, b.bank_deg, b.bank_deg, "°");
  } else if (phase == Phase::transit || phase == Phase::settle || phase == Phase::record) {
    const bool steady = s.point.is_steady();
    add_bar(view, "speed", s.speed_kt() - s.set_up_kt(), s.slow_band_kt(), s.fast_band_kt(), "kt");
    if (steady && s.point.power == PowerRule::level)
      add_bar(view, "height", s.height_ft() - s.working_ft, b.altitude_ft, b.altitude_ft, "ft");
    if (steady && s.point.power != PowerRule::idle)
      add_bar(view, "climb", s.climb_fpm() - s.wanted_climb_fpm(), b.vertical_speed_fpm, b.vertical_speed_fpm,
              "ft/min");
    add_bar(view, "bank", s.bank_deg(), s.bank_band_deg(), s.bank_band_deg(), "°");
    if (steady) add_ball(s, view);
  }
}

/// What would be answered if it were pressed now; a flight that is watched asks for nothing.
void say_what_may_be_pressed(Phase phase, CoachView& view) {
  view.may_record = !view.watched && (phase == Phase::transit || phase == Phase::settle);
  view.may_clear = !view.watched && phase == Phase::clearing;
  view.may_knock_off =
      !view.watched && phase != Phase::recover && phase != Phase::climb && phase != Phase::done;
}

}  // namespace

void coach_view(const Snapshot& snapshot, const TestCard& card, const AircraftType& type,
                const std::vector<PointSpeeds>& speeds, const KeyNames& keys, Coached coached,
                CoachView& view) {
  view.watched = !coached.by_hand;
  view.recording = snapshot.marks.recording;
  view.forced = snapshot.marks.forced;
  view.settled_share = snapshot.settled_share;
  view.record_share = snapshot.record_share;
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
  say_refusal(scene, view.refusal);
  add_bars(scene, view);
  say_what_may_be_pressed(phase, view);
  if (coached.guide && coached.by_hand)
    say_guide(scene, view.guide);
  else
    view.guide.clear();
}

}  // namespace stallwright::view
