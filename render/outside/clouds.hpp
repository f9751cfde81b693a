#pragma once
#include <filesystem>
#include <vector>

#include "render/outside/cloud_field.hpp"
#include "render/outside/detail.hpp"
#include "render/outside/gl_program.hpp"
#include "render/view/outside_view.hpp"

namespace stallwright::outside {

/// Draws the clouds of a view, each a picture that stands upright and faces the eye, lit from where the sun is.
class Clouds {
 public:
  explicit Clouds(const std::filesystem::path& shaders);
  /// After the sky; depth test on.
  void draw(const view::OutsideView& view, const LandSeed& seed, Detail detail);

 private:
  GlProgram program_;
  GlVertexArray array_;
  GlBuffer places_;
  GlTexture pictures_;
  std::vector<Cloud> clouds_;
};

}  // namespace stallwright::outside
