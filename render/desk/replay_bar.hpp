#pragma once
#include "render/ui/fonts.hpp"
#include "render/ui/widgets.hpp"
#include "render/view/replay_track.hpp"

namespace stallwright::desk {

/// Where a replay stands and how it runs; whoever owns the clock moves it on with `advance`.
struct ReplayState {
  double time_s = 0.0;
  bool playing = true;
  double rate = 1.0;  ///< of time
};

enum class ReplayIntent { none, leave };

/// The time `dt_s` of real time later; stops at the end.
void advance(const view::ReplayTrack& track, ReplayState& state, double dt_s);

/// Height of the bar, px at scale 1.
inline constexpr float kReplayBarHeight_px = 78.0f;

/// Draws the bar into a rectangle: events and records along the flight, the place in it, and what moves it. Space plays and
/// pauses, left and right step a second (with shift a tick of the log), [ and ] go from event to event, - and + change the rate,
/// Escape leaves.
ReplayIntent draw_replay_bar(const view::ReplayTrack& track, ReplayState& state, ui::Registry& registry,
                             const ui::Fonts& fonts, ImVec2 from, ImVec2 to);

}  // namespace stallwright::desk
