#include "render/outside/buildings.hpp"

#include <cmath>
#include <numbers>

#include "render/outside/noise.hpp"

namespace stallwright::outside {
namespace {

constexpr double kBlockNorth_m = kRow_m * kLaneEvery, kBlockEast_m = kColumn_m * kLaneEvery;

struct Size {
  double half_length, half_width, wall, roof;
};

/// One block between lanes, in bent coordinates; draws numbers for what stands in it.
class Block {
 public:
  Block(std::int32_t row, std::int32_t column, const LandSeed& seed, std::vector<Building>& out)
      : row_(row), column_(column), seed_(seed), out_(out) {}

  double draw(std::uint32_t what) const { return mixed_share(row_, column_, seed_.salt + 500u + what); }

  /// At a bent place from the block's south-west crossing, its length along east (or north).
  void build(double north_m, double east_m, bool along_north, const Size& size, double kind, double tint) {
    const Spot at{row_ * kBlockNorth_m + north_m, column_ * kBlockEast_m + east_m};
    const Spot place = unbent(at, seed_);
    const Spot ahead =
        unbent({at.north_m + (along_north ? 10.0 : 0.0), at.east_m + (along_north ? 0.0 : 10.0)}, seed_);
    const Spot field = Airfield::local(place);
    if (std::abs(field.north_m) < 1100.0 && std::abs(field.east_m) < 260.0) return;
    const RiverSpot river = river_at(place, seed_);
    if (std::abs(river.offset_m) < river.half_width_m + 40.0) return;
    const double n = ahead.north_m - place.north_m, e = ahead.east_m - place.east_m,
                 length = std::hypot(n, e);
    out_.push_back({static_cast<float>(place.north_m), static_cast<float>(place.east_m),
                    static_cast<float>(ground_height_m(place.north_m, place.east_m, seed_)),
                    static_cast<float>(n / length), static_cast<float>(e / length),
                    static_cast<float>(size.half_length), static_cast<float>(size.half_width),
                    static_cast<float>(size.wall), static_cast<float>(size.roof), static_cast<float>(kind),
                    static_cast<float>(tint)});
  }

 private:
  std::int32_t row_, column_;
  const LandSeed& seed_;
  std::vector<Building>& out_;
};

constexpr Size kHouse{6.5, 4.2, 5.0, 3.4}, kBarn{14.0, 7.0, 5.2, 3.6}, kLongBarn{21.0, 8.5, 5.5, 3.2};

void add_farm(Block& block) {
  if (block.draw(1) > 0.62) return;
  const double east = (0.15 + 0.7 * block.draw(2)) * kBlockEast_m, north = 52.0;
  block.build(north, east, false, kHouse, 1.0, block.draw(3));
  block.build(north + 34.0, east - 26.0, true, kBarn, 0.0, block.draw(4));
  block.build(north + 44.0, east + 14.0, false, kLongBarn, 0.0, block.draw(5));
  if (block.draw(6) < 0.5) block.build(north + 20.0, east + 44.0, true, kBarn, 0.0, block.draw(7));
}

void add_cottages(Block& block) {
  for (std::uint32_t k = 0; k < 3; ++k)
    if (block.draw(20 + k) < 0.55)
      block.build((0.1 + 0.8 * block.draw(30 + k)) * kBlockNorth_m, block.draw(40 + k) < 0.5 ? 24.0 : -24.0,
                  true, kHouse, 1.0, block.draw(50 + k));
}

void add_village(Block& block) {
  if (block.draw(8) > 0.20) return;
  for (std::uint32_t k = 0; k < 7; ++k)
    for (const double side : {-1.0, 1.0}) {
      const double along = (k - 3.0) * 34.0 + 9.0 * block.draw(60 + k);
      if (std::abs(along) < 20.0) continue;
      block.build(side * 23.0, along, false, kHouse, 1.0, block.draw(70 + k + (side > 0.0 ? 10u : 0u)));
      if (k % 2 == 0) block.build(along, side * 23.0, true, kHouse, 1.0, block.draw(100 + k));
    }
  block.build(52.0, 46.0, false, {13.0, 4.5, 8.0, 5.0}, 1.0, 0.2);
}

void add_hangar(double along_m, double across_m, const Size& size, double kind, std::vector<Building>& out) {
  const Spot place = Airfield::place(along_m, across_m);
  const double heading = Airfield::kHeading_deg * std::numbers::pi / 180.0;
  out.push_back({static_cast<float>(place.north_m), static_cast<float>(place.east_m), 0.0f,
                 static_cast<float>(std::cos(heading)), static_cast<float>(std::sin(heading)),
                 static_cast<float>(size.half_length), static_cast<float>(size.half_width),
                 static_cast<float>(size.wall), static_cast<float>(size.roof), static_cast<float>(kind),
                 0.5f});
}

}  // namespace

void buildings_about(Spot place, double reach_m, const LandSeed& seed, std::vector<Building>& buildings) {
  buildings.clear();
  // Bending moves a place by up to 370 m.
  const double reach = reach_m + 370.0;
  const auto index = [](double x, double size) { return static_cast<std::int32_t>(std::floor(x / size)); };
  for (auto row = index(place.north_m - reach, kBlockNorth_m);
       row <= index(place.north_m + reach, kBlockNorth_m); ++row)
    for (auto column = index(place.east_m - reach, kBlockEast_m);
         column <= index(place.east_m + reach, kBlockEast_m); ++column) {
      Block block(row, column, seed, buildings);
      add_farm(block);
      add_cottages(block);
      add_village(block);
    }
  if (std::hypot(place.north_m - Airfield::kMiddle.north_m, place.east_m - Airfield::kMiddle.east_m) >
      reach_m + 500.0)
    return;
  add_hangar(20.0, 150.0, {17.0, 11.0, 6.0, 3.0}, 2.0, buildings);
  add_hangar(66.0, 150.0, {17.0, 11.0, 6.0, 3.0}, 2.0, buildings);
  add_hangar(110.0, 148.0, {9.0, 5.0, 3.4, 2.4}, 1.0, buildings);
}

}  // namespace stallwright::outside
