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

/// What a change of state adds to the moments in steady flow.
Vec3<double> added_moment(const Aircraft& a, const AirframeState<double>& changed) {
  const RelativeFlow<double> flow = flow_at(kSpeed, kAlpha);
  return measured(a, changed, flow).moment_B - measured(a, attached(), flow).moment_B;
}

/// What a change of the flow adds.
Vec3<double> added_moment(const Aircraft& a, const RelativeFlow<double>& changed) {
  return measured(a, attached(), changed).moment_B -
         measured(a, attached(), flow_at(kSpeed, kAlpha)).moment_B;
}

}  // namespace

TEST_CASE("each hand and foot turns the aeroplane the way it should", "[aircraft]") {
  const Aircraft a = airframe_alone();
  Controls<double> c;
  c.stick_aft = 0.5;
  c.stick_right = 0.5;
  c.pedal_right = 0.5;
  const AirframeState<double> rate = airframe_loads(a, attached(), flow_at(kSpeed, kAlpha), c).rate;
  AirframeState<double> s = attached();
  s.elevator_rad = 0.1 * rate.elevator_rad;
  CHECK(added_moment(a, s).y > 200.0);  // stick aft: nose up
  s = attached();
  s.aileron_rad = 0.1 * rate.aileron_rad;
  CHECK(added_moment(a, s).x > 200.0);  // stick right: right wing down
  CHECK(added_moment(a, s).z < 0.0);    // and adverse yaw
  s = attached();
  s.rudder_rad = 0.1 * rate.rudder_rad;
  CHECK(added_moment(a, s).z > 100.0);  // right pedal: nose right
}

TEST_CASE("controls go to their stops, no further and no faster than their rates", "[aircraft]") {
  const Aircraft a = airframe_alone();
  const AircraftType& t = a.type;
  for (const double hand : {-3.0, -1.0, 1.0, 3.0}) {
    Controls<double> c;
    c.stick_aft = c.stick_right = c.pedal_right = hand;
    c.throttle = hand;
    c.flap_rad = t.flaps.back().deflection_rad;
    AirframeState<double> s = attached();
    for (int i = 0; i < 500; ++i) {
      AirframeState<double> rate{};
      control_rates(t, s, c, rate);
      CHECK(std::abs(rate.elevator_rad) <= t.elevator.rate_limit_radps);
      CHECK(std::abs(rate.aileron_rad) <= t.aileron.rate_limit_radps);
      CHECK(std::abs(rate.rudder_rad) <= t.rudder.rate_limit_radps);
      CHECK(std::abs(rate.flap_rad) <= t.flap_rate_radps);
      s.elevator_rad += 0.01 * rate.elevator_rad;
      s.aileron_rad += 0.01 * rate.aileron_rad;
      s.rudder_rad += 0.01 * rate.rudder_rad;
      s.flap_rad += 0.01 * rate.flap_rad;
      s.throttle += 0.01 * rate.throttle;
    }
    CHECK(s.elevator_rad == Approx(hand > 0.0 ? -t.elevator.max_negative_rad : t.elevator.max_positive_rad));
    CHECK(s.aileron_rad == Approx(hand > 0.0 ? t.aileron.max_negative_rad : -t.aileron.max_negative_rad));
    CHECK(s.rudder_rad == Approx(hand > 0.0 ? -t.rudder.max_negative_rad : t.rudder.max_positive_rad));
    CHECK(s.flap_rad == Approx(t.flaps.back().deflection_rad));
    CHECK(s.throttle == Approx(hand > 0.0 ? 1.0 : 0.0).margin(1e-4));
  }
}

TEST_CASE("the aeroplane turns into the wind, rolls away from it, and pitches down when its nose is lifted",
          "[aircraft]") {
  const Aircraft a = airframe_alone();
  const Vec3<double> from_right = added_moment(a, flow_at(kSpeed, kAlpha, 5.0 * kDeg));
  CHECK(from_right.z > 0.0);  // weathercock: nose right
  CHECK(from_right.x < 0.0);  // dihedral: left wing down
  CHECK(added_moment(a, flow_at(kSpeed, kAlpha + 3.0 * kDeg)).y < 0.0);
  CHECK(measured(a, attached(), flow_at(kSpeed, kAlpha, 5.0 * kDeg)).force_B.y < 0.0);
}

TEST_CASE("the body by itself turns across the flow, by Munk's moment 2 qbar vol sin cos", "[aircraft]") {
  AircraftType type = marram_type();
  const Aircraft with = make_aircraft(type, default_loading(type), 0);
  type.body.munk_volume_m3 = 0.0;
  const Aircraft without = make_aircraft(type, default_loading(type), 0);
  const double alpha = 8.0 * kDeg, beta = 6.0 * kDeg;
  const RelativeFlow<double> flow = flow_at(kSpeed, alpha, beta);
  const Vec3<double> munk = airframe_loads(with, attached(), flow, Controls<double>{}).moment_B -
                            airframe_loads(without, attached(), flow, Controls<double>{}).moment_B;
  const double twice_qbar_volume = 1.225 * kSpeed * kSpeed * with.type.body.munk_volume_m3 * std::cos(beta);
  CHECK(munk.x == Approx(0.0).margin(1e-9));
  CHECK(munk.y == Approx(twice_qbar_volume * std::cos(beta) * std::sin(alpha) * std::cos(alpha)));  // nose up
  CHECK(munk.z == Approx(-twice_qbar_volume * std::sin(beta) * std::cos(alpha)));  // nose left, off the wind
}

TEST_CASE("rates of roll, pitch and yaw are damped", "[aircraft]") {
  const Aircraft a = airframe_alone();
  const auto turning = [](Vec3<double> rate) {
    RelativeFlow<double> flow = flow_at(kSpeed, kAlpha);
    flow.rate_B = rate;
    return flow;
  };
  CHECK(added_moment(a, turning({0.3, 0.0, 0.0})).x < -500.0);
  CHECK(added_moment(a, turning({0.0, 0.3, 0.0})).y < -100.0);
  CHECK(added_moment(a, turning({0.0, 0.0, 0.3})).z < -20.0);
  CHECK(added_moment(a, turning({0.0, 0.0, 0.3})).x > 0.0);  // nose going right: the left wing is faster
}

TEST_CASE("forces grow with the square of the speed and with density when all angles stay",
          "[aircraft][invariant]") {
  const Aircraft a = airframe_alone(7);
  const auto slow = measured(a, attached(100.0), flow_at(20.0, 0.2, 0.1));
  RelativeFlow<double> fast_flow = flow_at(30.0, 0.2, 0.1);
  fast_flow.density_kgpm3 = 0.9;
  const auto fast = measured(a, attached(150.0), fast_flow);
  const double ratio = 0.9 / 1.225 * 2.25;
  CHECK(fast.force_B.x == Approx(ratio * slow.force_B.x).epsilon(1e-3));
  CHECK(fast.force_B.z == Approx(ratio * slow.force_B.z).epsilon(1e-3));
  CHECK(fast.moment_B.y == Approx(ratio * slow.moment_B.y).epsilon(1e-3));
}

TEST_CASE("from rest to speed and in flow from anywhere the loads are finite and unbroken", "[aircraft]") {
  // Flow memory held; a fine scan over angles right round. A break would show against 0.1 deg of the steepest
  // change.
  const Aircraft a = marram(7);
  const AirframeState<double> s = settled(a, attached(), flow_at(kSpeed, 12.0 * kDeg));
  const double weight = a.mass.mass_kg * 9.80665;
  for (const double beta : {0.0, 20.0 * kDeg, -80.0 * kDeg}) {
    auto before = airframe_loads(a, s, flow_at(kSpeed, 180.0 * kDeg, beta), Controls<double>{});
    double worst = 0.0;
    for (int i = -1800; i <= 1800; ++i) {
      const auto now = airframe_loads(a, s, flow_at(kSpeed, 0.1 * i * kDeg, beta), Controls<double>{});
      REQUIRE(std::isfinite(norm(now.force_B) + norm(now.moment_B)));
      worst = std::max(worst, norm(now.force_B - before.force_B) + norm(now.moment_B - before.moment_B));
      before = now;
    }
    CAPTURE(beta, worst / weight);
    CHECK(worst < 0.04 * weight);
  }
  for (const double speed : {0.0, 1e-12, 1e-3}) {
    const auto still = airframe_loads(a, AirframeState<double>{}, flow_at(speed, 0.5), Controls<double>{});
    CHECK(std::isfinite(norm(still.force_B) + norm(still.moment_B)));
    for (const double x : still.rate.separation) CHECK(std::isfinite(x));
    CHECK(norm(still.force_B) < 5.0 * 9.81);
  }
}

TEST_CASE("flaps add lift and drag at the same angle", "[aircraft]") {
  const Aircraft a = airframe_alone();
  AirframeState<double> down = attached();
  down.flap_rad = a.type.flaps.back().deflection_rad;
  const auto clean = measured(a, attached(), flow_at(kSpeed, kAlpha)),
             out = measured(a, down, flow_at(kSpeed, kAlpha));
  CHECK(lift_n(out, kAlpha) > 1.3 * lift_n(clean, kAlpha));
  const auto drag = [](const AirframeLoads<double>& l) {
    return -l.force_B.x * std::cos(kAlpha) - l.force_B.z * std::sin(kAlpha);
  };
  CHECK(drag(out) > 1.5 * drag(clean));
}
