#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/input_error.hpp"
#include "aircraft/mass_properties.hpp"
#include "aircraft/type_file.hpp"

using namespace stallwright;

namespace {

/// 100 kg at x = 1, z = 0 with inertia (10, 20, 25; product 2), and three stations that make round sums.
AircraftType plain_type() {
  AircraftType type;
  type.name = "Plain";
  MassType& m = type.mass;
  m.empty_kg = 100;
  m.empty_cg = {1, 0, 0};
  m.empty_ixx_kgm2 = 10;
  m.empty_iyy_kgm2 = 20;
  m.empty_izz_kgm2 = 25;
  m.empty_ixz_kgm2 = 2;
  m.stations = {{"front", {0, 0, 0}, 50, 0}, {"rear", {2, 0, 0}, 50, 0}, {"pod", {1, 3, 1}, 100, 0}};
  m.max_kg = 200;
  m.envelope_mass_kg = {100, 200};
  m.envelope_forward_m = {0.8, 0.9};
  m.envelope_aft_m = {1.2, 1.2};
  return type;
}

void check_inertia(const math::Mat3<double>& found, double xx, double yy, double zz, double xy, double xz,
                   double yz) {
  CHECK(found(0, 0) == Approx(xx));
  CHECK(found(1, 1) == Approx(yy));
  CHECK(found(2, 2) == Approx(zz));
  CHECK(found(0, 1) == Approx(-xy).margin(1e-9));
  CHECK(found(0, 2) == Approx(-xz).margin(1e-9));
  CHECK(found(1, 2) == Approx(-yz).margin(1e-9));
  CHECK(found == math::transpose(found));
}

}  // namespace

TEST_CASE("an empty aeroplane has its own mass, centre of gravity and inertia", "[mass]") {
  const MassProperties p = mass_properties(plain_type(), {{0, 0, 0}});
  CHECK(p.mass_kg == 100);
  CHECK(p.cg.x_aft_m == 1);
  check_inertia(p.inertia, 10, 20, 25, 0, 2, 0);
}

TEST_CASE("equal loads a metre ahead and behind leave the centre of gravity and add to pitch and yaw",
          "[mass]") {
  // By hand: 2 x 50 kg x (1 m)^2 = 100 kg m2 about the y and z axes, nothing about x.
  const MassProperties p = mass_properties(plain_type(), {{50, 50, 0}});
  CHECK(p.mass_kg == 200);
  CHECK(p.cg.x_aft_m == Approx(1));
  check_inertia(p.inertia, 10, 120, 125, 0, 2, 0);
}

TEST_CASE("one load moves the centre of gravity towards it by the lever rule", "[mass]") {
  // By hand: 50 kg at x = 0 to 100 kg at x = 1: cg 2/3 m; reduced mass 100/3 kg at 1 m adds 33.33 kg m2.
  const MassProperties p = mass_properties(plain_type(), {{50, 0, 0}});
  CHECK(p.cg.x_aft_m == Approx(2.0 / 3.0));
  check_inertia(p.inertia, 10, 20 + 100.0 / 3, 25 + 100.0 / 3, 0, 2, 0);
}

TEST_CASE("a load out on the right and above gives products of inertia in forward-right-down axes",
          "[mass]") {
  // By hand: 100 kg at y = 3, z up 1; cg half way. In body axes the two halves sit at +-(0, 1.5, -0.5):
  // Ixx += 200 (2.25 + 0.25) = 500, Iyy += 200 x 0.25 = 50, Izz += 200 x 2.25 = 450, Iyz = 200 x (1.5 x -0.5)
  // = -150.
  const MassProperties p = mass_properties(plain_type(), {{0, 0, 100}});
  CHECK(p.cg.y_right_m == Approx(1.5));
  CHECK(p.cg.z_up_m == Approx(0.5));
  check_inertia(p.inertia, 510, 70, 475, 0, 2, -150);
}

TEST_CASE("a load ahead and below makes the product xz positive", "[mass]") {
  // By hand: 100 kg one metre ahead and one below 100 kg: each at (0.5, 0, 0.5) forward and down, opposite
  // signs; Ixz = 200 x 0.25 = 50.
  AircraftType type = plain_type();
  type.mass.stations = {{"pod", {0, 0, -1}, 100, 0}};
  check_inertia(mass_properties(type, {{100}}).inertia, 60, 120, 75, 0, 52, 0);
}

TEST_CASE("the envelope tells which limit is broken and by how much", "[mass]") {
  using Limit = EnvelopeBreach::Limit;
  const AircraftType type = plain_type();
  CHECK(check_envelope(type, Loading{{0, 0, 0}}).empty());

  // By hand: 150 kg, cg 0.667 m; the forward limit there is half way from 0.8 to 0.9 m.
  const auto forward = check_envelope(type, Loading{{50, 0, 0}});
  REQUIRE(forward.size() == 1);
  CHECK(forward[0].limit == Limit::kForward);
  CHECK(forward[0].by == Approx(0.85 - 2.0 / 3));
  CHECK(forward[0].sentence == "centre of gravity 0.183 m ahead of the forward limit of 0.850 m");

  const auto aft = check_envelope(type, Loading{{0, 60, 0}});
  REQUIRE(aft.size() == 2);
  CHECK(aft[0].limit == Limit::kAft);
  CHECK(aft[0].by == Approx(220.0 / 160 - 1.2));
  CHECK(aft[1].limit == Limit::kStationMass);
  CHECK(aft[1].sentence == "rear 10.0 kg above its maximum of 50.0 kg");

  const auto heavy = check_envelope(type, Loading{{50, 50, 1.5}});
  REQUIRE(heavy.size() == 1);
  CHECK(heavy[0].limit == Limit::kMaximumMass);
  CHECK(heavy[0].by == Approx(1.5));
}

TEST_CASE("a loading at the limit itself is allowed", "[mass]") {
  CHECK(check_envelope(plain_type(), Loading{{50, 50, 0}}).empty());  // 200 kg, the maximum
}

TEST_CASE("a loading that does not fit the stations is refused", "[mass]") {
  CHECK_THROWS_AS(mass_properties(plain_type(), {{0, 0}}), InputError);
  CHECK_THROWS_WITH(mass_properties(plain_type(), {{0, -5, 0}}),
                    "loading: rear: expected a mass from 0 to 50.0 kg, found -5.0");
  CHECK_THROWS_AS(mass_properties(plain_type(), {{0, NAN, 0}}), InputError);
}

TEST_CASE("the reachable range is from the front filled first to the back filled first", "[mass]") {
  // By hand at 170 kg: front 50, then 20 at x = 1: (100 + 20)/170; or rear 50, then 20 at x = 1: (100 + 100 +
  // 20)/170.
  const CgRange range = reachable_range(plain_type(), 170);
  CHECK(range.forward_m == Approx(120.0 / 170));
  CHECK(range.aft_m == Approx(220.0 / 170));
  CHECK_THROWS_WITH(reachable_range(plain_type(), 90),
                    "loading: expected a mass of Plain from 100.0 to 300.0 kg, found 90.0");
}

TEST_CASE("a loading is found for any reachable mass and centre of gravity of every aeroplane", "[mass]") {
  for (const auto& name : list_aircraft_types()) {
    const AircraftType type = load_aircraft_type(find_aircraft_file(name));
    for (double share : {0.1, 0.5, 1.0}) {
      const double mass_kg = type.mass.empty_kg + share * (type.mass.max_kg - type.mass.empty_kg);
      const CgRange range = reachable_range(type, mass_kg);
      for (double t : {0.0, 0.3, 1.0}) {
        const double cg_m = range.forward_m + t * (range.aft_m - range.forward_m);
        const Loading loading = loading_for(type, mass_kg, cg_m);
        const MassProperties p = mass_properties(type, loading);
        CAPTURE(name, mass_kg, cg_m);
        CHECK(p.mass_kg == Approx(mass_kg).epsilon(1e-12));
        CHECK(p.cg.x_aft_m == Approx(cg_m).epsilon(1e-9));
        CHECK(std::abs(p.cg.y_right_m) < 1e-3 * range.aft_m + 0.02);
        for (std::size_t i = 0; i < loading.kg.size(); ++i) {
          CHECK(loading.kg[i] >= 0);
          CHECK(loading.kg[i] <= type.mass.stations[i].max_kg * (1 + 1e-12));
        }
      }
      CHECK_THROWS_AS(loading_for(type, mass_kg, range.aft_m + 0.01), InputError);
      CHECK_THROWS_AS(loading_for(type, mass_kg, range.forward_m - 0.01), InputError);
    }
  }
}

TEST_CASE("ballast puts the centre of gravity where it was asked for", "[mass]") {
  for (const auto& name : list_aircraft_types()) {
    const AircraftType type = load_aircraft_type(find_aircraft_file(name));
    const CgRange limits = envelope_range(type, type.mass.max_kg);
    const MassProperties p = ballasted(type, type.mass.max_kg, limits.forward_m);
    CAPTURE(name);
    CHECK(p.mass_kg == Approx(type.mass.max_kg));
    CHECK(p.cg.x_aft_m == limits.forward_m);
    CHECK(check_envelope(type, p).empty());
    CHECK(math::determinant(p.inertia) > 0);
  }
}

TEST_CASE("every aeroplane can be flown with its default loading, and with one pilot alone and some fuel",
          "[mass]") {
  for (const auto& name : list_aircraft_types()) {
    const AircraftType type = load_aircraft_type(find_aircraft_file(name));
    CAPTURE(name);
    CHECK(check_envelope(type, default_loading(type)).empty());
    Loading alone = default_loading(type);
    for (std::size_t i = 0; i < alone.kg.size(); ++i) {
      const bool tank = type.mass.stations[i].name.find("tank") != std::string::npos;
      if (i > 0 && !tank) alone.kg[i] = 0;
    }
    for (const auto& breach : check_envelope(type, alone)) FAIL_CHECK(breach.sentence);
  }
}
