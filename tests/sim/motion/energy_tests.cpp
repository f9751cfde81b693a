#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "tests/sim/motion/marram.hpp"
#include "tests/sim/motion/stall_entry.hpp"
#include "tests/sim/motion/upsets.hpp"

using namespace stallwright;
using namespace stallwright::testing;

namespace {

/// The flight with the work done by all forces but weight since the start carried along as one more state.
struct Counted {
  FlightState<double> flight;
  double work_j = 0.0;
};

/// Power of the forces and moments on the airframe, W. The gyroscopic moment stands square to the rate: it
/// does none.
double power_w(const FlightState<double>& s, const AirframeForces<double>& loads) {
  return dot(loads.force_B, s.rigid.velocity_B_mps) + dot(loads.moment_B, s.rigid.rate_B_radps);
}

Counted step(const Aircraft& a, const Counted& at, const Controls<double>& controls,
             const AirSample<double>& air) {
  Counted next = runge_kutta_step(at, kStep_s, [&](const Counted& c) {
    const auto d = flight_derivative(a, c.flight, controls, air);
    return Counted{d.rate, power_w(c.flight, d.loads)};
  });
  next.flight.rigid.attitude_EB = normalised(next.flight.rigid.attitude_EB);
  return next;
}

double airframe_energy_j(const Aircraft& a, const FlightState<double>& s) {
  return energy_j(a, s) -
         0.5 * a.type.propeller.inertia_kgm2 * s.airframe.propeller_radps * s.airframe.propeller_radps;
}

double kinetic_j(const Aircraft& a, const FlightState<double>& s) {
  return 0.5 * a.mass.mass_kg * dot(s.rigid.velocity_B_mps, s.rigid.velocity_B_mps);
}

/// Largest mismatch of energy and work over one second, against the energy of motion. NaN if anything is not
/// finite.
double worst_mismatch(const Aircraft& a, const FlightState<double>& start, Controls<double> controls,
                      const AirSample<double>& air, int seconds, Draw* hands) {
  Counted c{start, 0.0};
  double worst = 0.0;
  for (int i = 0; i < seconds; ++i) {
    if (hands != nullptr && i > 0) controls = any_controls(a, *hands);
    const double before = airframe_energy_j(a, c.flight), work = c.work_j;
    double moving = kinetic_j(a, c.flight);
    for (int k = 0; k < 100; ++k) {
      c = step(a, c, controls, air);
      moving = std::max(moving, kinetic_j(a, c.flight));
    }
    const double mismatch = std::abs(airframe_energy_j(a, c.flight) - before - (c.work_j - work)) / moving;
    worst = mismatch > worst || std::isnan(mismatch) ? mismatch : worst;
  }
  return worst;
}

/// Largest gain of energy over any 2 s, looked at every 0.1 s.
double largest_gain_j(const Aircraft& a, FlightState<double> s, Controls<double> controls,
                      const AirSample<double>& air, int seconds, Draw* hands) {
  std::vector<double> energy;
  double largest = -1e300;
  for (int i = 0; i < 100 * seconds; ++i) {
    if (i % 10 == 0) energy.push_back(energy_j(a, s));
    if (energy.size() > 20) largest = std::max(largest, energy.back() - energy[energy.size() - 21]);
    if (hands != nullptr && i % 100 == 99 && hands->chance(0.5)) {
      controls = any_controls(a, *hands);
      controls.throttle = 0.0;
    }
    s = flight_step(a, s, controls, air);
  }
  return largest;
}

}  // namespace

TEST_CASE(
    "energy changes by the integrated power of the forces to 1e-6 a second, through a stall and under power",
    "[motion][invariant]") {
  const Aircraft a = marram(7);
  Flight f = stall_entry(a, 24.0, 0.9);
  for (const double throttle : {0.0, 1.0}) {
    f.controls.throttle = throttle;
    CHECK(worst_mismatch(a, f.state, f.controls, AirSample<double>{}, 12, nullptr) < 1e-6);
  }
}

TEST_CASE("energy changes by the integrated power of the forces in wind and gusts too",
          "[motion][invariant]") {
  // The power is that of the forces over the ground, so moving air may give energy: the balance does not
  // mind.
  const Aircraft a = marram(7);
  const Flight f = stall_entry(a, 30.0, 0.6);
  AirSample<double> air;
  air.wind_E_mps = {6.0, -9.0, 1.0};
  air.gust_B_mps = {1.0, -2.0, -1.5};
  air.gust_rate_B_radps = {0.05, -0.03, 0.02};
  CHECK(worst_mismatch(a, f.state, f.controls, air, 10, nullptr) < 1e-6);
}

TEST_CASE("power off in still air the total energy never rises over 2 s in a glide", "[motion][invariant]") {
  // The propeller windmills against friction, its own energy counted. A glide at 24 m/s loses about 1.5 m/s
  // of height.
  const Aircraft a = without_power(marram(7));
  for (const double speed : {24.0, 32.0, 45.0}) {
    const Flight f = glide(a, speed);
    const double least_loss = 0.5 * a.mass.mass_kg * kStandardGravity_mps2 * 2.0;
    CAPTURE(speed);
    CHECK(largest_gain_j(a, f.state, f.controls, AirSample<double>{}, 30, nullptr) < -least_loss);
  }
}

TEST_CASE("power off in still air the total energy never rises over 2 s in stalls and upsets",
          "[motion][invariant]") {
  const Aircraft a = without_power(marram(7));
  const Flight f = stall_entry(a, 24.0, 1.0);
  CHECK(largest_gain_j(a, f.state, f.controls, AirSample<double>{}, 20, nullptr) < 0.0);
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    Draw draw(seed);
    FlightState<double> s = any_state(a, draw);
    s.airframe.throttle = 0.0;
    Controls<double> c = any_controls(a, draw);
    c.throttle = 0.0;
    CAPTURE(seed);
    CHECK(largest_gain_j(a, s, c, AirSample<double>{}, 20, &draw) < 0.0);
  }
}

TEST_CASE("full power adds energy: the rise over 2 s in a climb is the power less the drag",
          "[motion][invariant]") {
  // Shows that the test above can see a gain at all.
  const Aircraft a = marram(7);
  Flight f = glide(a, 32.0);
  f.controls.throttle = 1.0;
  CHECK(largest_gain_j(a, f.state, f.controls, AirSample<double>{}, 10, nullptr) > 0.0);
}
