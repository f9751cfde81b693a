#include <catch2/catch.hpp>
#include <cmath>

#include "tests/sim/motion/marram.hpp"
#include "tests/sim/motion/stall_entry.hpp"

using namespace stallwright;
using namespace stallwright::testing;

namespace {

Vec3<double> mirrored_vector(const Vec3<double>& v) { return {v.x, -v.y, v.z}; }
/// Rates and moments are axial: their x and z change sign instead.
Vec3<double> mirrored_rate(const Vec3<double>& w) { return {-w.x, w.y, -w.z}; }

/// The flight as seen in a mirror along the plane of symmetry.
FlightState<double> mirrored(const FlightState<double>& s) {
  FlightState<double> m = s;
  m.rigid.position_E_m = mirrored_vector(s.rigid.position_E_m);
  m.rigid.velocity_B_mps = mirrored_vector(s.rigid.velocity_B_mps);
  m.rigid.rate_B_radps = mirrored_rate(s.rigid.rate_B_radps);
  const Quaternion<double>& q = s.rigid.attitude_EB;
  m.rigid.attitude_EB = {q.w, -q.x, q.y, -q.z};
  const auto swap = [&](auto& to, const auto& from, std::size_t first, std::size_t count) {
    for (std::size_t k = 0; k < count; ++k) to[first + k] = from[first + count - 1 - k];
  };
  const AirframeState<double>& f = s.airframe;
  for (const auto& [first, count] :
       {std::pair{std::size_t{0}, kWingStrips}, std::pair{kWingStrips, kTailStrips}}) {
    swap(m.airframe.inflow_mps, f.inflow_mps, first, count);
    swap(m.airframe.lagged_alpha_rad, f.lagged_alpha_rad, first, count);
    swap(m.airframe.separation, f.separation, first, count);
  }
  swap(m.airframe.downwash_mps, f.downwash_mps, 0, kTailStrips);
  for (double& w : m.airframe.sidewash_mps) w = -w;
  for (std::size_t k = kWingStrips + kTailStrips; k < kStrips; ++k) {
    m.airframe.inflow_mps[k] = -f.inflow_mps[k];
    m.airframe.lagged_alpha_rad[k] = -f.lagged_alpha_rad[k];
  }
  m.airframe.aileron_rad = -f.aileron_rad;
  m.airframe.rudder_rad = -f.rudder_rad;
  return m;
}

Controls<double> mirrored(Controls<double> c) {
  c.stick_right = -c.stick_right;
  c.pedal_right = -c.pedal_right;
  return c;
}

AirSample<double> mirrored(const AirSample<double>& air) {
  AirSample<double> m = air;
  m.wind_E_mps = mirrored_vector(air.wind_E_mps);
  m.gust_B_mps = mirrored_vector(air.gust_B_mps);
  m.gust_rate_B_radps = mirrored_rate(air.gust_rate_B_radps);
  for (std::size_t k = 0; k < kShakes; k += 2) std::swap(m.shake[k], m.shake[k + 1]);
  return m;
}

/// Midway between a flight and its image: nothing to the left or right.
FlightState<double> evened(const FlightState<double>& s) {
  auto x = std::bit_cast<AsArray<double, FlightState<double>>>(s);
  const auto y = std::bit_cast<AsArray<double, FlightState<double>>>(mirrored(s));
  for (std::size_t i = 0; i < x.size(); ++i) x[i] = 0.5 * (x[i] + y[i]);
  auto even = std::bit_cast<FlightState<double>>(x);
  even.rigid.attitude_EB = normalised(even.rigid.attitude_EB);
  return even;
}

double distance(const FlightState<double>& a, const FlightState<double>& b) {
  const auto x = std::bit_cast<AsArray<double, FlightState<double>>>(a);
  const auto y = std::bit_cast<AsArray<double, FlightState<double>>>(b);
  double worst = 0.0;
  for (std::size_t i = 0; i < x.size(); ++i) worst = std::max(worst, std::abs(x[i] - y[i]));
  return worst;
}

struct Seen {
  double worst = 0.0, most_alpha = 0.0, roll = 0.0;
};

/// Flies both sides of the mirror for some seconds and compares all numbers of the state.
Seen compare(const Aircraft& a, const Aircraft& reflected, FlightState<double> s, const Controls<double>& c,
             const AirSample<double>& air, int seconds) {
  FlightState<double> m = mirrored(s);
  Seen seen;
  for (int i = 0; i < 100 * seconds; ++i) {
    s = flight_step(a, s, c, air);
    m = flight_step(reflected, m, mirrored(c), mirrored(air));
    seen.worst = std::max(seen.worst, distance(mirrored(s), m));
    seen.most_alpha = std::max(seen.most_alpha, alpha_rad(s));
  }
  seen.roll = std::abs(euler_angles(s.rigid.attitude_EB).roll_rad);
  return seen;
}

Controls<double> crossed_hands() {
  Controls<double> c;
  c.stick_aft = 1.0;
  c.stick_right = 0.3;
  c.pedal_right = -0.4;
  return c;
}

}  // namespace

TEST_CASE("mirrored state, hands, gusts and airframe fly the mirrored stall to round-off",
          "[motion][invariant]") {
  // The propeller's handed effects are off: a propeller has no mirror image on this aeroplane. Sums over the
  // strips run in the other order, so bits differ; the stall makes little of them in 5 s: 1e-9 of m, m/s and
  // rad.
  const Aircraft a = even_handed(marram_type(), 7);
  const Flight f = stall_entry(marram(7), 21.5, 1.0);
  AirSample<double> air;
  air.wind_E_mps = {3.0, 4.0, 0.0};
  air.gust_B_mps = {0.5, -0.8, -0.6};
  air.gust_rate_B_radps = {0.04, 0.01, -0.02};
  air.shake = {0.7, -1.1, 0.4, 0.9, -0.3, 1.6};
  const Seen seen = compare(a, stallwright::mirrored(a), f.state, crossed_hands(), air, 5);
  CHECK(seen.most_alpha > 14.0 * math::kDegree);
  CHECK(seen.roll > 5.0 * math::kDegree);
  CHECK(seen.worst < 1e-9);
}

TEST_CASE("the mirror holds for a load on one side", "[motion][invariant]") {
  AircraftType type = marram_type();
  Loading loading = default_loading(type);
  std::size_t tank = 0;
  while (type.mass.stations[tank].at.y_right_m == 0.0) ++tank;
  loading.kg[tank] = 0.0;
  const Aircraft even = even_handed(type, 3);
  Aircraft a = make_aircraft(even.type, loading, 3);
  a.idle_throttle = 0.0;
  REQUIRE(std::abs(a.mass.cg.y_right_m) > 0.01);
  const Flight f = stall_entry(marram(3), 24.0, 0.9);
  const Aircraft reflected = stallwright::mirrored(a);
  const Seen seen = compare(a, reflected, f.state, crossed_hands(), AirSample<double>{}, 4);
  CHECK(seen.worst < 1e-9);
  CHECK(norm(mirrored_vector(
                 probe_velocity(a, f.state.airframe, relative_flow(f.state.rigid, AirSample<double>{}))) -
             probe_velocity(reflected, mirrored(f.state).airframe,
                            relative_flow(mirrored(f.state).rigid, AirSample<double>{}))) < 1e-12);
}

TEST_CASE("a mirrored mirror image is the aeroplane itself", "[aircraft][invariant]") {
  const Aircraft a = marram(7), twice = stallwright::mirrored(stallwright::mirrored(a));
  for (std::size_t k = 0; k < kStrips; ++k) {
    CHECK(twice.strips[k].r_B == a.strips[k].r_B);
    CHECK(twice.strips[k].normal_B == a.strips[k].normal_B);
    CHECK(twice.strips[k].stall_offset_rad == a.strips[k].stall_offset_rad);
  }
  CHECK(twice.wing_influence == a.wing_influence);
  CHECK(twice.mass.inertia == a.mass.inertia);
}

TEST_CASE("the wing whose strips stall first drops", "[motion]") {
  // Both airframes enter the same even stall, hands off the ailerons; the right wing's stall angle is 1 deg
  // less.
  Aircraft a = even_handed(marram_type());
  for (std::size_t k = kWingStrips / 2; k < kWingStrips; ++k)
    a.strips[k].stall_offset_rad = -1.0 * math::kDegree;
  const Flight f = stall_entry(marram(), 24.0, 0.9);
  Controls<double> c;
  c.stick_aft = f.controls.stick_aft;
  for (const bool right_first : {true, false}) {
    const Aircraft& flown = right_first ? a : stallwright::mirrored(a);
    FlightState<double> s = evened(f.state);
    for (int i = 0; i < 450; ++i) s = flight_step(flown, s, c, AirSample<double>{});
    const double roll = euler_angles(s.rigid.attitude_EB).roll_rad;
    CAPTURE(right_first, roll);
    CHECK((right_first ? roll : -roll) > 5.0 * math::kDegree);
  }
}
