#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/propulsion.hpp"
#include "tests/published/evidence.hpp"
#include "tests/sim/motion/marram.hpp"

using namespace stallwright;
using evidence::hold;
using evidence::Published;
using evidence::WorstRow;

namespace {

constexpr Published kDisc{"GLAUERT", "actuator disc", "from memory; derived again"};
constexpr const char* kExact = "exact, but for rounding";

Propulsion<double> running(const Aircraft& a, double speed_mps, double propeller_radps, double throttle,
                           double density = 1.225) {
  AirframeState<double> s;
  s.propeller_radps = propeller_radps;
  s.throttle = throttle;
  RelativeFlow<double> flow;
  flow.velocity_B = a.shaft_B * speed_mps;
  flow.density_kgpm3 = density;
  return propulsion(a, s, flow);
}

}  // namespace

TEST_CASE("at rest the disc's induced speed is sqrt(T/(2 rho A))", "[aircraft][published]") {
  // [GLAUERT] actuator disc.
  const Aircraft a = testing::marram();
  WorstRow worst;
  for (const double omega : {120.0, 200.0, 260.0}) {
    const auto p = running(a, 0.0, omega, 1.0, 1.1);
    REQUIRE(p.thrust_n > 100.0);
    worst.difference_relative(std::to_string(static_cast<int>(omega)) + " rad/s", p.wash_mps,
                              std::sqrt(p.thrust_n / (2.0 * 1.1 * a.disc_area_m2)), 1e-13);
  }
  worst.hold(kDisc, "induced speed at the disc, at rest", "m/s", kExact);
}

TEST_CASE("moving, thrust is mass flow times the speed far behind: T = 2 rho A (u + v) v",
          "[aircraft][published]") {
  // [GLAUERT] actuator disc, thrusting and (speeds of 70 m/s) windmilling.
  const Aircraft a = testing::marram();
  WorstRow worst;
  for (const double u : {5.0, 20.0, 40.0, 70.0}) {
    const auto p = running(a, u, 220.0, 1.0);
    worst.difference_relative(std::to_string(static_cast<int>(u)) + " m/s", p.thrust_n,
                              2.0 * 1.225 * a.disc_area_m2 * (u + p.wash_mps) * p.wash_mps, 1e-12);
  }
  worst.hold(kDisc, "thrust as mass flow times the speed far behind", "N", kExact);
  CHECK(running(a, 70.0, 220.0, 1.0).wash_mps < 0.0);
}

TEST_CASE("no propeller of any type beats the actuator disc, working or windmilling",
          "[aircraft][published]") {
  // [GLAUERT] power balance: the shaft gives at least thrust times the speed through the disc, T (u + v); a
  // windmill takes no more out of the air than T (u + v) either. In coefficients, J' = (u + v)/(n D): C_P >=
  // C_T J'.
  for (const auto& name : list_aircraft_types()) {
    const AircraftType type = load_aircraft_type(find_aircraft_file(name));
    const Aircraft a = make_aircraft(type, default_loading(type), 0);
    const double omega = 200.0, n = omega / (2.0 * M_PI), d = type.propeller.diameter_m;
    double least = 1e9;
    for (std::size_t i = 0; i < type.propeller.advance_ratio.size(); ++i) {
      const double u = type.propeller.advance_ratio[i] * n * d;
      const auto p = running(a, u, omega, 1.0);
      const double shaft = 1.225 * n * n * n * std::pow(d, 5) * type.propeller.power_coefficient[i];
      CAPTURE(name, type.propeller.advance_ratio[i], shaft, p.thrust_n);
      CHECK(shaft >= p.thrust_n * (u + p.wash_mps));
      least = std::min(least, (shaft - p.thrust_n * (u + p.wash_mps)) / (1.225 * n * n * n * std::pow(d, 5)));
    }
    evidence::sense(kDisc, name + ": power coefficient over the ideal one's, least of the table", least,
                    evidence::above(0.0), "1", "no propeller and no windmill beats the disc");
  }
}

TEST_CASE("engine power falls with density by Gagg and Ferrar's factor", "[aircraft][published]") {
  // [GAGG_FERRAR] P/P0 = 1.132 sigma - 0.132, as quoted to three decimals: to 5e-4.
  WorstRow worst;
  for (const double sigma : {1.0, 0.8617, 0.7385, 0.6292, 0.5})
    worst.row("density ratio " + std::to_string(sigma).substr(0, 6), altitude_power(1.225 * sigma),
              1.132 * sigma - 0.132, 5e-4);
  worst.hold({"GAGG_FERRAR", "power by density ratio", "from memory"}, "share of sea-level power", "1",
             "quoted to three decimals");
  // Full throttle at rated speed gives rated power at sea level, and the factor's share of the torque inside
  // the cylinders higher up: friction stays (dry friction is 5e-4 short of its full value there).
  const Aircraft a = testing::marram();
  const EngineType& e = a.type.engine;
  CHECK(running(a, 30.0, e.rated_speed_radps, 1.0).shaft_power_w == Approx(e.rated_power_w).epsilon(1e-4));
  const double friction = e.friction_torque_nm * e.rated_speed_radps;
  CHECK(running(a, 30.0, e.rated_speed_radps, 1.0, 0.9).shaft_power_w ==
        Approx((e.rated_power_w + friction) * altitude_power(0.9) - friction).epsilon(1e-4));
}

TEST_CASE("the swirl behind the disc carries the propeller's torque away", "[aircraft][published]") {
  // [GLAUERT] general momentum theory: Q = mass flow x swirl x R^2/2 for a slipstream turning as a solid
  // body.
  const Aircraft a = testing::marram();
  const double omega = 230.0, n = omega / (2.0 * M_PI), d = a.type.propeller.diameter_m, u = 25.0;
  const auto p = running(a, u, omega, 1.0);
  const double cp =
      math::interpolate(a.type.propeller.advance_ratio, a.type.propeller.power_coefficient, u / (n * d));
  const double torque = 1.225 * n * n * std::pow(d, 5) * cp / (2.0 * M_PI);
  const double mass_flow = 1.225 * a.disc_area_m2 * (u + p.wash_mps);
  hold({"GLAUERT", "general momentum theory, swirl as a solid body", "from memory; derived again"},
       "torque carried by the slipstream", mass_flow * p.swirl_radps * 0.5 * std::pow(0.5 * d, 2), torque,
       1e-12 * torque, "N m", kExact);
  CHECK(p.spin_rate_radps2 * a.type.propeller.inertia_kgm2 ==
        Approx(engine_torque(a.type.engine, a.idle_throttle, 1.0, omega, 1.225) - torque).epsilon(1e-12));
}
