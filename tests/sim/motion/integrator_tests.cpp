#include <catch2/catch.hpp>
#include <cmath>

#include "tests/sim/motion/marram.hpp"
#include "tests/sim/motion/stall_entry.hpp"

using namespace stallwright;

namespace {

FlightState<double> flown(const Aircraft& a, const testing::Flight& from, double time_s, int steps_ps) {
  FlightState<double> s = from.state;
  const int steps = static_cast<int>(std::lround(time_s * steps_ps));
  for (int i = 0; i < steps; ++i) s = flight_step(a, s, from.controls, AirSample<double>{}, 1.0 / steps_ps);
  return s;
}

/// The uneven Marram with straight lines for propeller tables: a table's corners are the only ones in this
/// flight.
Aircraft smooth_uneven_marram() {
  AircraftType type = testing::marram_type();
  type.propeller.advance_ratio = {0.0, 1.6};
  type.propeller.thrust_coefficient = {0.16, -0.19};
  type.propeller.power_coefficient = {0.08, -0.09};
  return make_aircraft(type, default_loading(type), 7);
}

constexpr double kHardPull = 0.9;  ///< stick; trimmed flight at 24 m/s needs 0.4

}  // namespace

TEST_CASE("a hard pull from 24 m/s at idle stalls the uneven aeroplane and drops a wing", "[motion]") {
  // What the integrator is tried on below is a full stall, not a wallow near one.
  const Aircraft a = smooth_uneven_marram();
  const testing::Flight f = testing::stall_entry(a, 24.0, kHardPull);
  double most_alpha = 0.0, least_x = 1.0;
  FlightState<double> s = f.state;
  for (int i = 0; i < 600; ++i) {
    s = flight_step(a, s, f.controls, AirSample<double>{});
    most_alpha = std::max(most_alpha, testing::alpha_rad(s));
    for (std::size_t k = 0; k < kWingStrips; ++k) least_x = std::min(least_x, s.airframe.separation[k]);
  }
  CHECK(most_alpha > 16.0 * math::kDegree);
  CHECK(least_x < 0.3);
  CHECK(std::abs(euler_angles(s.rigid.attitude_EB).roll_rad) > 3.0 * math::kDegree);
}

TEST_CASE("halving the step through a full stall divides the error by 2^4", "[motion][invariant]") {
  // From 50 to 200 Hz; finer, the reference's own error and round-off begin to show. 0.45 for the h^5 term at
  // 50 Hz.
  const Aircraft a = smooth_uneven_marram();
  const testing::Flight f = testing::stall_entry(a, 24.0, kHardPull);
  const double time = 5.0;
  const double reference = testing::alpha_rad(flown(a, f, time, 1600));
  double before = 0.0;
  for (const int rate : {50, 100, 200}) {
    const double error = std::abs(testing::alpha_rad(flown(a, f, time, rate)) - reference);
    CAPTURE(rate, error);
    if (before > 0.0) CHECK(std::log2(before / error) == Approx(4.0).margin(0.55));
    before = error;
    if (rate == 100) CHECK(error < 1e-7);
  }
}

TEST_CASE("corners of tables and rate limits cost accuracy but leave 100 Hz good to 1e-5 rad",
          "[motion][invariant]") {
  // The propeller's tables bend at their points, the elevator's rate limit ends at once: at each corner one
  // step is only of second order. A stick thrown from stop to stop meets all of them.
  const Aircraft a = testing::marram(7);
  testing::Flight f = testing::glide(a, 26.0);
  f.controls.stick_aft = 1.0;
  f.controls.stick_right = -0.5;
  f.controls.throttle = 1.0;
  const double fine = testing::alpha_rad(flown(a, f, 2.0, 3200));
  const auto difference = [&](int rate) {
    return std::abs(testing::alpha_rad(flown(a, f, 2.0, rate)) - fine);
  };
  CAPTURE(difference(50), difference(100), difference(400));
  CHECK(difference(100) < 1e-5);
  CHECK(difference(400) < 1e-6);
}

TEST_CASE("a step is a pure function: the same state steps to the same bits", "[motion][invariant]") {
  const Aircraft a = testing::marram(7);
  const testing::Flight f = testing::stall_entry(a, 24.0, kHardPull);
  CHECK(flown(a, f, 4.0, 100) == flown(a, f, 4.0, 100));
}
