#pragma once
#include <array>
#include <filesystem>
#include <vector>

#include "render/outside/camera.hpp"
#include "render/outside/chunk.hpp"
#include "render/outside/detail.hpp"
#include "render/outside/gl_program.hpp"

namespace stallwright::outside {

/// The eye's place over the ground.
struct EyePlace {
  Spot spot;
  double height_m = 0.0;  ///< over the terrain's level
};

/// The ground without end: a tree of squares, fine near the eye and coarse far off. Squares once made are kept in a pool of
/// fixed size; only a few are made in one frame, and until a square is there its parent is drawn.
class Terrain {
 public:
  explicit Terrain(const std::filesystem::path& shaders);
  /// Forgets all squares: the land is another one.
  void set_land(const LandSeed& seed);
  /// Chooses and draws. The frame's uniform block is bound; depth test on.
  ///   reach_m  how far ground is drawn
  void draw(const Camera& camera, const EyePlace& eye, Detail detail, double reach_m);
  /// Squares of the lowest level that the last draw() put into the picture, nearest first.
  const std::vector<ChunkKey>& nearest_shown() const { return nearest_; }
  std::size_t triangles_shown() const { return triangles_; }

 private:
  struct Slot {
    ChunkKey key;
    bool used = false;
    unsigned last_frame = 0;
    float lowest_m = 0.0f, highest_m = 0.0f;
  };
  struct Shown {
    int slot;
    double distance_m;
  };
  struct Look {
    const Camera& camera;
    const EyePlace& eye;
    double split, reach_m;
    std::array<Eigen::Vector4f, 5> sides;
  };
  void choose(const Look& look);
  void visit(const Look& look, int slot);
  int find(const ChunkKey& key) const;
  int ensure(const ChunkKey& key, bool at_once);
  int oldest_slot() const;
  bool in_picture(const Look& look, const Slot& slot) const;
  void draw_shown(const EyePlace& eye, Detail detail);

  std::array<std::array<GlProgram, 2>, kDetails> programs_;  ///< without and with the airfield
  std::array<std::array<GLint, 2>, kDetails> corner_{};
  GlVertexArray array_;
  GlBuffer vertices_, indices_;
  GlTexture grain_;
  std::array<GLsizei, 3> index_count_{};  ///< for steps 1, 2, 4
  std::array<std::size_t, 3> index_start_{};
  LandSeed seed_;
  std::vector<Slot> slots_;
  std::vector<Shown> shown_;
  std::vector<ChunkKey> nearest_;
  ChunkMesh mesh_;
  unsigned frame_ = 0;
  int budget_ = 0;
  bool fresh_ = true;
  std::size_t triangles_ = 0;
};

}  // namespace stallwright::outside
