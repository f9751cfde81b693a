#pragma once
#include <filesystem>

#include "render/outside/gl_program.hpp"

namespace stallwright::outside {

/// Everything behind the ground: the sky's gradient, the sun, and below the level of the eye the haze.
class Sky {
 public:
  explicit Sky(const std::filesystem::path& shaders) : program_(shaders, "sky") {}
  /// After the ground, with the depth test on: only what is still free is coloured.
  void draw() const {
    glDepthFunc(GL_LEQUAL);
    glDepthMask(GL_FALSE);
    program_.use();
    glBindVertexArray(array_.name());
    glDrawArrays(GL_TRIANGLES, 0, 3);
    glDepthMask(GL_TRUE);
    glDepthFunc(GL_LESS);
  }

 private:
  GlProgram program_;
  GlVertexArray array_;
};

}  // namespace stallwright::outside
