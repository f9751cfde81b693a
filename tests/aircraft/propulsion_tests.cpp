#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/airframe.hpp"
#include "aircraft/propulsion.hpp"
#include "sim/motion/flight.hpp"
#include "tests/sim/motion/marram.hpp"
#include "tests/sim/motion/wind_tunnel.hpp"

using namespace stallwright;
using namespace stallwright::testing;

namespace {

constexpr double kKnot = 1852.0 / 3600.0;

/// Propeller speed at which engine and propeller agree.
double steady_speed_radps(const Aircraft& a, double airspeed_mps, double throttle) {
  AirframeState<double> s = attached(150.0);
  s.throttle = throttle;
  for (int i = 0; i < 3000; ++i)
    s.propeller_radps += 0.01 * propulsion(a, s, flow_at(airspeed_mps, 0.0)).spin_rate_radps2;
  return s.propeller_radps;
}

AirframeState<double> full_power() {
  AirframeState<double> s = attached(240.0);
  s.throttle = 1.0;
  return s;
}

}  // namespace

TEST_CASE(
    "idle turns the propeller at idle speed at rest and lets it windmill between idle and rated at 60 kt",
    "[aircraft]") {
  for (const auto& name : list_aircraft_types()) {
    const AircraftType type = load_aircraft_type(find_aircraft_file(name));
    const Aircraft a = make_aircraft(type, default_loading(type), 0);
    CAPTURE(name);
    CHECK(steady_speed_radps(a, 0.0, 0.0) == Approx(type.engine.idle_speed_radps).epsilon(1e-6));
    const double windmilling = steady_speed_radps(a, 60.0 * kKnot, 0.0);
    CHECK(windmilling > 1.05 * type.engine.idle_speed_radps);
    CHECK(windmilling < 0.8 * type.engine.rated_speed_radps);
    CHECK(steady_speed_radps(a, 60.0 * kKnot, 1.0) > 1.3 * windmilling);
  }
}

TEST_CASE("a windmilling propeller drags", "[aircraft]") {
  const Aircraft a = marram();
  AirframeState<double> s = attached(steady_speed_radps(a, 100.0 * kKnot, 0.0));
  CHECK(propulsion(a, s, flow_at(100.0 * kKnot, 0.0)).thrust_n < 0.0);
}

TEST_CASE("the engine's torque rolls the aeroplane left, as the propeller turns right", "[aircraft]") {
  const Aircraft a = marram();
  const auto p = propulsion(a, full_power(), flow_at(30.0, 0.0));
  CHECK(p.moment_B.x < -100.0);
  CHECK(p.shaft_power_w > 0.5 * a.type.engine.rated_power_w);
}

TEST_CASE("at a positive angle of attack the down-going right blade bites more: the nose goes left",
          "[aircraft]") {
  AircraftType type = marram_type();
  type.propeller.thrust_line_right_rad = 0.0;
  const Aircraft a = make_aircraft(type, default_loading(type), 0);
  const auto level = propulsion(a, full_power(), flow_at(30.0, type.propeller.thrust_line_up_rad));
  const auto up = propulsion(a, full_power(), flow_at(30.0, 0.2));
  CHECK(up.moment_B.z < level.moment_B.z - 10.0);
  // A slip to the right loads the upper blade: nose down beyond what the thrust line does.
  const auto slip = propulsion(a, full_power(), flow_at(30.0, 0.0, 0.2));
  CHECK(slip.moment_B.y < propulsion(a, full_power(), flow_at(30.0, 0.0)).moment_B.y - 10.0);
}

TEST_CASE("the disc's normal force opposes the cross flow and so unsteadies in pitch and yaw", "[aircraft]") {
  AircraftType type = marram_type();
  type.propeller.asymmetric_moment = 0.0;
  const Aircraft a = make_aircraft(type, default_loading(type), 0);
  const auto straight = propulsion(a, full_power(), flow_at(30.0, 0.0));
  const auto up = propulsion(a, full_power(), flow_at(30.0, 0.2));
  const auto slip = propulsion(a, full_power(), flow_at(30.0, 0.0, 0.2));
  CHECK(up.force_B.z < straight.force_B.z);
  CHECK(up.moment_B.y > straight.moment_B.y);  // the hub is ahead: nose up
  CHECK(slip.force_B.y < straight.force_B.y);
  CHECK(slip.moment_B.z < straight.moment_B.z);  // away from the wind
}

TEST_CASE("the slipstream blows the middle of the wing and the tail, and swirls onto the fin's left side",
          "[aircraft]") {
  const Aircraft a = marram();
  const RelativeFlow<double> flow = flow_at(20.0, 0.1);
  const AirframeState<double> on = full_power();
  const Propulsion<double> power = propulsion(a, on, flow);
  REQUIRE(power.wash_mps > 2.0);
  double washed_width = 0.0;
  for (std::size_t i = 0; i < kWingStrips; ++i) {
    const auto local = strip_flow(on, i, strip_motion(a, i, on, flow, power));
    const bool tip = i < 4 || i >= 12;
    washed_width += a.strips[i].slipstream_share * a.strips[i].width_m;
    if (tip) CHECK(local.speed_mps < 20.5);
  }
  // A chord of the stream tube, at most its diameter.
  CHECK(washed_width > 0.5);
  CHECK(washed_width <= a.type.propeller.diameter_m);
  const std::size_t fin = kWingStrips + kTailStrips;
  const auto fin_flow = strip_flow(on, fin, strip_motion(a, fin, on, flow, power));
  CHECK(fin_flow.speed_mps > 21.0);
  // Flow from the left pushes the fin right, the nose left.
  CHECK(fin_flow.alpha_rad < 0.0);
  const auto left_tail = strip_flow(on, kWingStrips + 2, strip_motion(a, kWingStrips + 2, on, flow, power));
  const auto right_tail = strip_flow(on, kWingStrips + 3, strip_motion(a, kWingStrips + 3, on, flow, power));
  CHECK(left_tail.alpha_rad > right_tail.alpha_rad);
}

TEST_CASE("power adds lift at the same angle and speed", "[aircraft]") {
  const Aircraft a = marram();
  const RelativeFlow<double> flow = flow_at(22.0, 0.15);
  AirframeState<double> off = attached(90.0);
  const auto with = measured(a, full_power(), flow), without = measured(a, off, flow);
  CHECK(lift_n(with, 0.15) > lift_n(without, 0.15) + with.thrust_n * std::sin(0.15) + 50.0);
}

TEST_CASE("a nose-up rate turns the spinning propeller's axis right", "[aircraft]") {
  const Aircraft a = marram();
  FlightState<double> s;
  s.airframe = full_power();
  s.rigid.velocity_B_mps = {30.0, 0.0, 1.0};
  s.rigid.rate_B_radps = {0.0, 0.3, 0.0};
  FlightState<double> stopped = s;
  Aircraft light = a;
  light.type.propeller.inertia_kgm2 = 1e-9;
  const double with =
      flight_derivative(a, s, Controls<double>{}, AirSample<double>{}).rate.rigid.rate_B_radps.z;
  const double without =
      flight_derivative(light, stopped, Controls<double>{}, AirSample<double>{}).rate.rigid.rate_B_radps.z;
  const double momentum = a.type.propeller.inertia_kgm2 * 240.0;
  CHECK(with - without == Approx(0.3 * momentum / a.mass.inertia(2, 2)).epsilon(0.05));
}

TEST_CASE("at rest, backwards and with the propeller stopped everything is finite", "[aircraft]") {
  const Aircraft a = marram();
  for (const double speed : {0.0, 1e-9, -30.0, 80.0})
    for (const double omega : {0.0, 5.0, 300.0}) {
      AirframeState<double> s = attached(omega);
      s.throttle = 1.0;
      const auto p = propulsion(a, s, flow_at(speed, 0.0));
      CAPTURE(speed, omega);
      CHECK(std::isfinite(p.thrust_n + p.spin_rate_radps2 + p.wash_mps + p.swirl_radps + norm(p.moment_B)));
    }
}
