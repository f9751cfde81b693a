#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

#include "render/panel/dials.hpp"

namespace stallwright::panel {
namespace {

constexpr float kBall = 0.86f;             ///< of the moving picture; the bank marks stand outside it
constexpr float kSharePerDegree = 0.034f;  ///< about 25 degrees of pitch from the middle to the edge

/// The picture's axes: `right` along the horizon, `up` toward the sky, both in screen px per share of the radius.
struct Tilted {
  const Dial& dial;
  ImVec2 right, up;
  ImVec2 at(float r, float u) const {
    return {dial.centre.x + r * right.x + u * up.x, dial.centre.y + r * right.y + u * up.y};
  }
};

Tilted tilted(const Dial& dial, double bank_deg) {
  const double bank = bank_deg * std::numbers::pi / 180.0;
  const float c = static_cast<float>(std::cos(bank)) * dial.radius;
  const float s = static_cast<float>(std::sin(bank)) * dial.radius;
  return {dial, {c, -s}, {-s, -c}};
}

/// Ground is the part of the disc below the horizon: a chord and the arc under it. Near the edge the chord stays, so that a
/// sliver always says which way the horizon is.
void sky_and_ground(const Dial& dial, const Tilted& picture, float horizon) {
  dial.list.AddCircleFilled(dial.centre, kBall * dial.radius, ui::colour(ui::kTheme.sky), 96);
  const float chord = std::clamp(horizon, -0.9f * kBall, 0.9f * kBall);
  const float half = std::acos(-chord / kBall);  // of the arc, from straight down
  constexpr int kSteps = 64;
  for (int k = 0; k <= kSteps; ++k) {
    const float a = half * (2.0f * static_cast<float>(k) / kSteps - 1.0f);
    dial.list.PathLineTo(picture.at(-kBall * std::sin(a), -kBall * std::cos(a)));
  }
  dial.list.PathFillConvex(ui::colour(ui::kTheme.ground));
  dial.list.AddCircle(dial.centre, kBall * dial.radius, ui::colour(ui::kTheme.dial), 96, dial.px(2.0f));
  const float reach = std::sqrt(kBall * kBall - chord * chord);
  dial.list.AddLine(picture.at(-reach, chord), picture.at(reach, chord), ui::colour(ui::kTheme.ivory),
                    dial.px(2.0f));
}

/// Lines each 5 degrees, longer and with figures each 10; only those that lie whole in the window between the bank marks.
void pitch_lines(const Dial& dial, const Tilted& picture, double pitch_deg) {
  for (int deg = -90; deg <= 90; deg += 5) {
    const float u = static_cast<float>(deg - pitch_deg) * kSharePerDegree;
    if (deg == 0 || std::abs(u) > 0.66f) continue;
    const bool ten = deg % 10 == 0;
    const float half = ten ? 0.20f : 0.11f;
    dial.list.AddLine(picture.at(-half, u), picture.at(half, u), ui::colour(ui::kTheme.ivory), dial.px(1.5f));
    if (!ten || std::abs(u) > 0.60f) continue;
    char words[16];
    std::snprintf(words, sizeof words, "%d", std::abs(deg));
    text(dial, dial.fonts.small, picture.at(0.31f, u), words);
  }
}

void bank_marks(const Dial& dial) {
  for (const int bank : {-60, -30, -20, -10, 10, 20, 30, 60})
    tick(dial, bank, 0.88f, bank % 30 == 0 ? 0.985f : 0.95f, bank % 30 == 0 ? 2.4f : 1.6f);
  tick(dial, 0.0, 0.88f, 0.985f, 2.4f);
}

/// The aeroplane as seen from behind: two bars and a dot, edged dark against sky and ground.
void aeroplane(const Dial& dial) {
  const auto bar = [&](float from, float to, float more, const ui::Colour& colour) {
    dial.list.AddLine(dial.offset(from, 0.0f), dial.offset(to, 0.0f), ui::colour(colour),
                      dial.px(3.5f) + more);
  };
  const float edge = dial.px(2.5f), dot = dial.px(3.0f);
  for (const float side : {-1.0f, 1.0f}) {
    bar(side * 0.43f, side * 0.75f, edge, ui::kTheme.dial);
    bar(side * 0.44f, side * 0.74f, 0.0f, ui::kTheme.ivory);
  }
  dial.list.AddCircleFilled(dial.centre, dot + edge / 2.0f, ui::colour(ui::kTheme.dial));
  dial.list.AddCircleFilled(dial.centre, dot, ui::colour(ui::kTheme.ivory));
}

}  // namespace

void attitude_dial(const Dial& dial, const view::PanelView& view) {
  face(dial);
  const Tilted picture = tilted(dial, view.bank_deg);
  const float horizon = static_cast<float>(-view.pitch_deg) * kSharePerDegree;
  sky_and_ground(dial, picture, horizon);
  pitch_lines(dial, picture, view.pitch_deg);
  bank_marks(dial);
  // The pointer goes with the sky: it stands straight up in the world.
  const ImVec2 tip = picture.at(0.0f, 0.855f);
  dial.list.AddTriangleFilled(tip, picture.at(-0.06f, 0.74f), picture.at(0.06f, 0.74f),
                              ui::colour(ui::kTheme.ivory));
  aeroplane(dial);
  if (dial.log == nullptr) return;
  dial.log->add({"bank", view.bank_deg, dial.centre, tip, 0.0f});
  dial.log->add(
      {"pitch", view.pitch_deg, dial.centre, picture.at(0.0f, horizon), kSharePerDegree * dial.radius});
}

}  // namespace stallwright::panel
