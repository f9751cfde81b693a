#include <bit>
#include <catch2/catch.hpp>
#include <cmath>
#include <sstream>

#include "tests/sim/motion/marram.hpp"
#include "tests/sim/motion/upsets.hpp"

using namespace stallwright;
using namespace stallwright::testing;

namespace {

bool all_finite(const FlightState<double>& s) {
  const auto numbers = std::bit_cast<AsArray<double, FlightState<double>>>(s);
  for (const double x : numbers)
    if (!std::isfinite(x)) return false;
  return true;
}

/// What is wrong with a state; empty if nothing.
std::string complaint(const Aircraft& a, const FlightState<double>& s) {
  if (!all_finite(s)) return "a number is not finite";
  const Quaternion<double>& q = s.rigid.attitude_EB;
  if (std::abs(q.w * q.w + q.x * q.x + q.y * q.y + q.z * q.z - 1.0) > 1e-14)
    return "the quaternion is not of unit length";
  // Terminal speed of a dive is near 90 m/s, sonic speed far away; spins turn at 3 to 5 rad/s.
  if (norm(s.rigid.velocity_B_mps) > 150.0) return "faster than any dive";
  if (norm(s.rigid.rate_B_radps) > 15.0) return "turning faster than any spin";
  for (const double x : s.airframe.separation)
    if (x < 0.0 || x > 1.0) return "a separation point is off the chord";
  const AircraftType& t = a.type;
  const auto outside = [](double angle, double low, double high) {
    return angle < low - 1e-9 || angle > high + 1e-9;
  };
  if (outside(s.airframe.elevator_rad, -t.elevator.max_negative_rad, t.elevator.max_positive_rad) ||
      outside(s.airframe.aileron_rad, -t.aileron.max_negative_rad, t.aileron.max_negative_rad) ||
      outside(s.airframe.rudder_rad, -t.rudder.max_negative_rad, t.rudder.max_positive_rad) ||
      outside(s.airframe.flap_rad, 0.0, t.flaps.back().deflection_rad))
    return "a control is past its stop";
  if (outside(s.airframe.propeller_radps, -20.0, 2.0 * t.engine.rated_speed_radps))
    return "the propeller runs away";
  return {};
}

/// One random minute: any state, hands that move every half to three seconds; every other one in gusts and
/// buffet and under power, the rest powerless in still air, where the energy must fall over any 2 s.
std::string fly_random_minute(const Aircraft& powered, std::uint64_t seed) {
  Draw draw(seed);
  const bool still = seed % 2 == 0;
  const Aircraft a = still ? without_power(powered) : powered;
  FlightState<double> s = any_state(a, draw);
  if (still) s.airframe.throttle = 0.0;
  AirSample<double> air;
  air.density_kgpm3 = draw.between(0.8, 1.3);
  Controls<double> hands;
  int next_move = 0;
  double energy[200];
  for (int i = 0; i < 6000; ++i) {
    if (i >= next_move) {
      hands = any_controls(a, draw);
      if (still) hands.throttle = 0.0;
      next_move = i + static_cast<int>(draw.between(50.0, 300.0));
    }
    if (!still && i % 10 == 0) {
      air.gust_B_mps = {2.0 * draw.noise(), 2.0 * draw.noise(), 2.0 * draw.noise()};
      air.gust_rate_B_radps = {0.1 * draw.noise(), 0.1 * draw.noise(), 0.1 * draw.noise()};
      for (double& shake : air.shake) shake = draw.noise();
    }
    const double now = energy_j(a, s);
    const bool rose = still && i >= 200 && now > energy[i % 200];
    energy[i % 200] = now;
    s = flight_step(a, s, hands, air);
    const std::string wrong = rose ? "energy rose over 2 s without power" : complaint(a, s);
    if (wrong.empty()) continue;
    std::ostringstream line;
    line << "flight " << seed << ", " << 0.01 * (i + 1) << " s: " << wrong << "; speed "
         << norm(s.rigid.velocity_B_mps) << " m/s, rate " << norm(s.rigid.rate_B_radps) << " rad/s";
    return line.str();
  }
  return {};
}

void fly_random_minutes(std::uint64_t first, std::uint64_t count) {
  const Aircraft even = marram(0), uneven = marram(7);
  int failed = 0;
  for (std::uint64_t seed = first; seed < first + count; ++seed) {
    const std::string wrong = fly_random_minute(seed % 3 == 0 ? even : uneven, seed);
    if (wrong.empty()) continue;
    ++failed;
    UNSCOPED_INFO(wrong);
  }
  CHECK(failed == 0);
}

}  // namespace

TEST_CASE("40 random flights of a minute, upsets included, stay finite and keep their invariants",
          "[motion][invariant]") {
  fly_random_minutes(0, 40);
}

TEST_CASE("a flight thrown from one flow into another at high speed keeps its separation points on the chord",
          "[motion][invariant]") {
  // Of 10,000, two whose first steps overshoot when nothing holds them.
  fly_random_minutes(104, 1);
  fly_random_minutes(192, 1);
}

TEST_CASE("10,000 random flights of a minute, upsets included, stay finite and keep their invariants",
          "[.slow][motion][invariant]") {
  fly_random_minutes(0, 10000);
}
