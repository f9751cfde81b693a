// Pictures drawn off screen, by whatever renderer OpenGL has here; what is asked of them is found from their pixels.
#include <SDL.h>
#include <epoxy/gl.h>

#include <Eigen/Geometry>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <numbers>
#include <stdexcept>
#include <vector>

#include "render/outside/world.hpp"

namespace outside = stallwright::outside;
namespace fs = std::filesystem;
using Catch::Matchers::WithinAbs;
using stallwright::view::OutsideView;

namespace {

constexpr int kWide = 320, kHigh = 200;
const fs::path kAssets = fs::path(STALLWRIGHT_SOURCE_DIR) / "assets";

/// A context without a window on a screen, for the life of this object.
class OffScreen {
 public:
  OffScreen() {
    REQUIRE(SDL_VideoInit("offscreen") == 0);
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_PROFILE_MASK, SDL_GL_CONTEXT_PROFILE_CORE);
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_MAJOR_VERSION, 3);
    SDL_GL_SetAttribute(SDL_GL_CONTEXT_MINOR_VERSION, 3);
    SDL_GL_SetAttribute(SDL_GL_DEPTH_SIZE, 24);
    window_ = SDL_CreateWindow("", 0, 0, kWide, kHigh, SDL_WINDOW_OPENGL);
    REQUIRE(window_ != nullptr);
    context_ = SDL_GL_CreateContext(window_);
    INFO(SDL_GetError());
    REQUIRE(context_ != nullptr);
  }
  ~OffScreen() {
    SDL_GL_DeleteContext(context_);
    SDL_DestroyWindow(window_);
    SDL_VideoQuit();
  }
  OffScreen(const OffScreen&) = delete;
  OffScreen& operator=(const OffScreen&) = delete;

 private:
  SDL_Window* window_ = nullptr;
  SDL_GLContext context_ = nullptr;
};

/// Brightness, 0 .. 765, rows from the bottom up.
std::vector<int> brightness() {
  std::vector<unsigned char> rgb(3u * kWide * kHigh);
  glFinish();
  glPixelStorei(GL_PACK_ALIGNMENT, 1);
  glReadPixels(0, 0, kWide, kHigh, GL_RGB, GL_UNSIGNED_BYTE, rgb.data());
  std::vector<int> sum(static_cast<std::size_t>(kWide * kHigh));
  for (std::size_t i = 0; i < sum.size(); ++i) sum[i] = rgb[3 * i] + rgb[3 * i + 1] + rgb[3 * i + 2];
  return sum;
}

OutsideView at_3000_ft(double pitch_deg, double bank_deg) {
  constexpr double kDegree = std::numbers::pi / 180.0;
  const Eigen::Quaterniond q = Eigen::AngleAxisd(0.4, Eigen::Vector3d::UnitZ()) *
                               Eigen::AngleAxisd(pitch_deg * kDegree, Eigen::Vector3d::UnitY()) *
                               Eigen::AngleAxisd(bank_deg * kDegree, Eigen::Vector3d::UnitX());
  OutsideView view;
  view.terrain_m = 120.0;
  view.eye_E_m = {0.0, 0.0, -1034.0};
  view.attitude_EB = {q.w(), q.x(), q.y(), q.z()};
  view.cloud_cover = 0.0;
  view.propeller_rps = 40.0;
  return view;
}

struct Line {
  double at_middle_px, slope_deg;  ///< above the picture's middle; right end up positive
};

/// From the top down, the first row of a column where brightness falls at once as it does between sky and haze.
int horizon_row(const std::vector<int>& picture, int column) {
  const auto pixel = [&](int row) { return picture[static_cast<std::size_t>(row * kWide + column)]; };
  for (int row = kHigh - 2; row > 0; --row)
    if (pixel(row + 1) - pixel(row - 1) > 60) return row;
  return -kHigh;
}

/// A line through the horizon's rows by least squares, at both sides of the nose and within the windscreen's posts.
Line horizon_in(const std::vector<int>& picture) {
  double sx = 0.0, sy = 0.0, sxx = 0.0, sxy = 0.0, n = 0.0;
  for (int column = 30; column < kWide - 30; ++column) {
    const double x = column + 0.5 - kWide / 2.0, y = horizon_row(picture, column) + 0.5 - kHigh / 2.0;
    if (std::abs(x) < 75.0) continue;
    sx += x, sy += y, sxx += x * x, sxy += x * y, n += 1.0;
  }
  const double slope = (n * sxy - sx * sy) / (n * sxx - sx * sx);
  return {(sy - slope * sx) / n, std::atan(slope) * 180.0 / std::numbers::pi};
}

}  // namespace

TEST_CASE("the drawn horizon is on the centre line for a level eye, and turns with the bank",
          "[outside][picture]") {
  const OffScreen off_screen;
  outside::World world(kAssets);
  for (const auto detail : {outside::Detail::bare, outside::Detail::lean, outside::Detail::full}) {
    world.set_detail(detail);
    INFO("detail " << static_cast<int>(detail));
    world.draw(at_3000_ft(0.0, 0.0), {0, 0, kWide, kHigh});
    const Line level = horizon_in(brightness());
    CHECK_THAT(level.at_middle_px, WithinAbs(0.0, 1.0));
    CHECK_THAT(level.slope_deg, WithinAbs(0.0, 0.3));
    world.draw(at_3000_ft(0.0, 10.0), {0, 0, kWide, kHigh});
    CHECK_THAT(horizon_in(brightness()).slope_deg, WithinAbs(10.0, 0.5));
    world.draw(at_3000_ft(5.0, -20.0), {0, 0, kWide, kHigh});
    CHECK_THAT(horizon_in(brightness()).slope_deg, WithinAbs(-20.0, 0.5));
    CHECK(glGetError() == GLenum{GL_NO_ERROR});
  }
}

TEST_CASE("a degree of pitch moves the drawn horizon by a degree", "[outside][picture]") {
  const OffScreen off_screen;
  outside::World world(kAssets, outside::Detail::bare);
  const double per_unit = 0.5 * kHigh / std::tan(24.0 * std::numbers::pi / 180.0);
  for (const double pitch_deg : {2.0, 3.0, 4.0}) {
    world.draw(at_3000_ft(pitch_deg, 0.0), {0, 0, kWide, kHigh});
    INFO("pitch " << pitch_deg << " deg");
    CHECK_THAT(horizon_in(brightness()).at_middle_px,
               WithinAbs(-per_unit * std::tan(pitch_deg * std::numbers::pi / 180.0), 1.0));
  }
}

TEST_CASE("the same view gives the same picture, and another seed another", "[outside][picture]") {
  const OffScreen off_screen;
  outside::World first(kAssets), second(kAssets);
  OutsideView view = at_3000_ft(0.0, 0.0);
  first.draw(view, {0, 0, kWide, kHigh});
  const auto picture = brightness();
  second.draw(view, {0, 0, kWide, kHigh});
  CHECK(brightness() == picture);
  view.world_seed = 2;
  second.draw(view, {0, 0, kWide, kHigh});
  CHECK_FALSE(brightness() == picture);
  view.world_seed = 1;
  second.draw(view, {0, 0, kWide, kHigh});
  CHECK(brightness() == picture);
}

TEST_CASE("nothing outside the rectangle is drawn on, and the context is left as promised",
          "[outside][picture]") {
  const OffScreen off_screen;
  outside::World world(kAssets);
  glViewport(0, 0, kWide, kHigh);
  glClearColor(1.0f, 1.0f, 1.0f, 1.0f);
  glClear(GL_COLOR_BUFFER_BIT);
  world.draw(at_3000_ft(0.0, 0.0), {40, 80, 200, 100});
  const auto picture = brightness();
  const auto pixel = [&](int column, int row) {
    return picture[static_cast<std::size_t>(row * kWide + column)];
  };
  for (int row = 0; row < kHigh; ++row)
    for (int column = 0; column < kWide; ++column)
      if (column < 40 || column >= 240 || row < 80 || row >= 180) REQUIRE(pixel(column, row) == 765);
  CHECK(pixel(140, 90) < 765);
  for (const GLenum state : {GL_DEPTH_TEST, GL_BLEND, GL_SCISSOR_TEST, GL_CULL_FACE})
    CHECK(glIsEnabled(state) == GL_FALSE);
  std::array<GLint, 4> viewport{};
  glGetIntegerv(GL_VIEWPORT, viewport.data());
  CHECK(viewport == std::array<GLint, 4>{0, 0, kWide, kHigh});
}

TEST_CASE("a shader that is missing or does not compile is told in one line that names it",
          "[outside][picture]") {
  const OffScreen off_screen;
  const fs::path folder =
      fs::temp_directory_path() / ("stallwright-shaders-" + std::to_string(SDL_GetPerformanceCounter()));
  fs::create_directories(folder);
  fs::copy(kAssets / "shaders", folder / "shaders");
  const auto message = [&]() -> std::string {
    try {
      const outside::World world(folder);
    } catch (const std::runtime_error& error) {
      return error.what();
    }
    return "none";
  };
  CHECK(message() == "none");
  std::ofstream(folder / "shaders/sky.frag") << "out vec4 colour;\nvoid main() { colour = nothing; }\n";
  CHECK_THAT(message(), Catch::Contains("sky.frag does not compile") && Catch::Contains("nothing"));
  CHECK(message().find('\n') == std::string::npos);
  fs::remove(folder / "shaders/cloud.vert");
  fs::copy(kAssets / "shaders/sky.frag", folder / "shaders/sky.frag", fs::copy_options::overwrite_existing);
  CHECK_THAT(message(), Catch::Contains("cannot read the shader") && Catch::Contains("cloud.vert"));
  fs::remove_all(folder);
}
