// Whether the keyboard can be flown with: someone who sees speed, pitch and bank a few times a second and has nothing but
// arrow keys and trim keys, in a real aeroplane of ours.
#include <algorithm>
#include <cmath>

#include "sim/motion/trim.hpp"
#include "tests/render/input/events.hpp"
#include "tests/sim/motion/marram.hpp"

using namespace stallwright;
using namespace stallwright::input;
using namespace stallwright::events;

namespace {

constexpr double kDegree = 0.017453292519943295, kKnot_mps = 1852.0 / 3600.0;

struct Seen {
  double speed_kt, pitch_deg, bank_deg, slip_g;
};

class Flight {
 public:
  explicit Flight(double speed_kt) : aircraft_(testing::marram(7)) {
    condition_.true_airspeed_mps = speed_kt * kKnot_mps;
    condition_.altitude_m = 900.0;
    const Trim trim = find_trim(aircraft_, condition_);
    REQUIRE(trim.converged);
    state_ = trim.state;
    start_ = trim.controls;
  }
  const Controls<double>& start() const { return start_; }

  /// A fiftieth of a second with these hands.
  void tick(const HandsNow& now) {
    const Controls<double> c{now.stick_aft, now.stick_right, now.pedal_right, now.throttle, 0.0};
    for (int k = 0; k < 2; ++k) state_ = flight_step(aircraft_, state_, c, trim_air(condition_));
    force_ = flight_derivative(aircraft_, state_, c, trim_air(condition_)).specific_force_B_mps2.y;
  }
  Seen seen() const {
    const auto angles = euler_angles(state_.rigid.attitude_EB);
    const auto& v = state_.rigid.velocity_B_mps;
    return {std::sqrt(v.x * v.x + v.y * v.y + v.z * v.z) / kKnot_mps, angles.pitch_rad / kDegree,
            angles.roll_rad / kDegree, -force_ / kStandardGravity_mps2};
  }
  void bank(double bank_deg) {
    const double half = 0.5 * bank_deg * kDegree;
    const auto q = state_.rigid.attitude_EB;
    const double c = std::cos(half), s = std::sin(half);
    state_.rigid.attitude_EB = {q.w * c - q.x * s, q.w * s + q.x * c, q.y * c + q.z * s, q.z * c - q.y * s};
  }

 private:
  Aircraft aircraft_;
  TrimCondition condition_;
  FlightState<double> state_;
  Controls<double> start_;
  double force_ = 0.0;
};

/// One pair of keys under a finger: decides every 0.3 s, on what was seen then, how long the next press is.
class Finger {
 public:
  Finger(SDL_Keycode less, SDL_Keycode more, double press_per_error_s)
      : less_(less), more_(more), press_per_error_s_(press_per_error_s) {}

  void tick(Hands& hands, double time_s, double error) {
    if (time_s >= next_s_) {
      next_s_ = time_s + 0.3;
      const double press = std::min(std::abs(error) * press_per_error_s_, 0.25);
      if (press >= 0.03) {
        down_ = error > 0.0 ? more_ : less_;
        hands.handle(down(down_));
        until_s_ = time_s + press;
      }
    }
    if (down_ != SDLK_UNKNOWN && time_s >= until_s_) {
      hands.handle(up(down_));
      down_ = SDLK_UNKNOWN;
    }
  }

 private:
  SDL_Keycode less_, more_, down_ = SDLK_UNKNOWN;
  double press_per_error_s_, next_s_ = 0.0, until_s_ = 0.0;
};

struct Held {
  double worst_speed_kt = 0.0, worst_bank_deg = 0.0, worst_slip_g = 0.0;
};

/// Flies for this long by pitch at a speed that may change steadily, wings level, and says how far off it was after the
/// time given for getting there.
Held hold(Flight& flight, Hands& hands, double first_kt, double rate_ktps, double seconds,
          double settling_s) {
  Finger pitch(SDLK_UP, SDLK_DOWN, 0.05), roll(SDLK_LEFT, SDLK_RIGHT, 0.03), trim(SDLK_HOME, SDLK_END, 0.03);
  Held worst;
  double pitch_before = flight.seen().pitch_deg, bank_before = flight.seen().bank_deg;
  double level_pitch = pitch_before;
  for (int k = 0; k < 50 * seconds; ++k) {
    const double time_s = 0.02 * k, speed_kt = first_kt + rate_ktps * time_s;
    const Seen s = flight.seen();
    const double pitch_rate = (s.pitch_deg - pitch_before) / 0.02,
                 bank_rate = (s.bank_deg - bank_before) / 0.02;
    pitch_before = s.pitch_deg;
    bank_before = s.bank_deg;
    level_pitch += 0.02 * 0.15 * (s.speed_kt - speed_kt);
    const double wanted = level_pitch + 1.2 * (s.speed_kt - speed_kt);
    const double nose_up = wanted - s.pitch_deg - 0.8 * pitch_rate;
    pitch.tick(hands, time_s, nose_up);
    trim.tick(hands, time_s, nose_up);
    roll.tick(hands, time_s, -s.bank_deg - 0.8 * bank_rate);
    flight.tick(hands.update(0.02, {s.slip_g, 0.0, true}));
    if (time_s < settling_s) continue;
    worst.worst_speed_kt = std::max(worst.worst_speed_kt, std::abs(s.speed_kt - speed_kt));
    worst.worst_bank_deg = std::max(worst.worst_bank_deg, std::abs(s.bank_deg));
    worst.worst_slip_g = std::max(worst.worst_slip_g, std::abs(s.slip_g));
  }
  return worst;
}

}  // namespace

TEST_CASE("by keys alone a speed is held within the band of a card, wings level, ball in the middle",
          "[hands][fly]") {
  const Sdl sdl;
  for (const double speed_kt : {60.0, 80.0}) {
    Flight flight(speed_kt);
    flight.bank(12.0);
    Hands hands{Settings{}};
    hands.place(flight.start().stick_aft, flight.start().throttle, 0.0);
    const Held worst = hold(flight, hands, speed_kt, 0.0, 60.0, 30.0);
    INFO(speed_kt << " kt: off by " << worst.worst_speed_kt << " kt, bank " << worst.worst_bank_deg
                  << " deg, ball " << worst.worst_slip_g << " g");
    CHECK(worst.worst_speed_kt < 1.0);
    CHECK(worst.worst_bank_deg < 4.0);
    CHECK(worst.worst_slip_g < 0.03);
  }
}

TEST_CASE("by keys alone the speed is let fall at 1 kt/s with idle power, as on the way to a stall",
          "[hands][fly]") {
  const Sdl sdl;
  Flight flight(60.0);
  Hands hands{Settings{}};
  hands.place(flight.start().stick_aft, flight.start().throttle, 0.0);
  hands.handle(down(SDLK_i));
  const Held worst = hold(flight, hands, 60.0, -1.0, 14.0, 5.0);
  INFO("off by " << worst.worst_speed_kt << " kt, bank " << worst.worst_bank_deg << " deg, ball "
                 << worst.worst_slip_g << " g, speed " << flight.seen().speed_kt << " kt, stick "
                 << hands.view().now.stick_aft);
  CHECK(worst.worst_speed_kt < 3.0);
  CHECK(worst.worst_bank_deg < 4.0);
  CHECK(worst.worst_slip_g < 0.05);
  CHECK(flight.seen().speed_kt < 49.0);
}
