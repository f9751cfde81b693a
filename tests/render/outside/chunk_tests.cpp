#include <algorithm>
#include <catch2/catch.hpp>

#include "render/outside/chunk.hpp"

namespace outside = stallwright::outside;
using Catch::Matchers::WithinAbs;
using outside::ChunkKey;
using outside::kCells;

namespace {

const outside::ChunkVertex& corner(const outside::ChunkMesh& mesh, int row, int column) {
  return mesh.vertices[static_cast<std::size_t>(row * (kCells + 1) + column)];
}

}  // namespace

TEST_CASE("a square's corners are at the ground's height, and its skirt hangs below them",
          "[outside][chunk]") {
  const outside::LandSeed land(5);
  outside::ChunkMesh mesh;
  for (const ChunkKey key : {ChunkKey{0, 12, -9}, ChunkKey{3, 2, 1}, ChunkKey{6, -1, 0}}) {
    outside::make_chunk(key, land, mesh);
    for (int i = 0; i < outside::kSurface; ++i) {
      const auto& v = mesh.vertices[static_cast<std::size_t>(i)];
      const auto from = key.corner();
      CHECK_THAT(
          v.height_m,
          WithinAbs(outside::ground_height_m(from.north_m + v.north_m, from.east_m + v.east_m, land), 0.01));
      CHECK((v.height_m >= mesh.lowest_m && v.height_m <= mesh.highest_m));
    }
    for (int k = outside::kSurface; k < outside::kChunkVertices; ++k) {
      const auto& hem = mesh.vertices[static_cast<std::size_t>(k)];
      const bool on_edge = hem.north_m == 0.0f || hem.east_m == 0.0f ||
                           hem.north_m == static_cast<float>(key.size_m()) ||
                           hem.east_m == static_cast<float>(key.size_m());
      CHECK(on_edge);
      CHECK(hem.height_m < mesh.highest_m);
    }
  }
}

TEST_CASE("neighbouring squares meet without a step", "[outside][chunk]") {
  const outside::LandSeed land(5);
  outside::ChunkMesh west, east;
  outside::make_chunk({1, 7, 3}, land, west);
  outside::make_chunk({1, 7, 4}, land, east);
  for (int row = 0; row <= kCells; ++row) {
    CHECK_THAT(corner(west, row, kCells).height_m, WithinAbs(corner(east, row, 0).height_m, 1e-3));
    CHECK_THAT(corner(west, row, kCells).slope_north, WithinAbs(corner(east, row, 0).slope_north, 1e-4));
  }
}

TEST_CASE("four children tile their parent", "[outside][chunk]") {
  const ChunkKey parent{4, -3, 2};
  double area = 0.0;
  for (int c = 0; c < 4; ++c) {
    const ChunkKey child = parent.child(c);
    area += child.size_m() * child.size_m();
    CHECK(child.level == 3);
    CHECK(child.corner().north_m >= parent.corner().north_m);
    CHECK(child.corner().east_m + child.size_m() <= parent.corner().east_m + parent.size_m());
  }
  CHECK(area == parent.size_m() * parent.size_m());
  CHECK_FALSE(parent.child(1) == parent.child(2));
}

TEST_CASE("the distance to a square is nought inside and to the nearest side outside", "[outside][chunk]") {
  const ChunkKey key{0, 0, 0};
  CHECK(outside::distance_m(key, {100.0, 500.0}) == 0.0);
  CHECK(outside::distance_m(key, {-300.0, -400.0}) == 500.0);
  CHECK(outside::distance_m(key, {100.0, 512.0 + 7.0}) == 7.0);
}

TEST_CASE("coarser triangles cover the same square with fewer", "[outside][chunk]") {
  for (const int step : {1, 2, 4}) {
    const auto triangles = outside::chunk_triangles(step);
    const auto cells = static_cast<std::size_t>(kCells / step);
    CHECK(triangles.size() == 3 * (2 * cells * cells + 2 * 4 * cells));
    CHECK(*std::max_element(triangles.begin(), triangles.end()) < outside::kChunkVertices);
  }
}
