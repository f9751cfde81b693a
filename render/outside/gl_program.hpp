#pragma once
#include <filesystem>
#include <string>

#include "render/outside/gl_object.hpp"

namespace stallwright::outside {

/// A linked pair of shaders from `FOLDER/NAME.vert` and `FOLDER/NAME.frag`, each behind `frame.glsl`, the given definitions and
/// `land.glsl`.
/// Throws std::runtime_error of one line naming the file that is missing or does not compile, with the driver's first words.
class GlProgram {
 public:
  GlProgram(const std::filesystem::path& folder, const std::string& name,
            const std::string& definitions = {});
  void use() const { glUseProgram(program_.name()); }
  GLint place(const char* uniform) const { return glGetUniformLocation(program_.name(), uniform); }

 private:
  GlObject<GlProgramKind> program_;
};

/// Where the uniform block `Frame` is bound, in every program.
inline constexpr GLuint kFrameBinding = 0;

}  // namespace stallwright::outside
