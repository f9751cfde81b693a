#include "render/outside/clouds.hpp"

#include <algorithm>

#include "render/outside/cloud_picture.hpp"
#include "render/outside/frame.hpp"

namespace stallwright::outside {
namespace {

constexpr std::size_t kMost = 700;  // squares of air within reach

}  // namespace

Clouds::Clouds(const std::filesystem::path& shaders) : program_(shaders, "cloud") {
  glBindTexture(GL_TEXTURE_2D_ARRAY, pictures_.name());
  glTexImage3D(GL_TEXTURE_2D_ARRAY, 0, GL_RGBA8, kCloudWide_px, kCloudHigh_px, kCloudPictures, 0, GL_RGBA,
               GL_UNSIGNED_BYTE, nullptr);
  for (int k = 0; k < kCloudPictures; ++k) {
    const auto picture = cloud_picture(static_cast<std::uint32_t>(k));
    glTexSubImage3D(GL_TEXTURE_2D_ARRAY, 0, 0, 0, k, kCloudWide_px, kCloudHigh_px, 1, GL_RGBA,
                    GL_UNSIGNED_BYTE, picture.data());
  }
  glGenerateMipmap(GL_TEXTURE_2D_ARRAY);
  glTexParameteri(GL_TEXTURE_2D_ARRAY, GL_TEXTURE_MIN_FILTER, GL_LINEAR_MIPMAP_LINEAR);
  glTexParameteri(GL_TEXTURE_2D_ARRAY, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D_ARRAY, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
  glBindVertexArray(array_.name());
  glBindBuffer(GL_ARRAY_BUFFER, places_.name());
  glBufferData(GL_ARRAY_BUFFER, kMost * sizeof(Cloud), nullptr, GL_STREAM_DRAW);
  set_attribute(0, 3, sizeof(Cloud), 0, 1);
  set_attribute(1, 2, sizeof(Cloud), offsetof(Cloud, half_width_m), 1);
  set_attribute(2, 3, sizeof(Cloud), offsetof(Cloud, picture), 1);
  clouds_.reserve(kMost);
}

void Clouds::draw(const view::OutsideView& view, const LandSeed& seed, Detail detail) {
  CloudSky sky;
  sky.eye = {view.eye_E_m[0], view.eye_E_m[1]};
  sky.eye_height_m = eye_height_m(view);
  sky.base_m = view.cloud_base_m;
  sky.cover = std::clamp(view.cloud_cover, 0.0, 1.0);
  sky.drift = {view.wind_E_mps[0] * view.time_s, view.wind_E_mps[1] * view.time_s};
  // Far clouds are lost in the haze, and cost where there is no graphics processor.
  sky.reach_m = std::min(detail == Detail::bare ? 14000.0 : 26000.0, 1.2 * view.visibility_m);
  clouds_about(sky, seed.salt + 900u, clouds_);
  const std::size_t count = std::min(clouds_.size(), kMost);
  if (count == 0) return;
  glBindVertexArray(array_.name());
  glBindBuffer(GL_ARRAY_BUFFER, places_.name());
  glBufferSubData(GL_ARRAY_BUFFER, 0, static_cast<GLsizeiptr>(count * sizeof(Cloud)), clouds_.data());
  glActiveTexture(GL_TEXTURE0);
  glBindTexture(GL_TEXTURE_2D_ARRAY, pictures_.name());
  glEnable(GL_BLEND);
  glBlendFunc(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA);
  glDepthMask(GL_FALSE);
  program_.use();
  glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, static_cast<GLsizei>(count));
  glDepthMask(GL_TRUE);
  glDisable(GL_BLEND);
}

}  // namespace stallwright::outside
