#include "render/outside/world.hpp"

#include <algorithm>
#include <array>

#include "render/outside/airframe.hpp"
#include "render/outside/clouds.hpp"
#include "render/outside/frame.hpp"
#include "render/outside/scenery.hpp"
#include "render/outside/sky.hpp"
#include "render/outside/terrain.hpp"

namespace stallwright::outside {

struct World::Parts {
  Parts(const std::filesystem::path& shaders, Detail first)
      : detail(first), terrain(shaders), scenery(shaders), sky(shaders), clouds(shaders), airframe(shaders) {
    glBindBuffer(GL_UNIFORM_BUFFER, frame.name());
    glBufferData(GL_UNIFORM_BUFFER, sizeof(Frame), nullptr, GL_DYNAMIC_DRAW);
  }
  Detail detail;
  GlBuffer frame;
  Terrain terrain;
  Scenery scenery;
  Sky sky;
  Clouds clouds;
  Airframe airframe;
  std::uint64_t world_seed = 1;
  LandSeed seed{1};
};

namespace {

/// Sets the rectangle up and, when done, gives the context back as World::draw promises.
class Rectangle {
 public:
  explicit Rectangle(const Viewport& viewport) {
    glGetIntegerv(GL_VIEWPORT, before_.data());
    glViewport(viewport.x, viewport.y, viewport.width, viewport.height);
    glScissor(viewport.x, viewport.y, viewport.width, viewport.height);
    glEnable(GL_SCISSOR_TEST);
    glDisable(GL_BLEND);
    glDisable(GL_CULL_FACE);
    glEnable(GL_DEPTH_TEST);
    glDepthMask(GL_TRUE);
    glDepthFunc(GL_LESS);
    glColorMask(GL_TRUE, GL_TRUE, GL_TRUE, GL_TRUE);
    glClear(GL_DEPTH_BUFFER_BIT);
  }
  ~Rectangle() {
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_BLEND);
    glDisable(GL_SCISSOR_TEST);
    glUseProgram(0);
    glBindVertexArray(0);
    glViewport(before_[0], before_[1], before_[2], before_[3]);
  }
  Rectangle(const Rectangle&) = delete;
  Rectangle& operator=(const Rectangle&) = delete;

 private:
  std::array<GLint, 4> before_{};
};

}  // namespace

World::World(const std::filesystem::path& assets, Detail detail)
    : parts_(std::make_unique<Parts>(assets / "shaders", detail)) {}
World::~World() = default;
World::World(World&&) noexcept = default;
World& World::operator=(World&&) noexcept = default;

void World::set_detail(Detail detail) { parts_->detail = detail; }
Detail World::detail() const { return parts_->detail; }
std::size_t World::ground_triangles() const { return parts_->terrain.triangles_shown(); }

void World::draw(const view::OutsideView& view, const Viewport& viewport) {
  if (viewport.width <= 0 || viewport.height <= 0) return;
  Parts& p = *parts_;
  if (view.world_seed != p.world_seed) {
    p.world_seed = view.world_seed;
    p.seed = LandSeed(view.world_seed);
    p.terrain.set_land(p.seed);
    p.scenery.set_land(p.seed);
  }
  const Camera camera = camera_of(view, static_cast<double>(viewport.width) / viewport.height);
  const Light light =
      light_of(view.sun_azimuth_deg, view.sun_elevation_deg, view.visibility_m, view.cloud_cover);
  const Frame frame = frame_of(view, camera, light, p.seed);
  const EyePlace eye{{view.eye_E_m[0], view.eye_E_m[1]}, eye_height_m(view)};
  const Rectangle rectangle(viewport);
  glBindBuffer(GL_UNIFORM_BUFFER, p.frame.name());
  glBufferSubData(GL_UNIFORM_BUFFER, 0, sizeof(Frame), &frame);
  glBindBufferBase(GL_UNIFORM_BUFFER, kFrameBinding, p.frame.name());
  // Beyond one and a half visibilities 1 % of the contrast is left.
  p.terrain.draw(camera, eye, p.detail, std::clamp(1.5 * view.visibility_m, 3000.0, 60000.0));
  p.scenery.draw(view, eye, p.terrain.nearest_shown(), p.detail, viewport);
  p.sky.draw();
  p.clouds.draw(view, p.seed, p.detail);
  p.airframe.draw(view);
}

}  // namespace stallwright::outside
