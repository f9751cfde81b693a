#pragma once
#include <array>
#include <filesystem>
#include <vector>

#include "render/outside/buildings.hpp"
#include "render/outside/detail.hpp"
#include "render/outside/frame.hpp"
#include "render/outside/gl_program.hpp"
#include "render/outside/plants.hpp"
#include "render/outside/terrain.hpp"

namespace stallwright::outside {

/// What stands on the ground: trees and hedges near the eye, buildings further out, the runway's lights and windsock.
class Scenery {
 public:
  explicit Scenery(const std::filesystem::path& shaders);
  void set_land(const LandSeed& seed);
  /// After the ground, depth test on. Plants stand on the squares given; `bare` draws none.
  void draw(const view::OutsideView& view, const EyePlace& eye, const std::vector<ChunkKey>& squares,
            Detail detail, const Viewport& viewport);

 private:
  struct Slot {
    ChunkKey key;
    bool used = false;
    unsigned last_frame = 0;
    GLsizei count = 0;
  };
  void set_up_buildings();
  void set_up_lights();
  int ensure_plants(const ChunkKey& key);
  void draw_plants(const EyePlace& eye, const std::vector<ChunkKey>& squares);
  void draw_buildings(const EyePlace& eye, Detail detail);
  void draw_lights(const EyePlace& eye, const Viewport& viewport);
  void draw_windsock(const view::OutsideView& view, const EyePlace& eye);

  GlProgram plant_program_, building_program_, light_program_, windsock_program_;
  GLint plant_corner_ = -1, building_eye_ = -1, light_place_ = -1, windsock_pole_ = -1, windsock_wind_ = -1;
  GlVertexArray plant_array_, building_array_, light_array_, windsock_array_;
  GlBuffer plant_buffer_, building_mesh_, building_buffer_, light_buffer_;
  GLsizei light_count_ = 0;
  LandSeed seed_{1};
  std::vector<Slot> slots_;
  std::vector<Plant> plants_;
  std::vector<Building> buildings_;
  Spot built_about_{1e12, 1e12};
  Detail built_for_ = Detail::full;
  unsigned frame_ = 0;
  int budget_ = 0;
  bool fresh_ = true;
};

}  // namespace stallwright::outside
