#include "render/outside/land.hpp"

#include <cmath>
#include <numbers>

#include "render/outside/noise.hpp"

namespace stallwright::outside {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kRiverApart_m = 24000.0, kRiverEast_m = 3500.0, kLakeApart_m = 15000.0;

/// Rolling ground of a few kilometres' wave, and hills that grow with the distance from the airfield.
/// At most 21 + 8 + 83.4 x 1.12 - 9 = 114 m within 15 km.
double relief_m(double north_m, double east_m, double from_airfield_m, std::uint32_t salt) {
  const double rolling = 21.0 * value_noise(north_m / 1700.0, east_m / 1700.0, salt + 1) +
                         8.0 * value_noise(north_m / 640.0, east_m / 640.0, salt + 2);
  const double shape = 0.65 * value_noise(north_m / 6000.0, east_m / 6000.0, salt + 3) +
                       0.35 * value_noise(north_m / 2500.0, east_m / 2500.0, salt + 4);
  const double hill = std::fmax(0.0, shape + 0.30) / 1.30;
  const double rough = 0.12 * value_noise(north_m / 900.0, east_m / 900.0, salt + 5);
  const double top_m = 80.0 + 370.0 * smooth_step(14000.0, 32000.0, from_airfield_m);
  return rolling + top_m * hill * hill * (1.0 + rough) - 9.0;
}

std::int32_t nearest_edge(double share, double& edge, std::uint32_t salt, std::int32_t other) {
  const auto index = static_cast<std::int32_t>(std::floor(share + 0.5));
  const bool lane = index % kLaneEvery == 0;
  edge = index + (lane ? 0.0 : 0.6 * mixed_share(index, other, salt) - 0.3);
  return index;
}

/// Some edges between columns are missing, never two in a row: the field is as wide as two.
bool edge_missing(std::int32_t column, std::int32_t row, std::uint32_t salt) {
  return column % 2 != 0 && column % kLaneEvery != 0 && mixed_bits(column, row, salt) % 100u < 38u;
}

Crop crop_of(std::int32_t row, std::int32_t column, std::uint32_t salt) {
  const std::uint32_t bits = mixed_bits(row, column, salt + 13);
  if ((bits >> 8) % 100u < 9u) return Crop::wood;
  constexpr std::array<Crop, 16> kShares = {Crop::pasture,  Crop::pasture,  Crop::pasture, Crop::pasture,
                                            Crop::pasture,  Crop::hay,      Crop::hay,     Crop::wheat,
                                            Crop::wheat,    Crop::wheat,    Crop::barley,  Crop::barley,
                                            Crop::ploughed, Crop::ploughed, Crop::oilseed, Crop::fallow};
  return kShares[bits & 15u];
}

}  // namespace

LandSeed::LandSeed(std::uint64_t world_seed)
    : salt(mixed_bits(static_cast<std::int32_t>(world_seed & 0xffffffffu),
                      static_cast<std::int32_t>(world_seed >> 32), 0x51A11u)) {
  for (std::size_t i = 0; i < phase_rad.size(); ++i)
    phase_rad[i] =
        static_cast<float>(2.0 * std::numbers::pi * mixed_share(static_cast<std::int32_t>(i), 77, salt));
}

Spot Airfield::local(Spot place) {
  const double n = place.north_m - kMiddle.north_m, e = place.east_m - kMiddle.east_m;
  const double c = std::cos(kHeading_deg * kDegree), s = std::sin(kHeading_deg * kDegree);
  return {n * c + e * s, e * c - n * s};
}

Spot Airfield::place(double along_m, double across_m) {
  const double c = std::cos(kHeading_deg * kDegree), s = std::sin(kHeading_deg * kDegree);
  return {kMiddle.north_m + along_m * c - across_m * s, kMiddle.east_m + along_m * s + across_m * c};
}

RiverSpot river_at(Spot place, const LandSeed& seed) {
  const double n = place.north_m;
  const double a = n / 2400.0 + seed.phase_rad[4], b = n / 760.0 + seed.phase_rad[5];
  const double middle = kRiverEast_m + 800.0 * std::sin(a) + 240.0 * std::sin(b);
  const double slope = 800.0 / 2400.0 * std::cos(a) + 240.0 / 760.0 * std::cos(b);
  double offset = place.east_m - middle;
  offset -= kRiverApart_m * std::floor(offset / kRiverApart_m + 0.5);
  double along = n - 4600.0;
  along -= kLakeApart_m * std::floor(along / kLakeApart_m + 0.5);
  const double lake = std::fmax(0.0, 1.0 - along * along / (750.0 * 750.0));
  return {offset / std::sqrt(1.0 + slope * slope), 13.0 + 230.0 * lake * lake};
}

double ground_height_m(double north_m, double east_m, const LandSeed& seed) {
  const double from_airfield =
      std::hypot(north_m - Airfield::kMiddle.north_m, east_m - Airfield::kMiddle.east_m);
  const double rise = smooth_step(Airfield::kFlat_m, 3600.0, from_airfield);
  if (rise == 0.0) return 0.0;
  const RiverSpot river = river_at({north_m, east_m}, seed);
  const double dry = std::fmax(0.0, std::abs(river.offset_m) - river.half_width_m - 20.0) / 420.0;
  const double valley = std::exp(-dry * dry);
  return rise * std::lerp(relief_m(north_m, east_m, from_airfield, seed.salt), -11.0, valley);
}

double ground_height_m(double north_m, double east_m, std::uint64_t seed) {
  return ground_height_m(north_m, east_m, LandSeed(seed));
}

Spot bent(Spot place, const LandSeed& seed) {
  const auto& p = seed.phase_rad;
  const double n = place.north_m, e = place.east_m;
  return {n + 210.0 * std::sin(e / 1500.0 + p[0]) + 52.0 * std::sin((n + e) / 520.0 + p[1]),
          e + 210.0 * std::sin(n / 1500.0 + p[2]) + 52.0 * std::sin((n - e) / 520.0 + p[3])};
}

Spot unbent(Spot wanted, const LandSeed& seed) {
  // The bending is a contraction (its slopes add up to 0.24), so going back by the error converges.
  Spot guess = wanted;
  for (int pass = 0; pass < 8; ++pass) {
    const Spot at = bent(guess, seed);
    guess.north_m += wanted.north_m - at.north_m;
    guess.east_m += wanted.east_m - at.east_m;
  }
  return guess;
}

double free_wood(Spot place, const LandSeed& seed) {
  const auto& p = seed.phase_rad;
  const double n = place.north_m, e = place.east_m;
  return 0.85 * (std::sin(n / 330.0 + p[6]) + std::sin(e / 410.0 + p[7]) + std::sin((n + e) / 270.0 + p[0]) +
                 std::sin((n - 1.3 * e) / 610.0 + p[2])) +
         0.60 * (std::sin((1.2 * n + 0.5 * e) / 131.0 + p[1]) + std::sin((0.4 * n - e) / 113.0 + p[3])) +
         0.38 * (std::sin((n + 0.3 * e) / 43.0 + p[4]) + std::sin((e - 0.4 * n) / 37.0 + p[5])) - 2.75;
}

FieldSpot field_at(Spot place, const LandSeed& seed) {
  const Spot at = bent(place, seed);
  const double y = at.north_m / kRow_m, x = at.east_m / kColumn_m;
  FieldSpot spot;
  double edge = 0.0;
  // The row's edges shift from one block of lanes to the next, the column's from row to row.
  const auto block = static_cast<std::int32_t>(std::floor(x / kLaneEvery));
  const std::int32_t row_edge = nearest_edge(y, edge, seed.salt + 11, block);
  spot.to_row_edge_m = (y - edge) * kRow_m;
  spot.row_is_lane = row_edge % kLaneEvery == 0;
  spot.row = y < edge ? row_edge - 1 : row_edge;
  const std::int32_t column_edge = nearest_edge(x, edge, seed.salt + 12, spot.row);
  spot.to_column_edge_m = (x - edge) * kColumn_m;
  spot.column_is_lane = column_edge % kLaneEvery == 0;
  if (edge_missing(column_edge, spot.row, seed.salt + 14)) spot.to_column_edge_m = kColumn_m;
  spot.column = x < edge ? column_edge - 1 : column_edge;
  if (edge_missing(spot.column, spot.row, seed.salt + 14)) --spot.column;
  spot.crop = free_wood(place, seed) > 0.0 ? Crop::wood : crop_of(spot.row, spot.column, seed.salt);
  return spot;
}

}  // namespace stallwright::outside
