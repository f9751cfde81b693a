#pragma once
#include <filesystem>
#include <memory>

#include "render/outside/camera.hpp"
#include "render/outside/detail.hpp"
#include "render/view/outside_view.hpp"

namespace stallwright::outside {

/// The world through the windscreen, and what of the aeroplane stands before it.
///
/// Needs a current OpenGL 3.3 core context while it lives, with a depth buffer of 24 bits. Land, buildings and clouds are a pure
/// function of the view: the same view gives the same picture, but for ground that is still being made after a jump (a few
/// frames). Making one takes some tenths of a second; drawing allocates nothing of its own.
class World {
 public:
  /// assets: the folder that has `shaders/`. Throws std::runtime_error, one line, where a shader is missing or does not compile.
  explicit World(const std::filesystem::path& assets, Detail detail = Detail::full);
  ~World();
  World(World&&) noexcept;
  World& operator=(World&&) noexcept;

  void set_detail(Detail detail);  ///< at any time
  Detail detail() const;

  /// Draws into a rectangle of the current framebuffer; nothing outside it changes. Leaves depth test, blending, culling and
  /// scissor off, no program and no vertex array bound, and the viewport as it was.
  void draw(const view::OutsideView& view, const Viewport& viewport);

  std::size_t ground_triangles() const;  ///< of the last draw()

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace stallwright::outside
