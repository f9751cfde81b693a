#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "sim/sensing/installed_system.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;
using evidence::hold;
using evidence::Published;
using evidence::WorstRow;

namespace {

constexpr Published kSphere{"SPHERE-FLOW", "potential flow about a sphere, closed form", "worked by hand"};
constexpr Published kTube{"GRACEY-1980", "ch. 10, laminar flow in a tube", "from memory; worked by hand"};
constexpr const char* kDigit = "one unit of the last printed digit";
constexpr const char* kExact = "exact, but for rounding";

constexpr double kDeg = math::kDegree;

/// Lower less upper port over dynamic pressure of a probe along body x, ports at 45 deg.
double plain_probe(double alpha_rad) {
  ProbeType probe;
  probe.port_angle_rad = 45.0 * kDeg;
  probe.mount_rad = 0.0;
  const Vec3<double> v{30.0 * std::cos(alpha_rad), 0.0, 30.0 * std::sin(alpha_rad)};
  return static_probe_pressure(probe, v, 1.0) / (0.5 * 900.0);
}

PitotStaticType worked_tube() {
  PitotStaticType tube;
  tube.tube_length_m = 5.0;
  tube.tube_diameter_m = 4.8e-3;
  tube.volume_m3 = 4e-4;
  return tube;
}

}  // namespace

TEST_CASE("pressure on a sphere runs from 1 at the nose through 0 at 41.8 degrees to -1.25 at the equator",
          "[sensing][published]") {
  // [SPHERE-FLOW] Cp = 1 - (9/4) sin^2: exact values; zero where sin = 2/3.
  CHECK(sphere_pressure_coefficient(0.0) == 1.0);
  hold(kSphere, "pressure coefficient 45 deg from the nose", sphere_pressure_coefficient(45.0 * kDeg), -0.125,
       1e-14, "1", kExact);
  hold(kSphere, "pressure coefficient at the equator", sphere_pressure_coefficient(90.0 * kDeg), -1.25, 1e-14,
       "1", kExact);
  CHECK(sphere_pressure_coefficient(std::asin(2.0 / 3.0)) == Approx(0.0).margin(1e-14));
}

TEST_CASE("two ports at 45 degrees on a sphere give 4.5 a radian, 0.7695 at 10 degrees and 1.4463 at 20",
          "[sensing][published]") {
  // [SPHERE-FLOW] 2.25 sin 2a: one unit of the last printed digit.
  hold(kSphere, "probe with ports at 45 deg, slope", plain_probe(1e-6) / 1e-6, 4.5, 4.5e-9, "1/rad", kExact);
  hold(kSphere, "probe with ports at 45 deg, a degree about the axis",
       plain_probe(0.5 * kDeg) - plain_probe(-0.5 * kDeg), 0.0785, 1e-4, "1", kDigit);
  hold(kSphere, "probe with ports at 45 deg, at 10 deg", plain_probe(10.0 * kDeg), 0.7695, 1e-4, "1", kDigit);
  hold(kSphere, "probe with ports at 45 deg, at 20 deg", plain_probe(20.0 * kDeg), 1.4463, 1e-4, "1", kDigit);
  hold(kSphere, "probe with ports at 45 deg, at -10 deg", plain_probe(-10.0 * kDeg), -0.7695, 1e-4, "1",
       kDigit);
}

TEST_CASE("an installed probe has the closed-form ratio at any angle, sideslip, port angle and mounting",
          "[sensing][published]") {
  // [SPHERE-FLOW] q/q_c (9/4) sin(2 theta) sin(2 (alpha - mount)) cos^2 beta, from the pressures at the two ports
  // themselves: Cp = 1 - (9/4) sin^2 of the angle between port and flow, angle by angle.
  WorstRow worst;
  for (const double port : {30.0, 45.0, 50.0})
    for (const double mount : {0.0, 8.0})
      for (const double alpha : {-8.0, 0.0, 3.0, 11.0, 16.0, 24.0})
        for (const double beta : {0.0, -12.0}) {
          ProbeType probe;
          probe.port_angle_rad = port * kDeg;
          probe.mount_rad = mount * kDeg;
          const Vec3<double> flow{std::cos(alpha * kDeg) * std::cos(beta * kDeg), std::sin(beta * kDeg),
                                  std::sin(alpha * kDeg) * std::cos(beta * kDeg)};
          // A port looks along the axis turned up or down by the port angle; the axis points mount below x.
          const auto at_port = [&](double below_axis_deg) {
            const double down = (mount + below_axis_deg) * kDeg;
            const double cosine = flow.x * std::cos(down) + flow.z * std::sin(down);
            return 1.0 - 2.25 * (1.0 - cosine * cosine);
          };
          worst.difference(std::to_string(alpha),
                           static_probe_pressure(probe, flow * 40.0, 1.1) / (0.5 * 1.1 * 1600.0),
                           at_port(port) - at_port(-port), 1e-13);
        }
  worst.hold(kSphere, "lower less upper port over dynamic pressure, by the pressure at each port", "1",
             kExact);
}

TEST_CASE("to 13 degrees the probe is linear within the 0.35 degrees reported from flight",
          "[sensing][published]") {
  // [ARMISTEAD-1973] abstract: a hemispherical sensor's calibration is linear to 13 deg, uncertainty 0.35 deg
  // or less.
  double xy = 0.0, xx = 0.0;
  for (int a = -130; a <= 130; ++a) {
    xy += a * 0.1 * kDeg * plain_probe(a * 0.1 * kDeg);
    xx += a * 0.1 * kDeg * (a * 0.1 * kDeg);
  }
  const double slope = xy / xx;
  double worst = 0.0;
  for (int a = -130; a <= 130; ++a)
    worst = std::max(worst, std::fabs(plain_probe(a * 0.1 * kDeg) / slope / kDeg - a * 0.1));
  evidence::sense(
      {"ARMISTEAD-1973", "abstract: linear to 13 deg, uncertainty 0.35 deg or less", "read in a copy"},
      "probe with ports at 45 deg, furthest from a straight line to 13 deg", worst, evidence::below(0.35),
      "deg", "the uncertainty reported from flight is the bound");
  CHECK(worst > 0.05);  // and it is not a straight line by construction
}

TEST_CASE("a tube of 5 m and 4.8 mm into 0.4 litres lags by 27.1 ms at sea level", "[sensing][published]") {
  // [GRACEY-1980] ch. 10, worked value: mu 1.789e-5 Pa s, 101,325 Pa; one unit of the last printed digit.
  hold(kTube, "lag of a tube of 5 m and 4.8 mm into 0.4 litres at sea level",
       tube_lag(worked_tube(), 288.15, 101325.0), 0.0271, 1e-4, "s", kDigit);
}

TEST_CASE("tube lag goes as one over pressure, length, volume and the inverse fourth power of bore",
          "[sensing][published]") {
  const double base = tube_lag(worked_tube(), 288.15, 101325.0);
  const auto times = [&](const char* what, double lag, double expected) {
    hold(kTube, std::string("lag of a tube, ") + what, lag / base, expected, 1e-12 * expected, "1", kExact);
  };
  times("half the pressure", tube_lag(worked_tube(), 288.15, 50662.5), 2.0);
  PitotStaticType tube = worked_tube();
  tube.tube_diameter_m *= 0.5;
  times("half the bore", tube_lag(tube, 288.15, 101325.0), 16.0);
  tube = worked_tube();
  tube.tube_length_m *= 3.0;
  tube.volume_m3 *= 2.0;
  times("three times the length and twice the volume", tube_lag(tube, 288.15, 101325.0), 6.0);
  // Near 18,000 ft the pressure has halved; the colder air is 11 % less viscous.
  const auto air = atmosphere(Day{}, 5500.0);
  CHECK(tube_lag(worked_tube(), air.temperature_K, air.pressure_Pa) == Approx(1.79 * base).epsilon(0.02));
}

TEST_CASE("air at 15 degrees Celsius has the standard's viscosity", "[sensing][published]") {
  // [USSA-1976] table 2 gives 1.7894e-5 at sea level, 1.6938e-5 where T is 268.66 K (3 km; from memory,
  // recomputed).
  const Published table{"USSA-1976", "table II, viscosity", "from memory; recomputed"};
  hold(table, "viscosity at sea level", air_viscosity(288.15), 1.7894e-5, 1e-9, "Pa s", kDigit);
  hold(table, "viscosity at 3 km", air_viscosity(268.659), 1.6938e-5, 1e-9, "Pa s", kDigit);
}

TEST_CASE("one percent of impact pressure in the static line is half a percent of indicated speed",
          "[sensing][published]") {
  // [GRACEY-1980] dV/V = -dp/(2q); beyond it e^2/8, and M^2/4 = 0.2 % of the first-order term.
  AircraftType type;
  type.probe.port_angle_rad = 45.0 * kDeg;
  type.probe.mount_rad = 0.0;
  type.pitot_static.error_per_rad = 0.0;
  SensedFlow<double> flow;
  flow.velocity_B_mps = flow.probe_velocity_B_mps = {30.0, 0.0, 0.0};
  flow.density_kgpm3 = ussa1976::kDensity;
  flow.static_pressure_pa = ussa1976::kPressure;
  for (const double error : {-0.02, 0.01, 0.02}) {
    type.pitot_static.error_at_zero_alpha = error;
    const double shown = static_readings(type, flow).indicated_airspeed_mps;
    hold({"GRACEY-1980", "effect of a static-pressure error on speed", "from memory; worked by hand"},
         "change of indicated speed by " + std::to_string(error).substr(0, error < 0.0 ? 5 : 4) +
             " of impact pressure in the static line",
         shown / 30.0 - 1.0, -error / 2.0, 0.13 * error * error + 0.001 * std::fabs(error), "1",
         "the next terms of the series");
  }
}
