#pragma once
#include "render/app/context.hpp"
#include "render/desk/replay_bar.hpp"
#include "render/flight/drive.hpp"
#include "render/view/outside_view.hpp"

namespace stallwright::app {

/// A flight that was flown, looked at again: world, probe scale, panel, and the bar that moves through it.
class ReplayScreen {
 public:
  /// Errors as ReplayTrack. from_s: where it begins; NaN: at the start.
  ReplayScreen(const std::filesystem::path& folder, double from_s);
  enum class Result { going_on, leave };
  Result frame(Context& context, double dt_s);
  const std::filesystem::path& folder() const { return folder_; }

 private:
  std::filesystem::path folder_;
  view::ReplayTrack track_;
  desk::ReplayState state_;
  view::OutsideView outside_;
  Vec3<double> eye_B_m_;
  Seen seen_;
  Needles needles_;
  double turns_ = 0.0;
};

}  // namespace stallwright::app
