#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "render/outside/buildings.hpp"
#include "render/outside/land.hpp"
#include "render/outside/plants.hpp"

namespace outside = stallwright::outside;
using Catch::Matchers::WithinAbs;
using outside::Airfield;
using outside::ground_height_m;
using outside::LandSeed;
using outside::Spot;

namespace {

constexpr std::uint64_t kSeeds[] = {1, 2, 77, 123456789012345ull};

/// Calls back at places on circles about the airfield out to a radius.
template <typename Visit>
void about_airfield(double from_m, double to_m, double step_m, Visit visit) {
  for (double r = from_m; r <= to_m; r += step_m)
    for (int k = 0; k < 90; ++k)
      visit(Airfield::kMiddle.north_m + r * std::cos(k * 0.0698),
            Airfield::kMiddle.east_m + r * std::sin(k * 0.0698));
}

}  // namespace

TEST_CASE("the ground is dead level about the airfield, for any seed", "[outside][land]") {
  for (const auto seed : kSeeds)
    about_airfield(0.0, Airfield::kFlat_m - 1.0, 100.0,
                   [&](double n, double e) { CHECK(ground_height_m(n, e, seed) == 0.0); });
}

TEST_CASE("within 15 km of the airfield the ground stays below 120 m and its mean is near nought",
          "[outside][land]") {
  double highest = -1e9, lowest = 1e9;
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    const LandSeed land(seed);
    double sum = 0.0;
    int count = 0;
    about_airfield(250.0, 15000.0, 250.0, [&](double n, double e) {
      const double h = ground_height_m(n, e, land);
      sum += h;
      highest = std::max(highest, h);
      lowest = std::min(lowest, h);
      ++count;
    });
    INFO("seed " << seed << ", mean " << sum / count << " m");
    CHECK(std::abs(sum / count) < 15.0);
  }
  CHECK(highest < 120.0);
  CHECK(highest > 60.0);  // the land is not flat
  CHECK(lowest > -50.0);
}

TEST_CASE("hills stand beyond 25 km", "[outside][land]") {
  for (const auto seed : kSeeds) {
    const LandSeed land(seed);
    double highest = 0.0;
    about_airfield(25000.0, 60000.0, 500.0,
                   [&](double n, double e) { highest = std::max(highest, ground_height_m(n, e, land)); });
    INFO("seed " << seed);
    CHECK(highest > 150.0);
    CHECK(highest < 500.0);
  }
}

TEST_CASE("the ground is continuous, without end, the same for the same seed and another for another",
          "[outside][land]") {
  const LandSeed land(1);
  for (double n = -300000.0; n < 300000.0; n += 1737.0) {
    const double h = ground_height_m(n, 41000.0 + 0.3 * n, land);
    CHECK(std::isfinite(h));
    CHECK_THAT(ground_height_m(n + 0.5, 41000.0 + 0.3 * n, land), WithinAbs(h, 0.6));
    CHECK(ground_height_m(n, 41000.0 + 0.3 * n, 1) == h);
  }
  int other = 0;
  about_airfield(6000.0, 9000.0, 500.0, [&](double n, double e) {
    other += std::abs(ground_height_m(n, e, 1) - ground_height_m(n, e, 2)) > 1.0;
  });
  CHECK(other > 400);
}

TEST_CASE("the river lies in its valley and keeps away from the airfield", "[outside][land]") {
  for (const auto seed : kSeeds) {
    const LandSeed land(seed);
    about_airfield(0.0, 900.0, 100.0, [&](double n, double e) {
      const auto river = outside::river_at({n, e}, land);
      CHECK(std::abs(river.offset_m) > river.half_width_m + 100.0);
    });
    // Down the middle: sought along each parallel by halving.
    for (double n = 8000.0; n < 20000.0; n += 900.0) {
      double west = 500.0, east = 6500.0;
      for (int pass = 0; pass < 50; ++pass) {
        const double middle = 0.5 * (west + east);
        (outside::river_at({n, middle}, land).offset_m < 0.0 ? west : east) = middle;
      }
      CHECK_THAT(ground_height_m(n, west, land), WithinAbs(-11.0, 0.1));
    }
  }
}

TEST_CASE("unbent undoes bent", "[outside][land]") {
  const LandSeed land(77);
  for (double n = -9000.0; n < 9000.0; n += 1311.0) {
    const Spot at = outside::bent({n, 0.7 * n + 100.0}, land);
    const Spot back = outside::unbent(at, land);
    CHECK_THAT(back.north_m, WithinAbs(n, 0.05));
    CHECK_THAT(back.east_m, WithinAbs(0.7 * n + 100.0, 0.05));
  }
}

TEST_CASE("a field changes only at an edge, and every sixth edge is a lane", "[outside][land]") {
  const LandSeed land(1);
  int changes = 0;
  outside::FieldSpot before = outside::field_at({0.0, 4000.0}, land);
  for (double n = 1.0; n < 6000.0; n += 1.0) {
    const auto now = outside::field_at({n, 4000.0}, land);
    if (now.row != before.row) {
      ++changes;
      CHECK(std::abs(now.to_row_edge_m) < 2.0);
      CHECK(now.row_is_lane == (std::max(now.row, before.row) % outside::kLaneEvery == 0));
    }
    before = now;
  }
  CHECK(changes > 6000.0 / outside::kRow_m * 0.7);
  CHECK(changes < 6000.0 / outside::kRow_m * 1.3);
}

TEST_CASE("local is along and right of the runway, and place undoes it", "[outside][land]") {
  const Spot right = Airfield::place(0.0, 100.0);
  CHECK(right.north_m < Airfield::kMiddle.north_m);  // right of a heading of 070 is south-east
  CHECK(right.east_m > Airfield::kMiddle.east_m);
  const Spot back = Airfield::local(Airfield::place(321.0, -45.0));
  CHECK_THAT(back.north_m, WithinAbs(321.0, 1e-9));
  CHECK_THAT(back.east_m, WithinAbs(-45.0, 1e-9));
}

TEST_CASE("plants stand on the ground, off runway, river and lanes", "[outside][plants]") {
  const LandSeed land(1);
  std::vector<outside::Plant> plants;
  std::size_t total = 0;
  for (int row = -2; row <= 8; ++row)
    for (int column = -2; column <= 9; ++column) {
      const outside::ChunkKey key{0, row, column};
      outside::plants_in(key, land, plants);
      total += plants.size();
      CHECK(plants.size() <= outside::kMostPlants);
      for (const auto& plant : plants) {
        const Spot at{key.corner().north_m + plant.north_m, key.corner().east_m + plant.east_m};
        REQUIRE_THAT(plant.height_m, WithinAbs(ground_height_m(at.north_m, at.east_m, land), 0.05));
        const Spot local = Airfield::local(at);
        REQUIRE(
            (std::abs(local.north_m) > Airfield::kLength_m / 2.0 + 200.0 || std::abs(local.east_m) > 150.0));
        const auto river = outside::river_at(at, land);
        REQUIRE(std::abs(river.offset_m) > river.half_width_m);
        const auto field = outside::field_at(at, land);
        REQUIRE((!field.row_is_lane || std::abs(field.to_row_edge_m) > 2.8 ||
                 field.crop == outside::Crop::wood || std::abs(field.to_column_edge_m) < 16.0));
      }
    }
  CHECK(total > 3000);
}

TEST_CASE(
    "buildings leave the runway and its approaches free, and are the same from wherever they are asked for",
    "[outside][buildings]") {
  std::vector<outside::Building> here, there;
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    const LandSeed land(seed);
    outside::buildings_about({0.0, 0.0}, 7000.0, land, here);
    outside::buildings_about({900.0, 500.0}, 7000.0, land, there);
    INFO("seed " << seed);
    CHECK(here.size() > 60);
    std::size_t common = 0;
    for (const auto& building : here) {
      const Spot local = Airfield::local({building.north_m, building.east_m});
      CHECK((std::abs(local.north_m) > 1050.0 || std::abs(local.east_m) > 100.0));
      common += std::any_of(there.begin(), there.end(), [&](const outside::Building& other) {
        return other.north_m == building.north_m && other.east_m == building.east_m;
      });
    }
    CHECK(common > here.size() * 6 / 10);
  }
}
