#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/lifting_surface.hpp"
#include "tests/sim/motion/marram.hpp"

using namespace stallwright;

namespace {

/// Span 10 m, taper with a kink, dihedral 5 deg outboard, swept, washed out.
LiftingSurfaceType kinked_wing() {
  LiftingSurfaceType wing;
  wing.stations = {{0.0, 1.0, 0.3, 2.0, 0.04},
                   {2.5, 1.0, 0.3, 1.6, 0.03},
                   {5.0, 1.2, 0.3 + 2.5 * std::tan(0.0873), 0.8, 0.0}};
  return wing;
}

constexpr Station3 kCg{1.1, 0.0, 0.1};

}  // namespace

TEST_CASE("strips have the area and mean chord of the wing they are cut from", "[aircraft]") {
  // Trapezia: 2 x 2.5 x 1.8 + 2 x 2.5 x 1.2 = 15 m2; mid-point chords are exact where no strip crosses the
  // kink.
  const auto strips = make_strips(kinked_wing(), SurfaceKind::symmetric_pair, 16, kCg);
  double plan = 0.0, moment = 0.0;
  for (const Strip& s : strips) {
    const double width = 10.0 / 16.0;
    plan += s.chord_m * width;
    moment += s.chord_m * s.chord_m * width;
    CHECK(s.area_m2 == Approx(s.chord_m * s.width_m));
    CHECK(s.width_m ==
          Approx(width / (std::abs(s.span_position_m) > 2.5 ? std::cos(0.0873) : 1.0)).epsilon(1e-9));
  }
  CHECK(plan == Approx(15.0).epsilon(1e-12));
  // Mean aerodynamic chord of the trapezia, (2/S) integral c^2 dy = (2/15) 2.5 (3.2533 + 1.4933): 0.3 % for
  // mid-points.
  CHECK(moment / plan == Approx(2.0 / 15.0 * 2.5 * (3.253333 + 1.493333)).epsilon(0.003));

  const Aircraft a = testing::marram();
  CHECK(a.wing_area_m2 == Approx(10.6 * 1.5).epsilon(1e-12));
  CHECK(a.mean_chord_m == Approx(1.5).epsilon(1e-12));
  CHECK(a.span_m == Approx(10.6).epsilon(1e-12));
}

TEST_CASE("strips stand where the stations say, in body axes from the centre of gravity", "[aircraft]") {
  const auto strips = make_strips(kinked_wing(), SurfaceKind::symmetric_pair, 16, kCg);
  const Strip& left = strips[0];
  const Strip& right = strips[15];
  const double y = 5.0 - 0.3125, out = (y - 2.5) / 2.5;
  CHECK(right.r_B.x == Approx(1.1 - (1.0 + 0.2 * out)));
  CHECK(right.r_B.y == Approx(y));
  CHECK(right.r_B.z == Approx(0.1 - (0.3 + 2.5 * out * std::tan(0.0873))));
  CHECK(right.chord_m == Approx(1.6 - 0.8 * out));
  CHECK(left.r_B.y == Approx(-y));
  // Dihedral turns the lift inwards: the lower sides look outwards, and the tip stands higher.
  CHECK(right.normal_B.y == Approx(std::sin(0.0873)).epsilon(1e-3));
  CHECK(left.normal_B.y == Approx(-right.normal_B.y));
  // Nose-up twist meets level flow from below.
  CHECK(right.normal_B.x == Approx(std::sin(0.03 * (1.0 - out))).epsilon(0.01));
}

TEST_CASE("chord, span and normal of each strip are a right-handed set of unit vectors", "[aircraft]") {
  for (const auto kind : {SurfaceKind::symmetric_pair, SurfaceKind::vertical})
    for (const Strip& s : make_strips(kinked_wing(), kind, 6, kCg)) {
      CHECK(dot(s.chord_B, s.chord_B) == Approx(1.0));
      CHECK(dot(s.normal_B, s.normal_B) == Approx(1.0));
      CHECK(norm(cross(s.chord_B, s.span_B) - s.normal_B) < 1e-12);
      CHECK(std::abs(dot(s.chord_B, s.normal_B)) < 1e-12);
    }
}

TEST_CASE("a fin's strips go up from the root and their normal looks to the right", "[aircraft]") {
  const auto strips = make_strips(testing::marram_type().fin, SurfaceKind::vertical, 3, kCg);
  CHECK(strips[2].r_B.z < strips[0].r_B.z);
  CHECK(strips[1].normal_B.y == Approx(1.0));
  double area = 0.0;
  for (const Strip& s : strips) area += s.area_m2;
  CHECK(area == Approx(0.5 * (1.2 + 0.7) * 1.35).epsilon(1e-12));
}

TEST_CASE("shares of a control add up to its span", "[aircraft]") {
  // Strips of a wing with dihedral are wider than their plan by 1/cos, and their shares overlap by
  // as much: 0.6 % at 6.3 deg.
  for (const auto& name : list_aircraft_types()) {
    const AircraftType type = load_aircraft_type(find_aircraft_file(name));
    const Aircraft a = make_aircraft(type, default_loading(type), 0);
    double flap = 0.0, aileron = 0.0, elevator = 0.0, rudder = 0.0;
    for (std::size_t i = 0; i < kStrips; ++i) {
      const Strip& s = a.strips[i];
      flap += s.flap_share * s.width_m;
      (i < kWingStrips                 ? aileron
       : i < kWingStrips + kTailStrips ? elevator
                                       : rudder) += s.control_share * s.width_m;
    }
    CAPTURE(name);
    const double grant = 7e-3;
    CHECK(flap == Approx(2.0 * (type.flap_outboard_m - type.flap_inboard_m)).epsilon(grant));
    CHECK(aileron == Approx(2.0 * (type.aileron.outboard_m - type.aileron.inboard_m)).epsilon(grant));
    CHECK(elevator == Approx(2.0 * (type.elevator.outboard_m - type.elevator.inboard_m)).epsilon(grant));
    CHECK(rudder == Approx(type.rudder.outboard_m - type.rudder.inboard_m).epsilon(grant));
  }
}

TEST_CASE(
    "the wing's influence on itself is the same seen from either tip, down inside and up outside a strip",
    "[aircraft]") {
  const auto d = self_influence(make_strips(kinked_wing(), SurfaceKind::symmetric_pair, 16, kCg));
  for (std::size_t k = 0; k < 16; ++k)
    for (std::size_t j = 0; j < 16; ++j) {
      CHECK(d[k][j] == Approx(d[15 - k][15 - j]).epsilon(1e-12));
      CHECK((k == j ? d[k][j] : -d[k][j]) > 0.0);
    }
  // Even circulation leaves the tips alone to shed: downwash 1/(4 pi) (1/(b/2 - y) + 1/(b/2 + y)) with tips
  // drawn in.
  double sum = 0.0;
  for (std::size_t j = 0; j < 16; ++j) sum += d[7][j];
  const double tip = 5.0 - 0.25 * 0.625, y = 0.3125;
  CHECK(sum == Approx((1.0 / (tip - y) + 1.0 / (tip + y)) / (4.0 * M_PI)).epsilon(2e-2));
}

TEST_CASE("the wing washes down on the tail, up ahead of itself, left as right", "[aircraft]") {
  const Aircraft a = testing::marram();
  for (std::size_t k = 0; k < kTailStrips; ++k) {
    double down = 0.0;
    for (std::size_t j = 0; j < kWingStrips; ++j) {
      down += a.tail_by_wing[k][j];
      CHECK(a.tail_by_wing[k][j] ==
            Approx(a.tail_by_wing[kTailStrips - 1 - k][kWingStrips - 1 - j]).margin(1e-12));
    }
    CHECK(down > 0.0);
  }
  const auto ahead =
      point_influence(make_strips(testing::marram_type().wing, SurfaceKind::symmetric_pair, 16, a.mass.cg),
                      a.strips[3].r_B + Vec3<double>{1.0, 0.0, 0.0});
  double up = 0.0;
  for (const auto& v : ahead) up -= v.z;
  CHECK(up > 0.0);
}

TEST_CASE("seed 0 is the even airframe and another seed differs from strip to strip but is always the same",
          "[aircraft]") {
  const Aircraft even = testing::marram(0), one = testing::marram(7), again = testing::marram(7),
                 other = testing::marram(8);
  double sum2 = 0.0;
  for (std::size_t k = 0; k < kWingStrips; ++k) {
    CHECK(even.strips[k].stall_offset_rad == 0.0);
    CHECK(one.strips[k].stall_offset_rad == again.strips[k].stall_offset_rad);
    CHECK(one.strips[k].stall_offset_rad != other.strips[k].stall_offset_rad);
  }
  const AircraftType type = testing::marram_type();
  const Loading loading = default_loading(type);
  for (std::uint64_t seed = 1; seed <= 200; ++seed)
    for (const Strip& s : make_aircraft(type, loading, seed).strips)
      sum2 += s.stall_offset_rad * s.stall_offset_rad;
  // 3,200 draws: the standard deviation is known to 1.3 %; four times that.
  CHECK(std::sqrt(sum2 / (200.0 * kWingStrips)) == Approx(even.type.asymmetry.stall_sd_rad).epsilon(0.05));
}

TEST_CASE("separation spreads to neighbours, evenly to both sides, and leaves an even wing as it is",
          "[aircraft]") {
  for (const auto& name : list_aircraft_types()) {
    const AircraftType type = load_aircraft_type(find_aircraft_file(name));
    const Aircraft a = make_aircraft(type, default_loading(type), 0);
    CAPTURE(name);
    for (std::size_t i = 0; i < kWingStrips; ++i) {
      double sum = 0.0;
      for (std::size_t j = 0; j < kWingStrips; ++j) {
        const double share = a.separation_spread[i][j];
        sum += share;
        CHECK(share > 0.0);
        CHECK(share <= a.separation_spread[j][j]);
        CHECK(share == Approx(a.separation_spread[kWingStrips - 1 - i][kWingStrips - 1 - j]).epsilon(1e-12));
      }
      CHECK(sum == Approx(1.0).epsilon(1e-13));
    }
    // The defining equation, at a strip in the middle and at the tip.
    const auto residual = [&](std::size_t i, std::size_t j) {
      const double length = kSpreadChords * a.strips[i].chord_m / a.strips[i].width_m;
      double x = a.separation_spread[i][j] - (i == j ? 1.0 : 0.0);
      if (i > 0) x -= length * length * (a.separation_spread[i - 1][j] - a.separation_spread[i][j]);
      if (i + 1 < kWingStrips)
        x -= length * length * (a.separation_spread[i + 1][j] - a.separation_spread[i][j]);
      return x;
    };
    for (const std::size_t i : {0u, 6u, 15u})
      for (std::size_t j = 0; j < kWingStrips; ++j) CHECK(std::abs(residual(i, j)) < 1e-13);
  }
}
