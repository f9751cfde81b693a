#include <catch2/catch.hpp>
#include <cmath>

#include "tests/sim/sensing/sensing_cases.hpp"

using namespace stallwright;
using namespace stallwright::sensing_cases;

TEST_CASE("without position error the airspeed indicator reads calibrated airspeed",
          "[sensing][closed-form]") {
  AircraftType type = installation();
  type.pitot_static.error_at_zero_alpha = type.pitot_static.error_per_rad = 0.0;
  for (const double altitude : {0.0, 1500.0, 4000.0})
    for (const double tas : {20.0, 40.0, 70.0}) {
      const StaticReadings<double> r = static_readings(type, steady(tas, 0.1, altitude).flow);
      CHECK(r.indicated_airspeed_mps == Approx(cas_of_tas(tas, atmosphere(Day{}, altitude))).epsilon(1e-12));
      CHECK(r.pressure_altitude_m == Approx(geopotential_height(altitude)).margin(1e-7));
    }
}

TEST_CASE("a static pressure that is too high makes speed and height read low", "[sensing][closed-form]") {
  AircraftType exact = installation(), high = installation();
  exact.pitot_static.error_at_zero_alpha = exact.pitot_static.error_per_rad = 0.0;
  high.pitot_static.error_at_zero_alpha = 0.01;
  high.pitot_static.error_per_rad = 0.0;
  const SensedFlow<double> flow = steady(40.0, 0.1).flow;
  const StaticReadings<double> a = static_readings(exact, flow), b = static_readings(high, flow);
  CHECK(b.impact_pressure_pa == Approx(0.99 * a.impact_pressure_pa).epsilon(1e-12));
  // dh = -dp/(rho g), dp = 1 % of the impact pressure; the height step is small, so first order is enough.
  CHECK(b.pressure_altitude_m - a.pressure_altitude_m ==
        Approx(-0.01 * a.impact_pressure_pa / (flow.density_kgpm3 * 9.80665)).epsilon(2e-4));
}

TEST_CASE("the nominal position error is linear in angle of attack to 30 degrees and held beyond",
          "[sensing][limits]") {
  const PitotStaticType system = installation().pitot_static;
  const auto error = [&](double alpha) { return nominal_position_error(system, velocity(30.0, alpha)); };
  CHECK(error(0.0) == Approx(0.01));
  CHECK(error(0.25) == Approx(0.01 - 0.12 * 0.25));
  CHECK(error(-0.25) == Approx(0.01 + 0.12 * 0.25));
  CHECK(error(35.0 * kDeg) == error(80.0 * kDeg));
  CHECK(error(80.0 * kDeg) == Approx(0.01 - 0.12 * 30.0 * kDeg));
  CHECK(error(-80.0 * kDeg) == Approx(0.01 + 0.12 * 30.0 * kDeg));
}

TEST_CASE("the pitot reads in full to 60 degrees off the flow, nothing across it or in flow from behind",
          "[sensing][limits]") {
  CHECK(pitot_recovery(velocity(30.0, 59.9 * kDeg)) == 1.0);
  CHECK(pitot_recovery(velocity(30.0, 40.0 * kDeg, 30.0 * kDeg)) == 1.0);
  CHECK(pitot_recovery(velocity(30.0, 75.0 * kDeg)) == Approx(2.0 * math::cos(75.0 * kDeg)));
  CHECK(pitot_recovery(velocity(30.0, 90.0 * kDeg)) == Approx(0.0).margin(1e-15));
  CHECK(pitot_recovery(velocity(30.0, 150.0 * kDeg)) == 0.0);
  CHECK(pitot_recovery(Vec3<double>{}) == 0.0);
}

TEST_CASE("the installed ratio depends on neither speed nor density but for compressibility",
          "[sensing][invariant]") {
  const AircraftType type = installation();
  const auto ratio = [&](double tas, double altitude) {
    return static_readings(type, steady(tas, 0.2, altitude).flow).probe_ratio;
  };
  const double slow = ratio(12.0, 0.0);
  for (const double altitude : {0.0, 1500.0, 3000.0})
    for (const double tas : {20.0, 35.0, 50.0}) {
      CAPTURE(altitude, tas);
      const double mach = tas / atmosphere(Day{}, altitude).speed_of_sound_mps;
      // q_c/q = 1 + M^2/4 + M^4/40
      CHECK(ratio(tas, altitude) == Approx(slow).epsilon(0.26 * mach * mach));
    }
}

TEST_CASE("at rest, on the back and in a tail slide the static readings stay finite", "[sensing][limits]") {
  const AircraftType type = installation();
  SensedTruth<double> truth = steady(30.0, 0.1);
  for (const Vec3<double>& v :
       {Vec3<double>{}, velocity(30.0, 3.0), velocity(20.0, -1.6), velocity(1e-9, 0.1)}) {
    truth.flow.velocity_B_mps = truth.flow.probe_velocity_B_mps = v;
    const StaticReadings<double> r = static_readings(type, truth.flow);
    CHECK(std::isfinite(r.probe_ratio));
    CHECK(std::isfinite(r.indicated_airspeed_mps));
    CHECK(r.indicated_airspeed_mps >= 0.0);
    CHECK(std::isfinite(r.pressure_altitude_m));
  }
}
