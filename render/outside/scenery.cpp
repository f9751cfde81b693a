#include "render/outside/scenery.hpp"

#include <algorithm>
#include <cmath>

#include "render/outside/building_mesh.hpp"

namespace stallwright::outside {
namespace {

constexpr int kPlantSlots = 72;
constexpr std::size_t kMostBuildings = 1500;
constexpr std::array<double, kDetails> kBuildingReach_m = {2500.0, 4500.0, 7000.0};
constexpr double kBuiltAgain_m = 300.0;  // moved so far, the list of buildings is made anew

/// Corners of one building, from building_mesh().
constexpr GLsizei kBuildingCorners = 42;

/// Lamps along both edges and across both ends, from the runway's middle: along, across.
std::vector<float> runway_lamps() {
  std::vector<float> lamps;
  const double half = Airfield::kLength_m / 2.0;
  for (int k = 0; k <= 14; ++k)
    for (const double side : {-1.0, 1.0}) {
      lamps.push_back(static_cast<float>(-half + k * Airfield::kLength_m / 14.0));
      lamps.push_back(static_cast<float>(side * (Airfield::kWidth_m / 2.0 + 1.5)));
    }
  for (const double end : {-1.0, 1.0})
    for (int k = -2; k <= 2; ++k) {
      lamps.push_back(static_cast<float>(end * (half + 3.0)));
      lamps.push_back(static_cast<float>(4.0 * k));
    }
  return lamps;
}

}  // namespace

Scenery::Scenery(const std::filesystem::path& shaders)
    : plant_program_(shaders, "plant"),
      building_program_(shaders, "building"),
      light_program_(shaders, "lamp"),
      windsock_program_(shaders, "windsock"),
      plant_corner_(plant_program_.place("corner")),
      building_eye_(building_program_.place("eye_place")),
      light_place_(light_program_.place("lamps")),
      windsock_pole_(windsock_program_.place("pole")),
      windsock_wind_(windsock_program_.place("wind")),
      slots_(kPlantSlots) {
  glBindBuffer(GL_ARRAY_BUFFER, plant_buffer_.name());
  glBufferData(GL_ARRAY_BUFFER, kPlantSlots * kMostPlants * sizeof(Plant), nullptr, GL_DYNAMIC_DRAW);
  set_up_buildings();
  set_up_lights();
  glBindVertexArray(0);
  plants_.reserve(kMostPlants);
  buildings_.reserve(kMostBuildings);
}

void Scenery::set_up_buildings() {
  glBindVertexArray(building_array_.name());
  const auto mesh = building_mesh();
  glBindBuffer(GL_ARRAY_BUFFER, building_mesh_.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(mesh.size() * sizeof(BuildingVertex)), mesh.data(),
               GL_STATIC_DRAW);
  set_attribute(0, 4, sizeof(BuildingVertex), 0);
  set_attribute(1, 2, sizeof(BuildingVertex), offsetof(BuildingVertex, face));
  glBindBuffer(GL_ARRAY_BUFFER, building_buffer_.name());
  glBufferData(GL_ARRAY_BUFFER, kMostBuildings * sizeof(Building), nullptr, GL_DYNAMIC_DRAW);
  set_attribute(2, 3, sizeof(Building), 0, 1);
  set_attribute(3, 2, sizeof(Building), offsetof(Building, along_north), 1);
  set_attribute(4, 4, sizeof(Building), offsetof(Building, half_length_m), 1);
  set_attribute(5, 2, sizeof(Building), offsetof(Building, kind), 1);
}

void Scenery::set_up_lights() {
  const auto lamps = runway_lamps();
  light_count_ = static_cast<GLsizei>(lamps.size() / 2);
  glBindVertexArray(light_array_.name());
  glBindBuffer(GL_ARRAY_BUFFER, light_buffer_.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(lamps.size() * sizeof(float)), lamps.data(),
               GL_STATIC_DRAW);
  set_attribute(0, 2, 2 * sizeof(float), 0);
}

void Scenery::set_land(const LandSeed& seed) {
  seed_ = seed;
  std::fill(slots_.begin(), slots_.end(), Slot{});
  built_about_ = {1e12, 1e12};
  fresh_ = true;
}

int Scenery::ensure_plants(const ChunkKey& key) {
  const auto same =
      std::find_if(slots_.begin(), slots_.end(), [&](const Slot& s) { return s.used && s.key == key; });
  if (same != slots_.end()) {
    same->last_frame = frame_;
    return static_cast<int>(same - slots_.begin());
  }
  if (!fresh_ && budget_ <= 0) return -1;
  --budget_;
  const auto oldest = std::min_element(slots_.begin(), slots_.end(), [](const Slot& a, const Slot& b) {
    return a.used != b.used ? !a.used : a.last_frame < b.last_frame;
  });
  if (oldest->used && oldest->last_frame == frame_) return -1;
  plants_in(key, seed_, plants_);
  *oldest = {key, true, frame_, static_cast<GLsizei>(plants_.size())};
  const auto slot = static_cast<std::size_t>(oldest - slots_.begin());
  glBindBuffer(GL_ARRAY_BUFFER, plant_buffer_.name());
  glBufferSubData(GL_ARRAY_BUFFER, static_cast<GLintptr>(slot * kMostPlants * sizeof(Plant)),
                  static_cast<GLsizeiptr>(plants_.size() * sizeof(Plant)), plants_.data());
  return static_cast<int>(slot);
}

void Scenery::draw_plants(const EyePlace& eye, const std::vector<ChunkKey>& squares) {
  // The noise that roughens crowns is the ground's own, still bound.
  plant_program_.use();
  glBindVertexArray(plant_array_.name());
  for (const ChunkKey& key : squares) {
    const int slot = ensure_plants(key);
    if (slot < 0) continue;
    const Spot corner = key.corner();
    glUniform2f(plant_corner_, static_cast<float>(corner.north_m - eye.spot.north_m),
                static_cast<float>(corner.east_m - eye.spot.east_m));
    // OpenGL 3.3 has no first instance, so the attributes are pointed at the slot.
    const std::size_t start = static_cast<std::size_t>(slot) * kMostPlants * sizeof(Plant);
    glBindBuffer(GL_ARRAY_BUFFER, plant_buffer_.name());
    set_attribute(0, 3, sizeof(Plant), start, 1);
    set_attribute(1, 2, sizeof(Plant), start + offsetof(Plant, radius_m), 1);
    glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, slots_[static_cast<std::size_t>(slot)].count);
  }
}

void Scenery::draw_buildings(const EyePlace& eye, Detail detail) {
  const double moved =
      std::hypot(eye.spot.north_m - built_about_.north_m, eye.spot.east_m - built_about_.east_m);
  if (moved > kBuiltAgain_m || detail != built_for_) {
    buildings_about(eye.spot, kBuildingReach_m[static_cast<std::size_t>(detail)], seed_, buildings_);
    built_about_ = eye.spot;
    built_for_ = detail;
    glBindBuffer(GL_ARRAY_BUFFER, building_buffer_.name());
    glBufferSubData(GL_ARRAY_BUFFER, 0,
                    static_cast<GLsizeiptr>(std::min(buildings_.size(), kMostBuildings) * sizeof(Building)),
                    buildings_.data());
  }
  building_program_.use();
  glUniform3f(building_eye_, static_cast<float>(eye.spot.north_m), static_cast<float>(eye.spot.east_m),
              static_cast<float>(eye.height_m));
  glBindVertexArray(building_array_.name());
  glDrawArraysInstanced(GL_TRIANGLES, 0, kBuildingCorners,
                        static_cast<GLsizei>(std::min(buildings_.size(), kMostBuildings)));
}

void Scenery::draw_lights(const EyePlace& eye, const Viewport& viewport) {
  light_program_.use();
  const Spot from{Airfield::kMiddle.north_m - eye.spot.north_m, Airfield::kMiddle.east_m - eye.spot.east_m};
  glUniform4f(light_place_, static_cast<float>(from.north_m), static_cast<float>(from.east_m),
              static_cast<float>(eye.height_m), static_cast<float>(std::max(2.0, viewport.height / 215.0)));
  glBindVertexArray(light_array_.name());
  glEnable(GL_PROGRAM_POINT_SIZE);
  glEnable(GL_BLEND);
  glBlendFunc(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA);
  glDrawArrays(GL_POINTS, 0, light_count_);
  glDisable(GL_BLEND);
  glDisable(GL_PROGRAM_POINT_SIZE);
}

void Scenery::draw_windsock(const view::OutsideView& view, const EyePlace& eye) {
  const Spot pole = Airfield::place(-60.0, 46.0);
  windsock_program_.use();
  glUniform3f(windsock_pole_, static_cast<float>(pole.north_m - eye.spot.north_m),
              static_cast<float>(pole.east_m - eye.spot.east_m), static_cast<float>(eye.height_m));
  glUniform2f(windsock_wind_, static_cast<float>(view.wind_E_mps[0]), static_cast<float>(view.wind_E_mps[1]));
  glBindVertexArray(windsock_array_.name());
  glDrawArrays(GL_TRIANGLES, 0, 36);
}

void Scenery::draw(const view::OutsideView& view, const EyePlace& eye, const std::vector<ChunkKey>& squares,
                   Detail detail, const Viewport& viewport) {
  ++frame_;
  budget_ = 2;
  draw_buildings(eye, detail);
  const double to_airfield =
      std::hypot(eye.spot.north_m - Airfield::kMiddle.north_m, eye.spot.east_m - Airfield::kMiddle.east_m);
  if (to_airfield < 3000.0) draw_windsock(view, eye);
  if (detail != Detail::bare) draw_plants(eye, squares);
  if (to_airfield < 12000.0) draw_lights(eye, viewport);
  if (detail != Detail::bare) fresh_ = false;
}

}  // namespace stallwright::outside
