#pragma once
#include <SDL_events.h>

#include <cmath>
#include <map>

#include "render/app/cockpit.hpp"
#include "sim/motion/flight.hpp"

/// Somebody who flies the cockpit by its keyboard alone: sees what the panel and the coach show, presses keys, lets them go.
namespace stallwright::app_test {

class KeyboardPilot {
 public:
  /// Looks at the flight and moves fingers; a frame is `dt_s`.
  void fly(const Seen& seen, const SortieConfig& config, double dt_s) {
    const Snapshot& s = seen.now;
    time_s_ += dt_s;
    if (s.marks.point == 0) return release_all();
    const TestPoint& point = config.card.points[static_cast<std::size_t>(s.marks.point - 1)];
    const Phase phase = s.marks.phase;
    const bool recovering = phase == Phase::broken || phase == Phase::recover;
    if (seen.paused) return release_all();  // a page is open: it has the keys
    pitch(s, phase, recovering);
    roll(s);
    power(s, phase, point, recovering);
    if (phase == Phase::clearing && s.time_s > 4.0) tap(SDLK_c);
    const bool ready = phase == Phase::settle && s.settled_share >= 1.0;
    if (ready) tap(SDLK_r);
  }
  void release_all() {
    for (auto& [key, down] : down_) set(key, false);
  }

 private:
  static void push(SDL_Keycode key, bool down) {
    SDL_Event e{};
    e.type = down ? SDL_KEYDOWN : SDL_KEYUP;
    e.key.state = down ? SDL_PRESSED : SDL_RELEASED;
    e.key.keysym.sym = key;
    e.key.keysym.scancode = SDL_GetScancodeFromKey(key);
    SDL_PushEvent(&e);
  }
  void set(SDL_Keycode key, bool down) {
    bool& now = down_[key];
    if (now == down) return;
    now = down;
    push(key, down);
  }
  /// A short press, at most every 0.6 s.
  void tap(SDL_Keycode key) {
    double& last = tapped_[key];
    if (time_s_ - last < 0.6) return;
    last = time_s_;
    push(key, true);
    push(key, false);
  }
  void pair(SDL_Keycode more, SDL_Keycode less, double wanted, double dead) {
    set(more, wanted > dead);
    set(less, wanted < -dead);
  }

  void pitch(const Snapshot& s, Phase phase, bool recovering) {
    const double pitch = s.readings.pitch_rad, rate = s.readings.pitch_rate_radps;
    const double fast = s.readings.indicated_airspeed_mps - s.asked.speed_mps;
    // A remembered attitude, and speed corrected by a few degrees of it.
    double wanted = std::isfinite(s.usual_pitch_deg) ? s.usual_pitch_deg * math::kDegree : 0.05;
    wanted += std::clamp(0.022 * fast, -0.08, 0.08);
    integral_ = std::clamp(integral_ + 0.0001 * fast, -0.1, 0.1);
    if (phase == Phase::settle || phase == Phase::record || phase == Phase::transit) wanted += integral_;
    if (recovering)
      wanted = s.readings.indicated_airspeed_mps > s.asked.speed_mps ? 0.06 : -0.10;
    else if (phase == Phase::climb)
      wanted = 0.10;
    if (phase == Phase::slow) {
      // Nose up a little more all the time, never down.
      if (!slowing_) slow_from_ = pitch;
      slow_from_ += fast > 0.0 ? 0.0009 : 0.0001;
      wanted = std::min(slow_from_, 0.45);
    }
    slowing_ = phase == Phase::slow;
    const double error = wanted - pitch - 0.35 * rate;
    set(SDLK_DOWN, error > 0.008);
    set(SDLK_UP, error < -0.008 && phase != Phase::slow);
    // Trim to where the stick has to be held.
    if (phase != Phase::slow && !recovering && std::abs(fast) < 2.0) trim(s);
  }
  void trim(const Snapshot& s) {
    const double held = s.controls.stick_aft - s.pitch_trim;
    if (std::abs(held) > 0.04 && std::abs(s.readings.pitch_rate_radps) < 0.02) tap(SDLK_t);
  }
  void roll(const Snapshot& s) {
    const double error = -s.readings.bank_rad - 0.25 * s.readings.roll_rate_radps;
    pair(SDLK_RIGHT, SDLK_LEFT, error, 0.015);
  }
  void power(const Snapshot& s, Phase phase, const TestPoint& point, bool recovering) {
    double wanted = std::isfinite(s.usual_throttle) ? s.usual_throttle : 0.5;
    const double low = s.asked.altitude_m - s.readings.indicated_altitude_m;
    if (phase == Phase::slow && point.power == PowerRule::idle) wanted = 0.0;
    if (recovering || phase == Phase::climb) wanted = 1.0;
    const bool level = phase == Phase::clearing || phase == Phase::transit || phase == Phase::settle ||
                       phase == Phase::record;
    if (level)
      wanted +=
          std::clamp(0.08 * (std::clamp(0.08 * low, -2.0, 2.0) - s.readings.vertical_speed_mps), -0.25, 0.25);
    pair(SDLK_PAGEUP, SDLK_PAGEDOWN, std::clamp(wanted, 0.0, 1.0) - s.controls.throttle, 0.02);
  }

  std::map<SDL_Keycode, bool> down_;
  std::map<SDL_Keycode, double> tapped_;
  double time_s_ = 0.0, integral_ = 0.0, slow_from_ = 0.0;
  bool slowing_ = false;
};

}  // namespace stallwright::app_test
