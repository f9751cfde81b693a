#include "render/app/replay_screen.hpp"

#include <algorithm>
#include <cmath>

#include "render/flight/set_points_so_far.hpp"
#include "render/panel/panel.hpp"
#include "render/panel/probe_scale.hpp"
#include "render/view/outside_from.hpp"
#include "sim/reduction/set_points_json.hpp"

namespace stallwright::app {
namespace {

constexpr double kNoon_h = 10.0;

/// The set points that came of it stand on the scale from the beginning; none where there is no such file.
std::shared_ptr<const std::vector<SetPointSoFar>> found_in(const std::filesystem::path& folder) {
  try {
    return std::make_shared<const std::vector<SetPointSoFar>>(
        so_far(read_set_points(folder / "set-points.json")));
  } catch (const std::exception&) {
    return std::make_shared<const std::vector<SetPointSoFar>>();
  }
}

double hour_of(const SortieConfig& config) {
  return config.air.convection ? config.air.convection->hour : kNoon_h;
}

}  // namespace

ReplayScreen::ReplayScreen(const std::filesystem::path& folder, double from_s)
    : folder_(folder),
      track_(folder),
      outside_(view::outside_of(track_.flown().config, hour_of(track_.flown().config))),
      eye_B_m_(view::eye_place(track_.flown().config)) {
  state_.time_s = std::isfinite(from_s) ? from_s : track_.begin_s();
  seen_.now.set_points = found_in(folder);
}

ReplayScreen::Result ReplayScreen::frame(Context& context, double dt_s) {
  const auto set_points = seen_.now.set_points;
  const double before_s = state_.time_s;
  desk::advance(track_, state_, dt_s);
  seen_.now = track_.at(state_.time_s);
  seen_.now.set_points = set_points;
  const double passed_s = state_.time_s - before_s;
  // Dials lag as in the flight; after a jump they stand at the reading.
  if (passed_s < 0.0 || passed_s > 1.0) needles_ = {};
  for (double left = std::max(passed_s, 0.0); left > 1e-9; left -= kTick_s)
    needles_ = stallwright::advance(needles_, seen_.now.readings, std::min(left, kTick_s));
  if (!needles_.started) needles_ = stallwright::advance(needles_, seen_.now.readings, kTick_s);
  seen_.now.needles = needles_;
  seen_.before = seen_.now;
  turns_ = std::fmod(turns_ + seen_.now.propeller_radps / (2.0 * math::kPi) * std::max(passed_s, 0.0), 1.0);
  view::place_eye(seen_, eye_B_m_, 0.0, 0.0, outside_);
  outside_.propeller_turns = turns_;

  const ui::Fonts& fonts = context.fonts();
  const ImVec2 size = context.size();
  const float bar = desk::kReplayBarHeight_px * fonts.scale, scale = 58.0f * fonts.scale;
  const float panel = std::min(204.0f * fonts.scale, 0.34f * size.y);
  const float bar_y = size.y - bar, panel_y = bar_y - panel, scale_y = panel_y - scale;
  const int bottom = context.window.height() - static_cast<int>(std::lround(scale_y));
  if (context.draws)
    context.world.draw(outside_, {0, bottom, context.window.width(), context.window.height() - bottom});
  panel::draw_probe_scale(view::probe_scale_view(seen_.now), fonts, {0.0f, scale_y}, {size.x, panel_y});
  panel::draw_panel(view::panel_view(seen_.now, track_.flown().config.type), fonts, {0.0f, panel_y},
                    {size.x, bar_y});
  const desk::ReplayIntent intent =
      desk::draw_replay_bar(track_, state_, context.registry, fonts, {0.0f, bar_y}, size);
  return intent == desk::ReplayIntent::leave ? Result::leave : Result::going_on;
}

}  // namespace stallwright::app
