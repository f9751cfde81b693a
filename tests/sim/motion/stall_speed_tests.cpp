#include <catch2/catch.hpp>
#include <cmath>

#include "tests/sim/motion/marram.hpp"
#include "tests/sim/motion/stall_entry.hpp"

using namespace stallwright;
using namespace stallwright::testing;

namespace {

struct Slowest {
  double speed_mps = 1e9, load_factor = 0.0, normal_coefficient = 0.0;
  int found = 0;
};

/// Steady flight at rising alpha until no steady flight is found or the coefficient has fallen, each trim
/// started from the one before: the one with the largest n m g/(qbar S) is the stall.
Slowest stall(const Aircraft& a, double bank_rad) {
  Slowest out;
  Trim before;
  bool have = false;
  for (double alpha = 6.0 * math::kDegree; alpha < 20.0 * math::kDegree; alpha += 0.1 * math::kDegree) {
    TrimCondition c;
    c.alpha_rad = alpha;
    c.power = TrimCondition::Power::throttle;
    c.bank_rad = bank_rad;
    c.altitude_m = 1000.0;
    const Trim t = find_trim(a, c, have ? &before : nullptr);
    if (!t.converged) {
      if (have) break;
      continue;
    }
    before = t;
    have = true;
    ++out.found;
    const double qbar = 0.5 * c.density_kgpm3 * t.true_airspeed_mps * t.true_airspeed_mps;
    const double coefficient =
        t.load_factor * a.mass.mass_kg * kStandardGravity_mps2 / (qbar * a.wing_area_m2);
    if (coefficient > out.normal_coefficient)
      out = {t.true_airspeed_mps, t.load_factor, coefficient, out.found};
    if (coefficient < 0.98 * out.normal_coefficient) break;
  }
  return out;
}

Aircraft marram_of(double mass_kg) {
  const AircraftType type = marram_type();
  MassProperties mass = mass_properties(type, default_loading(type));
  for (double& i : mass.inertia.m) i *= mass_kg / mass.mass_kg;
  mass.mass_kg = mass_kg;
  return make_aircraft(type, mass, 0);
}

}  // namespace

TEST_CASE("the stall speed goes with the square root of the mass", "[motion][invariant]") {
  const Slowest light = stall(marram_of(450.0), 0.0), heavy = stall(marram_of(600.0), 0.0);
  CAPTURE(light.speed_mps, heavy.speed_mps, light.normal_coefficient, heavy.normal_coefficient, light.found);
  CHECK(heavy.speed_mps / light.speed_mps == Approx(std::sqrt(600.0 / 450.0)).epsilon(0.005));
}

TEST_CASE("a trimmed turn keeps the ball in the middle", "[motion]") {
  // No specific force to the side, so neither slip nor skid but the little that balances fin against
  // propeller.
  const Aircraft a = marram();
  for (const double bank_deg : {-45.0, 30.0, 60.0}) {
    TrimCondition c;
    c.true_airspeed_mps = 38.0;
    c.bank_rad = bank_deg * math::kDegree;
    const Trim t = find_trim(a, c);
    CAPTURE(bank_deg);
    REQUIRE(t.converged);
    const auto d = flight_derivative(a, t.state, t.controls, trim_air(c));
    CHECK(std::abs(d.specific_force_B_mps2.y) < 1e-6);
    CHECK(t.load_factor == Approx(1.0 / std::cos(c.bank_rad)).epsilon(0.01));
    // It is steady: a second on, speed and bank are what they were.
    FlightState<double> s = t.state;
    for (int i = 0; i < 100; ++i) s = flight_step(a, s, t.controls, trim_air(c));
    CHECK(norm(s.rigid.velocity_B_mps - t.state.rigid.velocity_B_mps) < 1e-4);
    CHECK(euler_angles(s.rigid.attitude_EB).roll_rad == Approx(c.bank_rad).margin(1e-4));
  }
}

TEST_CASE("the stall speed in a turn goes with the square root of the load factor", "[motion][invariant]") {
  // Not exactly: a turn is flown on a curve, so the tail carries more download against the pitch rate and the
  // wings see different angles in a descending spiral, held level by aileron. 4 % of maximum lift, 2 % of
  // speed at 45 deg.
  const Aircraft a = marram_of(600.0);
  const Slowest level = stall(a, 0.0);
  CHECK(level.load_factor == Approx(1.0).epsilon(0.001));
  for (const double bank : {30.0 * math::kDegree, 45.0 * math::kDegree}) {
    const Slowest turning = stall(a, bank);
    CAPTURE(bank, level.speed_mps, turning.speed_mps, turning.load_factor);
    CHECK(turning.load_factor == Approx(1.0 / std::cos(bank)).epsilon(0.01));
    const double expected = std::sqrt(turning.load_factor / level.load_factor);
    CHECK(turning.speed_mps / level.speed_mps == Approx(expected).epsilon(0.02));
  }
}
