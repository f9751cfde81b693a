#include "render/outside/chunk.hpp"

#include <algorithm>
#include <cmath>

namespace stallwright::outside {
namespace {

/// Corners along the edge, anticlockwise from the south-west, as row and column of the surface.
std::pair<int, int> on_edge(int k) {
  const int side = k / kCells, along = k % kCells;
  switch (side) {
    case 0:
      return {0, along};
    case 1:
      return {along, kCells};
    case 2:
      return {kCells, kCells - along};
    default:
      return {kCells - along, 0};
  }
}

std::uint16_t surface_index(int row, int column) {
  return static_cast<std::uint16_t>(row * (kCells + 1) + column);
}

ChunkVertex vertex_at(const ChunkKey& key, int row, int column, const LandSeed& seed) {
  constexpr double kReach_m =
      24.0;  // of the slope: the same on all levels, so that light does not jump between them
  const double cell_m = key.size_m() / kCells;
  const Spot corner = key.corner();
  const double n = corner.north_m + row * cell_m, e = corner.east_m + column * cell_m;
  const double height = ground_height_m(n, e, seed);
  return {static_cast<float>(row * cell_m), static_cast<float>(column * cell_m), static_cast<float>(height),
          static_cast<float>((ground_height_m(n + kReach_m, e, seed) - height) / kReach_m),
          static_cast<float>((ground_height_m(n, e + kReach_m, seed) - height) / kReach_m)};
}

}  // namespace

double distance_m(const ChunkKey& key, Spot from) {
  const Spot corner = key.corner();
  const double size = key.size_m();
  const double n = from.north_m - std::clamp(from.north_m, corner.north_m, corner.north_m + size);
  const double e = from.east_m - std::clamp(from.east_m, corner.east_m, corner.east_m + size);
  return std::hypot(n, e);
}

void make_chunk(const ChunkKey& key, const LandSeed& seed, ChunkMesh& mesh) {
  mesh.lowest_m = 1e9f;
  mesh.highest_m = -1e9f;
  for (int row = 0; row <= kCells; ++row)
    for (int column = 0; column <= kCells; ++column) {
      const ChunkVertex vertex = vertex_at(key, row, column, seed);
      mesh.vertices[surface_index(row, column)] = vertex;
      mesh.lowest_m = std::min(mesh.lowest_m, vertex.height_m);
      mesh.highest_m = std::max(mesh.highest_m, vertex.height_m);
    }
  const auto drop = static_cast<float>(key.size_m() * 0.02);
  for (int k = 0; k < 4 * kCells; ++k) {
    const auto [row, column] = on_edge(k);
    ChunkVertex& hem = mesh.vertices[static_cast<std::size_t>(kSurface + k)];
    hem = mesh.vertices[surface_index(row, column)];
    hem.height_m -= drop;
  }
}

std::vector<std::uint16_t> chunk_triangles(int step) {
  std::vector<std::uint16_t> indices;
  for (int row = 0; row < kCells; row += step)
    for (int column = 0; column < kCells; column += step) {
      const auto a = surface_index(row, column), b = surface_index(row, column + step);
      const auto c = surface_index(row + step, column + step), d = surface_index(row + step, column);
      indices.insert(indices.end(), {a, b, c, a, c, d});
    }
  for (int k = 0; k < 4 * kCells; k += step) {
    const int next = (k + step) % (4 * kCells);
    const auto [row, column] = on_edge(k);
    const auto [row_next, column_next] = on_edge(next);
    const auto a = surface_index(row, column), b = surface_index(row_next, column_next);
    const auto c = static_cast<std::uint16_t>(kSurface + next), d = static_cast<std::uint16_t>(kSurface + k);
    indices.insert(indices.end(), {a, d, c, a, c, b});
  }
  return indices;
}

}  // namespace stallwright::outside
