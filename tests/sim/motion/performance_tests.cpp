#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "sim/motion/performance.hpp"
#include "tests/sim/motion/marram.hpp"

using namespace stallwright;
using namespace stallwright::testing;

namespace {

constexpr double kStall_mps = 21.0;  // near Marram's; where the searches over speed begin

TrimCondition glide_at(double speed_mps) {
  TrimCondition c;
  c.power = TrimCondition::Power::throttle;
  c.true_airspeed_mps = speed_mps;
  return c;
}

}  // namespace

TEST_CASE("book figures are flown at maximum mass and the forward limit there, with an even airframe",
          "[motion]") {
  const AircraftType type = marram_type();
  const Aircraft a = book_aircraft(type);
  CHECK(a.mass.mass_kg == Approx(type.mass.max_kg));
  CHECK(a.mass.cg.x_aft_m == Approx(envelope_range(type, type.mass.max_kg).forward_m));
  for (const Strip& strip : a.strips) CHECK(strip.stall_offset_rad == 0.0);
}

TEST_CASE("a steady glide exists just above the stall speed and none just below it", "[motion]") {
  // Of an aeroplane whose elevator reaches the stall at the forward limit too, which the docile one's does not.
  const Aircraft a = book_aircraft(load_aircraft_type(find_aircraft_file("sarsen")));
  const StallFigure stall = stall_figure(a, 0.0);
  REQUIRE(stall.limit == StallFigure::Limit::lift);
  TrimCondition c = glide_at(kUnset);
  Trim near;
  bool have = false;
  for (double alpha = 4.0 * math::kDegree; alpha < stall.alpha_rad - 0.4 * math::kDegree;
       alpha += 0.5 * math::kDegree) {
    c.alpha_rad = alpha;
    const Trim t = find_trim(a, c, have ? &near : nullptr);
    REQUIRE(t.converged);
    near = t;
    have = true;
  }
  CHECK(find_trim(a, glide_at(1.003 * stall.speed_mps), &near).converged);
  CHECK_FALSE(find_trim(a, glide_at(0.997 * stall.speed_mps), &near).converged);
  // Weight is what the lift coefficient and the speed are made of.
  const double qbar = 0.5 * 1.225 * stall.speed_mps * stall.speed_mps;
  CHECK(stall.cl_max * qbar * a.wing_area_m2 == Approx(a.mass.mass_kg * gravity(0.0)).epsilon(1e-3));
}

TEST_CASE("where the elevator runs out first, the stall is where the stick meets its stop", "[motion]") {
  AircraftType type = marram_type();
  const StallFigure free = stall_figure(book_aircraft(type), 0.0);
  type.elevator.max_negative_rad *= 0.6;
  const Aircraft short_of_elevator = book_aircraft(type);
  const StallFigure held = stall_figure(short_of_elevator, 0.0);
  CHECK(held.limit == StallFigure::Limit::elevator);
  CHECK(held.stick_aft == Approx(1.0).epsilon(1e-9));
  CHECK(held.speed_mps > free.speed_mps + 0.3);
  // The same flight, trimmed for its speed, has its stick there.
  const Trim t = find_trim(short_of_elevator, glide_at(held.speed_mps));
  REQUIRE(t.converged);
  CHECK(t.controls.stick_aft == Approx(1.0).epsilon(0.01));
}

TEST_CASE("each notch of flap lowers the stall speed of each aeroplane", "[motion]") {
  for (const std::string& name : list_aircraft_types()) {
    const AircraftType type = load_aircraft_type(find_aircraft_file(name));
    const Aircraft a = book_aircraft(type);
    double above = 1e9;
    for (const FlapSetting& flap : type.flaps) {
      const StallFigure s = stall_figure(a, flap.deflection_rad);
      CAPTURE(name, flap.deflection_rad, above, s.speed_mps);
      CHECK(s.speed_mps < above);
      above = s.speed_mps;
    }
  }
}

TEST_CASE("the inverse square of the best glide ratio grows linearly with drag area", "[motion]") {
  // For a parabolic polar C_D = C_D0 + k C_L^2 it is 4 k C_D0; sections and slow flight bend the polar by
  // little.
  double inverse_square[3], speed[3];
  for (int i = 0; i < 3; ++i) {
    AircraftType type = marram_type();
    type.body.drag_area_m2 += 0.1 * i;
    const BestFigure best = best_glide(book_aircraft(type), kStall_mps, false);
    inverse_square[i] = 1.0 / (best.value * best.value);
    speed[i] = best.speed_mps;
  }
  const double first = inverse_square[1] - inverse_square[0], second = inverse_square[2] - inverse_square[1];
  CAPTURE(first, second);
  CHECK(first > 0.0);
  CHECK(second / first == Approx(1.0).epsilon(0.03));
  CHECK(speed[0] > speed[1]);
  CHECK(speed[1] > speed[2]);
}

TEST_CASE("no neighbouring speed climbs better than the best", "[motion]") {
  const Aircraft a = book_aircraft(marram_type());
  const BestFigure best = best_climb(a, kStall_mps);
  for (const double by : {-2.0, 0.0, 2.0}) {
    TrimCondition c = glide_at(best.speed_mps + by);
    c.throttle = 1.0;
    const Trim t = find_trim(a, c);
    REQUIRE(t.converged);
    CAPTURE(by, best.value, t.climb_mps);
    if (by == 0.0)
      CHECK(t.climb_mps == Approx(best.value).epsilon(1e-4));
    else
      CHECK(t.climb_mps < best.value);
  }
}

TEST_CASE("the cruise takes the stated share of rated power, and more power a knot faster", "[motion]") {
  const Aircraft a = book_aircraft(marram_type());
  for (const double share : {0.65, 0.75}) {
    const CruiseFigure found = cruise(a, kStall_mps, share);
    const auto power = [&](double speed) {
      TrimCondition c;
      c.true_airspeed_mps = speed;
      const Trim t = find_trim(a, c);
      REQUIRE(t.converged);
      return flight_derivative(a, t.state, t.controls, trim_air(c)).loads.shaft_power_w /
             a.type.engine.rated_power_w;
    };
    CHECK(power(found.speed_mps) == Approx(share).epsilon(1e-4));
    CHECK(power(found.speed_mps + kKnot) > share + 0.005);
  }
}

TEST_CASE("the roll rate per aileron comes near strip theory's as the lift coefficient falls", "[motion]") {
  // Strip theory of a constant chord, ailerons from y1 to y2 on a semispan s: rolling stops to speed up where
  //   p/d = V t (y2^2 - y1^2)/2 / (s^3/3),  t effectiveness, times the mean of the two ailerons' travel.
  // Flight falls short of it by adverse yaw and the dihedral that answers it, the more the slower (class
  // experience).
  const Aircraft a = book_aircraft(marram_type());
  const ControlSurface& aileron = a.type.aileron;
  const double travel = 0.5 * (1.0 + aileron.max_positive_rad / aileron.max_negative_rad);
  const double semispan = 0.5 * a.span_m;
  const double square = aileron.outboard_m * aileron.outboard_m - aileron.inboard_m * aileron.inboard_m;
  const double per_speed =
      aileron.effectiveness * travel * 0.5 * square / (semispan * semispan * semispan / 3.0);
  const double slow = roll_response_ps(a, 34.0) / (34.0 * per_speed);
  const double fast = roll_response_ps(a, 51.0) / (51.0 * per_speed);
  CAPTURE(slow, fast);
  CHECK(slow > 0.65);
  CHECK(fast > slow);
  CHECK(fast < 1.0);
}

TEST_CASE("near the stall the ailerons of each aeroplane roll it less than speed alone explains",
          "[motion]") {
  for (const std::string& name : list_aircraft_types()) {
    const Aircraft a = book_aircraft(load_aircraft_type(find_aircraft_file(name)));
    const double stall = stall_figure(a, 0.0).speed_mps;
    const double ratio = roll_response_ps(a, 1.05 * stall) / roll_response_ps(a, 1.5 * stall);
    CAPTURE(name, ratio);
    CHECK(ratio > 0.0);
    CHECK(ratio < 0.7);
  }
}
