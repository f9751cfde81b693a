#include "render/outside/terrain.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

#include "render/outside/grain.hpp"

namespace stallwright::outside {
namespace {

constexpr int kSlots = 640;   // a picture uses up to about 250
constexpr int kPerFrame = 4;  // squares made in one frame, some 0.15 ms each
constexpr std::array<int, 3> kSteps = {1, 2, 4};

/// A square is split when the eye is nearer than this many of its sizes.
constexpr std::array<double, kDetails> kSplit = {0.9, 1.1, 1.5};
constexpr std::array<std::size_t, kDetails> kStepOf = {1, 1, 0};

std::string definitions(int detail, bool airfield) {
  std::string text = "#define DETAIL " + std::to_string(detail) + "\n";
  if (!airfield) return text;
  text += "#define AIRFIELD\n#define RUNWAY_HALF " + std::to_string(Airfield::kLength_m / 2.0);
  text += "\n#define AIRFIELD_ALONG " + std::to_string(Airfield::kHalfAlong_m);
  return text + "\n#define AIRFIELD_ACROSS " + std::to_string(Airfield::kHalfAcross_m - 30.0) + "\n";
}

std::array<GlProgram, 2> pair(const std::filesystem::path& shaders, int detail) {
  return {GlProgram(shaders, "terrain", definitions(detail, false)),
          GlProgram(shaders, "terrain", definitions(detail, true))};
}

void upload_grain(const GlTexture& texture) {
  const auto picture = grain_picture();
  glBindTexture(GL_TEXTURE_2D, texture.name());
  glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
  glTexImage2D(GL_TEXTURE_2D, 0, GL_RG8, kGrain_px, kGrain_px, 0, GL_RG, GL_UNSIGNED_BYTE, picture.data());
  glGenerateMipmap(GL_TEXTURE_2D);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR_MIPMAP_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
}

/// The airfield's ground reaches into this square.
bool holds_airfield(const ChunkKey& key) {
  return distance_m(key, Airfield::kMiddle) < Airfield::kHalfAlong_m + 80.0;
}

}  // namespace

Terrain::Terrain(const std::filesystem::path& shaders)
    : programs_{pair(shaders, 0), pair(shaders, 1), pair(shaders, 2)}, seed_(1), slots_(kSlots) {
  for (std::size_t d = 0; d < kDetails; ++d)
    for (std::size_t a = 0; a < 2; ++a) corner_[d][a] = programs_[d][a].place("corner");
  upload_grain(grain_);
  glBindVertexArray(array_.name());
  glBindBuffer(GL_ARRAY_BUFFER, vertices_.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(kSlots * sizeof(mesh_.vertices)), nullptr,
               GL_DYNAMIC_DRAW);
  set_attribute(0, 2, sizeof(ChunkVertex), 0);
  set_attribute(1, 3, sizeof(ChunkVertex), offsetof(ChunkVertex, height_m));
  std::vector<std::uint16_t> all;
  for (std::size_t s = 0; s < kSteps.size(); ++s) {
    const auto some = chunk_triangles(kSteps[s]);
    index_start_[s] = all.size() * sizeof(std::uint16_t);
    index_count_[s] = static_cast<GLsizei>(some.size());
    all.insert(all.end(), some.begin(), some.end());
  }
  glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_.name());
  glBufferData(GL_ELEMENT_ARRAY_BUFFER, static_cast<GLsizeiptr>(all.size() * sizeof(std::uint16_t)),
               all.data(), GL_STATIC_DRAW);
  glBindVertexArray(0);
  shown_.reserve(kSlots);
  nearest_.reserve(kSlots);
}

void Terrain::set_land(const LandSeed& seed) {
  seed_ = seed;
  std::fill(slots_.begin(), slots_.end(), Slot{});
  fresh_ = true;
}

int Terrain::find(const ChunkKey& key) const {
  for (std::size_t i = 0; i < slots_.size(); ++i)
    if (slots_[i].used && slots_[i].key == key) return static_cast<int>(i);
  return -1;
}

int Terrain::oldest_slot() const {
  std::size_t best = 0;
  unsigned age = 0;
  for (std::size_t i = 0; i < slots_.size(); ++i) {
    if (!slots_[i].used) return static_cast<int>(i);
    if (frame_ - slots_[i].last_frame > age) {
      age = frame_ - slots_[i].last_frame;
      best = i;
    }
  }
  return static_cast<int>(best);
}

int Terrain::ensure(const ChunkKey& key, bool at_once) {
  int slot = find(key);
  if (slot < 0) {
    if (!at_once && budget_ <= 0) return -1;
    --budget_;
    slot = oldest_slot();
    make_chunk(key, seed_, mesh_);
    slots_[static_cast<std::size_t>(slot)] = {key, true, frame_, mesh_.lowest_m, mesh_.highest_m};
    glBindBuffer(GL_ARRAY_BUFFER, vertices_.name());
    glBufferSubData(GL_ARRAY_BUFFER,
                    static_cast<GLintptr>(static_cast<std::size_t>(slot) * sizeof(mesh_.vertices)),
                    sizeof(mesh_.vertices), mesh_.vertices.data());
  }
  slots_[static_cast<std::size_t>(slot)].last_frame = frame_;
  return slot;
}

bool Terrain::in_picture(const Look& look, const Slot& slot) const {
  const Spot corner = slot.key.corner();
  const auto size = static_cast<float>(slot.key.size_m());
  const auto n = static_cast<float>(corner.north_m - look.eye.spot.north_m);
  const auto e = static_cast<float>(corner.east_m - look.eye.spot.east_m);
  const auto up = static_cast<float>(look.eye.height_m);
  return std::all_of(look.sides.begin(), look.sides.end(), [&](const Eigen::Vector4f& side) {
    const float far_n = side.x() > 0.0f ? n + size : n, far_e = side.y() > 0.0f ? e + size : e;
    const float far_d = side.z() > 0.0f ? up - slot.lowest_m : up - slot.highest_m;
    return side.x() * far_n + side.y() * far_e + side.z() * far_d + side.w() >= 0.0f;
  });
}

void Terrain::visit(const Look& look, int index) {
  const Slot slot = slots_[static_cast<std::size_t>(index)];
  const double away = distance_m(slot.key, look.eye.spot);
  if (away > look.reach_m) return;
  // Seen from high up, the ground right below is as far as the eye is high.
  const double seen_from = std::hypot(away, 0.7 * look.eye.height_m);
  if (slot.key.level > 0 && seen_from < look.split * slot.key.size_m()) {
    std::array<int, 4> children{};
    for (int c = 0; c < 4; ++c) children[static_cast<std::size_t>(c)] = ensure(slot.key.child(c), fresh_);
    if (std::none_of(children.begin(), children.end(), [](int child) { return child < 0; })) {
      for (const int child : children) visit(look, child);
      return;
    }
  }
  if (in_picture(look, slot)) shown_.push_back({index, away});
}

void Terrain::choose(const Look& look) {
  shown_.clear();
  nearest_.clear();
  const ChunkKey root{ChunkKey::kLevels - 1, 0, 0};
  const double size = root.size_m();
  const auto first_row = static_cast<std::int32_t>(std::floor((look.eye.spot.north_m - look.reach_m) / size));
  const auto last_row = static_cast<std::int32_t>(std::floor((look.eye.spot.north_m + look.reach_m) / size));
  const auto first_column =
      static_cast<std::int32_t>(std::floor((look.eye.spot.east_m - look.reach_m) / size));
  const auto last_column =
      static_cast<std::int32_t>(std::floor((look.eye.spot.east_m + look.reach_m) / size));
  for (std::int32_t row = first_row; row <= last_row; ++row)
    for (std::int32_t column = first_column; column <= last_column; ++column)
      visit(look, ensure({root.level, row, column}, true));
  // Near squares first: what they hide is then not coloured.
  std::sort(shown_.begin(), shown_.end(),
            [](const Shown& a, const Shown& b) { return a.distance_m < b.distance_m; });
}

void Terrain::draw_shown(const EyePlace& eye, Detail detail) {
  const auto d = static_cast<std::size_t>(detail);
  glBindVertexArray(array_.name());
  glActiveTexture(GL_TEXTURE0);
  glBindTexture(GL_TEXTURE_2D, grain_.name());
  triangles_ = 0;
  for (std::size_t airfield = 0; airfield < 2; ++airfield) {
    programs_[d][airfield].use();
    for (const Shown& shown : shown_) {
      const Slot& slot = slots_[static_cast<std::size_t>(shown.slot)];
      if (holds_airfield(slot.key) != (airfield == 1)) continue;
      const Spot corner = slot.key.corner();
      glUniform4f(corner_[d][airfield], static_cast<float>(corner.north_m - eye.spot.north_m),
                  static_cast<float>(corner.east_m - eye.spot.east_m), static_cast<float>(corner.north_m),
                  static_cast<float>(corner.east_m));
      const std::size_t step = kStepOf[d];
      glDrawElementsBaseVertex(GL_TRIANGLES, index_count_[step], GL_UNSIGNED_SHORT,
                               reinterpret_cast<const void*>(index_start_[step]),
                               shown.slot * kChunkVertices);
      triangles_ += static_cast<std::size_t>(index_count_[step]) / 3;
    }
  }
}

void Terrain::draw(const Camera& camera, const EyePlace& eye, Detail detail, double reach_m) {
  ++frame_;
  budget_ = kPerFrame;
  const Look look{camera, eye, kSplit[static_cast<std::size_t>(detail)], reach_m, camera.sides()};
  choose(look);
  for (const Shown& shown : shown_) {
    const ChunkKey& key = slots_[static_cast<std::size_t>(shown.slot)].key;
    if (key.level == 0) nearest_.push_back(key);
  }
  draw_shown(eye, detail);
  fresh_ = false;
}

}  // namespace stallwright::outside
