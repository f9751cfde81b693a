#pragma once
#include <epoxy/gl.h>

#include <utility>

namespace stallwright::outside {

/// Owns one OpenGL name: made with the object, deleted with it. Needs the context to be current at both times.
template <typename Kind>
class GlObject {
 public:
  GlObject() : name_(Kind::make()) {}
  ~GlObject() {
    if (name_ != 0) Kind::drop(name_);
  }
  GlObject(GlObject&& other) noexcept : name_(std::exchange(other.name_, 0)) {}
  GlObject& operator=(GlObject&& other) noexcept {
    std::swap(name_, other.name_);
    return *this;
  }
  GlObject(const GlObject&) = delete;
  GlObject& operator=(const GlObject&) = delete;
  GLuint name() const { return name_; }

 private:
  GLuint name_ = 0;
};

struct GlBufferKind {
  static GLuint make() {
    GLuint name = 0;
    glGenBuffers(1, &name);
    return name;
  }
  static void drop(GLuint name) { glDeleteBuffers(1, &name); }
};

struct GlVertexArrayKind {
  static GLuint make() {
    GLuint name = 0;
    glGenVertexArrays(1, &name);
    return name;
  }
  static void drop(GLuint name) { glDeleteVertexArrays(1, &name); }
};

struct GlTextureKind {
  static GLuint make() {
    GLuint name = 0;
    glGenTextures(1, &name);
    return name;
  }
  static void drop(GLuint name) { glDeleteTextures(1, &name); }
};

struct GlProgramKind {
  static GLuint make() { return glCreateProgram(); }
  static void drop(GLuint name) { glDeleteProgram(name); }
};

struct GlVertexShaderKind {
  static GLuint make() { return glCreateShader(GL_VERTEX_SHADER); }
  static void drop(GLuint name) { glDeleteShader(name); }
};

struct GlFragmentShaderKind {
  static GLuint make() { return glCreateShader(GL_FRAGMENT_SHADER); }
  static void drop(GLuint name) { glDeleteShader(name); }
};

using GlBuffer = GlObject<GlBufferKind>;
using GlVertexArray = GlObject<GlVertexArrayKind>;
using GlTexture = GlObject<GlTextureKind>;
using GlVertexShader = GlObject<GlVertexShaderKind>;
using GlFragmentShader = GlObject<GlFragmentShaderKind>;

/// One float attribute of the bound vertex array, from the bound buffer.
inline void set_attribute(GLuint index, GLint count, GLsizei stride_bytes, std::size_t offset_bytes,
                          GLuint divisor = 0) {
  glEnableVertexAttribArray(index);
  glVertexAttribPointer(index, count, GL_FLOAT, GL_FALSE, stride_bytes,
                        reinterpret_cast<const void*>(offset_bytes));
  glVertexAttribDivisor(index, divisor);
}

}  // namespace stallwright::outside
