#include "render/outside/airframe.hpp"

#include <algorithm>
#include <cmath>

namespace stallwright::outside {

Airframe::Airframe(const std::filesystem::path& shaders)
    : shell_program_(shaders, "shell"),
      propeller_program_(shaders, "propeller"),
      disc_(propeller_program_.place("disc")),
      turning_(propeller_program_.place("turning")) {}

void Airframe::make(const ShellShape& shape) {
  const auto shell = make_shell(shape);
  shape_ = shape;
  count_ = static_cast<GLsizei>(shell.size());
  glBindVertexArray(array_.name());
  glBindBuffer(GL_ARRAY_BUFFER, vertices_.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(shell.size() * sizeof(ShellVertex)), shell.data(),
               GL_STATIC_DRAW);
  set_attribute(0, 3, sizeof(ShellVertex), offsetof(ShellVertex, place_B));
  set_attribute(1, 3, sizeof(ShellVertex), offsetof(ShellVertex, normal_B));
  set_attribute(2, 3, sizeof(ShellVertex), offsetof(ShellVertex, colour));
  set_attribute(3, 1, sizeof(ShellVertex), offsetof(ShellVertex, across));
}

void Airframe::draw_propeller(const view::OutsideView& view) const {
  constexpr double kSeen_s = 1.0 / 40.0;  // how long an eye gathers light, about
  const PropellerDisc disc = propeller_disc(shape_);
  propeller_program_.use();
  glUniform4f(disc_, disc.middle_B.x(), disc.middle_B.y(), disc.middle_B.z(), disc.radius_m);
  glUniform2f(turning_, static_cast<float>(view.propeller_turns - std::floor(view.propeller_turns)),
              static_cast<float>(std::min(std::abs(view.propeller_rps) * kSeen_s, 0.5)));
  glBindVertexArray(propeller_array_.name());
  glDrawArrays(GL_TRIANGLE_STRIP, 0, 4);
}

void Airframe::draw(const view::OutsideView& view) {
  const ShellShape shape = shell_shape(view);
  if (count_ == 0 || !(shape == shape_)) make(shape);
  glClear(GL_DEPTH_BUFFER_BIT);
  glEnable(GL_BLEND);
  glBlendFunc(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA);
  glBindVertexArray(array_.name());
  shell_program_.use();
  glDrawArrays(GL_TRIANGLES, 0, count_);
  draw_propeller(view);
  glDisable(GL_BLEND);
}

}  // namespace stallwright::outside
