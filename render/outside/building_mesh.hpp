#pragma once
#include <vector>

namespace stallwright::outside {

/// A corner of the one mesh from which all buildings are made.
struct BuildingVertex {
  float along, across;  ///< -1 .. 1 of half the length and width
  float wall, roof;     ///< 0 .. 1 of the wall's height, and of the roof's above it
  float face;           ///< 0 side wall, 1 end wall, 2 roof, of the side that `sign` tells
  float sign;           ///< -1 or 1
};

/// Triangles of four walls, two gables and the two halves of the roof.
inline std::vector<BuildingVertex> building_mesh() {
  std::vector<BuildingVertex> mesh;
  const auto quad = [&mesh](BuildingVertex a, BuildingVertex b, BuildingVertex c, BuildingVertex d) {
    mesh.insert(mesh.end(), {a, b, c, a, c, d});
  };
  for (const float s : {-1.0f, 1.0f}) {
    quad({-1, s, 0, 0, 0, s}, {1, s, 0, 0, 0, s}, {1, s, 1, 0, 0, s}, {-1, s, 1, 0, 0, s});
    quad({s, -1, 0, 0, 1, s}, {s, 1, 0, 0, 1, s}, {s, 1, 1, 0, 1, s}, {s, -1, 1, 0, 1, s});
    mesh.insert(mesh.end(), {{s, -1, 1, 0, 1, s}, {s, 1, 1, 0, 1, s}, {s, 0, 1, 1, 1, s}});
    quad({-1.04f, 1.1f * s, 1, -0.1f, 2, s}, {1.04f, 1.1f * s, 1, -0.1f, 2, s}, {1.04f, 0, 1, 1, 2, s},
         {-1.04f, 0, 1, 1, 2, s});
  }
  return mesh;
}

}  // namespace stallwright::outside
