#pragma once
#include <array>
#include <cstdint>
#include <vector>

#include "render/outside/land.hpp"

namespace stallwright::outside {

/// A square of the ground on the tree of squares: four of one level make one of the next.
struct ChunkKey {
  int level = 0;
  std::int32_t row = 0, column = 0;  ///< counted from the world's origin, north and east
  bool operator==(const ChunkKey&) const = default;
  double size_m() const { return kSmallest_m * static_cast<double>(1 << level); }
  Spot corner() const { return {row * size_m(), column * size_m()}; }  ///< south-west
  ChunkKey child(int which) const { return {level - 1, 2 * row + which / 2, 2 * column + which % 2}; }

  static constexpr double kSmallest_m = 512.0;
  static constexpr int kLevels = 7;  ///< the largest is 32 km
};

/// Level distance from a place to the nearest point of a chunk, m; 0 within.
double distance_m(const ChunkKey& key, Spot from);

/// One corner of the mesh, as the shaders take it.
struct ChunkVertex {
  float north_m, east_m;  ///< from the chunk's south-west corner
  float height_m, slope_north, slope_east;
};

inline constexpr int kCells = 16;  ///< along each side of a chunk
inline constexpr int kSurface = (kCells + 1) * (kCells + 1);
inline constexpr int kChunkVertices =
    kSurface + 4 * kCells;  ///< with the skirt that hides cracks between levels

struct ChunkMesh {
  std::array<ChunkVertex, kChunkVertices> vertices{};
  float lowest_m = 0.0f, highest_m = 0.0f;
};

/// Fills the mesh of a chunk. Its edge hangs down in a skirt by a share of the chunk's size.
void make_chunk(const ChunkKey& key, const LandSeed& seed, ChunkMesh& mesh);

/// Triangles of any chunk's mesh, every `step`-th corner (1, 2 or 4), the skirt included.
std::vector<std::uint16_t> chunk_triangles(int step);

}  // namespace stallwright::outside
