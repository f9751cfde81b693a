#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/airframe.hpp"
#include "tests/sim/motion/marram.hpp"
#include "tests/sim/motion/wind_tunnel.hpp"

using namespace stallwright;
using namespace stallwright::testing;

namespace {
constexpr double kDeg = math::kDegree;
constexpr double kSpeed = 28.0, kAlpha = 0.08;
}  // namespace

TEST_CASE("the wing's downwash reaches the tail about half as steep as far-wake theory's 2 CL/(pi A) or more",
          "[aircraft]") {
  // Between the value at the wing, CL/(pi A), and that far behind; common practice puts tails at 0.8 to 0.95
  // of far.
  const Aircraft a = airframe_alone();
  const double alpha = 6.0 * kDeg;
  const AirframeState<double> s = settled(a, attached(), flow_at(kSpeed, alpha), 5.0);
  const auto circulation = wing_circulation(a, s, flow_at(kSpeed, alpha));
  double lift = 0.0;
  for (std::size_t i = 0; i < kWingStrips; ++i) lift += 1.225 * kSpeed * circulation[i] * a.strips[i].width_m;
  const double cl = lift / (0.5 * 1.225 * kSpeed * kSpeed * a.wing_area_m2);
  const double at_wing = cl * a.wing_area_m2 / (math::kPi * a.span_m * a.span_m);
  const double at_tail = 0.5 * (s.downwash_mps[2] + s.downwash_mps[3]) / kSpeed;
  CAPTURE(cl, at_wing, at_tail);
  CHECK(at_tail > 1.1 * at_wing);
  CHECK(at_tail < 2.5 * at_wing);
}

TEST_CASE("each strip's induced flow comes to rest at the lifting line's, over some chords of travel",
          "[aircraft]") {
  const Aircraft a = airframe_alone(7);
  const RelativeFlow<double> flow = flow_at(kSpeed, kAlpha, 0.1);
  const AirframeState<double> s = settled(a, attached(), flow, 8.0);
  const auto circulation = wing_circulation(a, s, flow);
  const AirframeState<double> first = airframe_loads(a, attached(), flow, Controls<double>{}).rate;
  const auto at_first = wing_circulation(a, attached(), flow);
  for (std::size_t k = 0; k < kWingStrips; ++k) {
    double steady = 0.0, then = 0.0;
    for (std::size_t j = 0; j < kWingStrips; ++j) {
      steady += a.wing_influence[k][j] * circulation[j];
      then += a.wing_influence[k][j] * at_first[j];
    }
    const auto own = strip_motion(a, k, s, flow, propulsion(a, s, flow));
    CHECK(s.inflow_mps[k] + kShedShare * own.normal_mps == Approx(steady).epsilon(1e-6));
    // It sets out to be there after kInflowChords c/V; the strip's speed is the stream's to 1 %.
    const double lacking = then - kShedShare * own.normal_mps;
    CHECK(first.inflow_mps[k] ==
          Approx(lacking * kSpeed / (kInflowChords * a.strips[k].chord_m)).epsilon(0.02));
    // And it takes from the angle that the strip meets.
    CHECK(own.normal_mps - strip_flow(s, k, own).normal_mps == Approx(steady).epsilon(1e-6));
  }
  for (std::size_t k = 0; k < kTailStrips; ++k) {
    double steady = 0.0;
    for (std::size_t j = 0; j < kWingStrips; ++j) steady += a.tail_by_wing[k][j] * circulation[j];
    CHECK(s.downwash_mps[k] == Approx(steady).epsilon(1e-6));
    AirframeState<double> undisturbed = s;
    undisturbed.downwash_mps[k] = 0.0;
    const std::size_t i = kWingStrips + k;
    const auto power = propulsion(a, s, flow);
    CHECK(strip_motion(a, i, undisturbed, flow, power).normal_mps -
              strip_motion(a, i, s, flow, power).normal_mps ==
          Approx(steady).epsilon(1e-6));
  }
}

TEST_CASE("the probe meets more than the aeroplane's angle of attack: the wing lifts the flow ahead of it",
          "[aircraft]") {
  const Aircraft a = airframe_alone();
  const auto local = [&](double alpha) {
    const AirframeState<double> s = settled(a, attached(), flow_at(kSpeed, alpha), 5.0);
    const Vec3<double> v = probe_velocity(a, s, flow_at(kSpeed, alpha));
    return std::atan2(v.z, v.x);
  };
  const double slope = (local(8.0 * kDeg) - local(2.0 * kDeg)) / (6.0 * kDeg);
  CAPTURE(slope);
  CHECK(slope > 1.05);
  CHECK(slope < 2.0);
}
