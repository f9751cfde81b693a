#include <algorithm>
#include <cmath>

#include "render/panel/dials.hpp"

namespace stallwright::panel {
namespace {

constexpr float kBallShare = 0.095f;  ///< radius of the ball
constexpr float kTubeShare = 1.25f;   ///< radius that the tube is bent to, its middle above the dial's

/// Place on the tube's line, `balls` ball widths right of its lowest point.
ImVec2 on_tube(const Dial& dial, double balls) {
  const double turn = balls * 2.0 * static_cast<double>(kBallShare / kTubeShare);
  const auto share = [](double x) { return static_cast<float>(x); };
  return dial.offset(kTubeShare * share(std::sin(turn)), 0.52f - kTubeShare * share(1.0 - std::cos(turn)));
}

void tube(const Dial& dial, double balls) {
  const float wide = 2.0f * (kBallShare + 0.025f) * dial.radius;
  for (int k = -8; k <= 8; ++k) dial.list.PathLineTo(on_tube(dial, kTubeEnd_balls / 8.0 * k));
  dial.list.PathStroke(ui::colour(ui::kTheme.field_over), ImDrawFlags_None, wide);
  for (const double end : {-kTubeEnd_balls, kTubeEnd_balls})
    dial.list.AddCircleFilled(on_tube(dial, end), wide / 2.0f, ui::colour(ui::kTheme.field_over));
  dial.list.AddCircleFilled(on_tube(dial, balls), kBallShare * dial.radius, ui::colour(ui::kTheme.ivory));
  // Two lines that the ball just fits between, over it as in the glass.
  for (const double side : {-0.56, 0.56}) {
    const ImVec2 at = on_tube(dial, side);
    dial.list.AddLine({at.x, at.y - wide / 2.0f}, {at.x, at.y + wide / 2.0f}, ui::colour(ui::kTheme.ivory),
                      dial.px(2.0f));
  }
}

}  // namespace

void turn_and_slip(const Dial& dial, const view::PanelView& view) {
  face(dial);
  const DialScale scale = turn_scale();
  // The needle's pivot lies below the middle, so its marks are drawn on a circle about that pivot.
  const Dial about{dial.list, dial.fonts, dial.offset(0.0f, 0.22f), dial.radius, dial.log};
  for (const double rate : {-kStandardTurn_degps, 0.0, kStandardTurn_degps})
    tick(about, angle_deg(scale, rate), 0.86f, 1.02f, 4.5f);
  for (const double rate : {-2.0 * kStandardTurn_degps, 2.0 * kStandardTurn_degps})
    tick(about, angle_deg(scale, rate), 0.86f, 0.94f, 1.6f);
  text(dial, dial.figures(), dial.offset(-0.62f, -0.12f), "L");
  text(dial, dial.figures(), dial.offset(0.62f, -0.12f), "R");
  const double balls = std::clamp(view.slip_balls, -kTubeEnd_balls, kTubeEnd_balls);
  tube(dial, balls);
  if (dial.log != nullptr)
    dial.log->add(
        {"slip", view.slip_balls, on_tube(dial, 0.0), on_tube(dial, balls), 2.0f * kBallShare * dial.radius});
  text(dial, dial.fonts.small, dial.offset(0.0f, 0.80f), "2 min turn", ui::kTheme.soft);
  needle_from(dial, "turn", view.turn_rate_degps, about.centre, angle_deg(scale, view.turn_rate_degps),
              0.84f);
}

}  // namespace stallwright::panel
