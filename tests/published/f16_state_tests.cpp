#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <string>

#include "sim/motion/runge_kutta.hpp"
#include "tests/published/csv_rows.hpp"
#include "tests/published/evidence.hpp"
#include "tests/published/f16_model.hpp"

using namespace stallwright;
using namespace stallwright::published;

namespace {

/// Rates of speed, angles and power are remembered and confirmed by recomputation, the others read.
evidence::Published source(std::size_t row) {
  const bool read = row >= 6 && row <= 11;
  return {"STEVENS_LEWIS", "table 3.5-2 (3rd ed.)", read ? "read in a copy" : "from memory"};
}

struct Row {
  const char *quantity, *unit;
};
const std::array<Row, 13> kRows{{{"true airspeed", "ft/s2"},
                                 {"angle of attack", "rad/s"},
                                 {"sideslip", "rad/s"},
                                 {"roll angle", "rad/s"},
                                 {"pitch angle", "rad/s"},
                                 {"heading", "rad/s"},
                                 {"p", "rad/s2"},
                                 {"q", "rad/s2"},
                                 {"r", "rad/s2"},
                                 {"distance north", "ft/s"},
                                 {"distance east", "ft/s"},
                                 {"altitude", "ft/s"},
                                 {"engine power", "%/s"}}};

/// The point of the table [STEVENS_LEWIS, table 3.5-2], its rows being VT, alpha, beta, phi, theta, psi, P, Q, R, north, east, altitude, power.
F16State point(const std::vector<std::vector<double>>& rows) {
  const auto at = [&](std::size_t i) { return rows.at(i).at(1); };
  const double speed = at(0) * kFoot_m;
  F16State s;
  s.rigid.velocity_B_mps = {speed * std::cos(at(2)) * std::cos(at(1)), speed * std::sin(at(2)),
                            speed * std::cos(at(2)) * std::sin(at(1))};
  s.rigid.attitude_EB = quaternion(EulerAngles<double>{at(5), at(4), at(3)});
  s.rigid.rate_B_radps = {at(6), at(7), at(8)};
  s.rigid.position_E_m = {at(9) * kFoot_m, at(10) * kFoot_m, -at(11) * kFoot_m};
  s.power_pct = at(12);
  s.throttle = 0.9;
  s.elevator_rad = 20.0 * kDegree;
  s.aileron_rad = -15.0 * kDegree;
  s.rudder_rad = -20.0 * kDegree;
  return s;
}

/// The numbers of the table's rows, of a state.
std::array<double, 13> numbers(const F16State& s) {
  const Vec3<double>&v = s.rigid.velocity_B_mps, &w = s.rigid.rate_B_radps, &r = s.rigid.position_E_m;
  const EulerAngles<double> e = euler_angles(s.rigid.attitude_EB);
  return {norm(v) / kFoot_m,
          std::atan2(v.z, v.x),
          std::asin(v.y / norm(v)),
          e.roll_rad,
          e.pitch_rad,
          e.yaw_rad,
          w.x,
          w.y,
          w.z,
          r.x / kFoot_m,
          r.y / kFoot_m,
          -r.z / kFoot_m,
          s.power_pct};
}

/// Their rates: what the state has become a moment later less what it was a moment before, along its own rate. The
/// table's speed and angles are no numbers of ours, so the difference stands in for the chain rule; its error is 1e-9.
std::array<double, 13> rates(const F16& model, const F16State& s) {
  constexpr double h = 1e-5;
  const F16State rate = model.rate(s);
  const auto moved = [&](double step) {
    return numbers(runge_kutta_step(s, step, [&](const F16State&) { return rate; }));
  };
  std::array<double, 13> after = moved(h);
  const std::array<double, 13> before = moved(-h);
  for (std::size_t i = 0; i < after.size(); ++i) after[i] = (after[i] - before[i]) / (2.0 * h);
  return after;
}

}  // namespace

TEST_CASE("the F-16 of the tables has the book's state derivatives", "[motion][published]") {
  const auto rows = csv_rows("f16_state_derivative.csv");
  REQUIRE(rows.size() == 13);
  F16 model;
  model.xcg = 0.40;
  const std::array<double, 13> found = rates(model, point(rows));
  for (std::size_t i = 0; i < rows.size(); ++i)
    evidence::hold(source(i), std::string("F-16, rate of ") + kRows[i].quantity, found[i], rows[i][2],
                   1e-6 * std::abs(rows[i][2]), kRows[i].unit, "1e-6 of the value: seven digits are printed");
}

TEST_CASE("exact moments of inertia move the F-16's angular accelerations as recomputed",
          "[motion][published]") {
  const auto rows = csv_rows("f16_state_derivative.csv");
  F16 model;
  model.xcg = 0.40;
  model.inertia = exact_inertia(1.0 / 1.57e-3);
  const std::array<double, 13> found = rates(model, point(rows));
  // The recomputed column has seven digits; the book's rounded constants are 2e-4 away from it.
  for (const std::size_t i : {6u, 7u, 8u}) {
    CAPTURE(i);
    CHECK(std::abs(found[i] - rows[i][4]) < 1e-6 * std::abs(rows[i][4]));
  }
}
