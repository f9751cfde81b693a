#pragma once
#include <filesystem>

#include "render/outside/gl_program.hpp"
#include "render/outside/shell.hpp"

namespace stallwright::outside {

/// Draws the aeroplane's own parts over the world: they stay where they are when the world turns.
class Airframe {
 public:
  explicit Airframe(const std::filesystem::path& shaders);
  /// After everything else; clears the depth of the rectangle that is set up. Makes the shape anew when the view's measures
  /// differ from the last ones.
  void draw(const view::OutsideView& view);

 private:
  void make(const ShellShape& shape);
  void draw_propeller(const view::OutsideView& view) const;

  GlProgram shell_program_, propeller_program_;
  GLint disc_ = -1, turning_ = -1;
  GlVertexArray array_, propeller_array_;
  GlBuffer vertices_;
  ShellShape shape_;
  GLsizei count_ = 0;
};

}  // namespace stallwright::outside
