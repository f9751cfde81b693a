#include "render/outside/gl_program.hpp"

#include <algorithm>
#include <array>
#include <fstream>
#include <iterator>
#include <stdexcept>

namespace stallwright::outside {
namespace {

std::string text_of(const std::filesystem::path& file) {
  std::ifstream in(file);
  if (!in) throw std::runtime_error("cannot read the shader " + file.string());
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

/// Of a driver's log, the first line that says something.
std::string first_line(const std::string& log) {
  const auto end = std::find_if(log.begin(), log.end(), [](char c) { return c == '\n' || c == '\0'; });
  return {log.begin(), end};
}

void compile(GLuint shader, const std::filesystem::path& file, const std::string& before) {
  const std::string text = before + "#line 1\n" + text_of(file);
  const char* start = text.c_str();
  glShaderSource(shader, 1, &start, nullptr);
  glCompileShader(shader);
  GLint done = GL_FALSE;
  glGetShaderiv(shader, GL_COMPILE_STATUS, &done);
  if (done == GL_TRUE) return;
  std::string log(1024, '\0');
  glGetShaderInfoLog(shader, static_cast<GLsizei>(log.size()), nullptr, log.data());
  throw std::runtime_error("the shader " + file.string() + " does not compile: " + first_line(log));
}

void link(GLuint program, const std::string& name) {
  glLinkProgram(program);
  GLint done = GL_FALSE;
  glGetProgramiv(program, GL_LINK_STATUS, &done);
  if (done == GL_TRUE) return;
  std::string log(1024, '\0');
  glGetProgramInfoLog(program, static_cast<GLsizei>(log.size()), nullptr, log.data());
  throw std::runtime_error("the shaders " + name + " do not link: " + first_line(log));
}

}  // namespace

GlProgram::GlProgram(const std::filesystem::path& folder, const std::string& name,
                     const std::string& definitions) {
  const std::string before =
      "#version 330 core\n" + definitions + text_of(folder / "frame.glsl") + text_of(folder / "land.glsl");
  const GlVertexShader vertex;
  const GlFragmentShader fragment;
  compile(vertex.name(), folder / (name + ".vert"), before);
  compile(fragment.name(), folder / (name + ".frag"), before);
  glAttachShader(program_.name(), vertex.name());
  glAttachShader(program_.name(), fragment.name());
  link(program_.name(), name);
  glDetachShader(program_.name(), vertex.name());
  glDetachShader(program_.name(), fragment.name());
  const GLuint frame = glGetUniformBlockIndex(program_.name(), "Frame");
  if (frame != GL_INVALID_INDEX) glUniformBlockBinding(program_.name(), frame, kFrameBinding);
}

}  // namespace stallwright::outside
