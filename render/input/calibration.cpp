#include "render/input/calibration.hpp"

#include <algorithm>
#include <cstdlib>

namespace stallwright::input {

std::optional<FoundAxis> moved_axis(const RawAxes& before, const RawAxes& now) {
  constexpr int kEnough = 16384;
  if (before.size() != now.size()) return std::nullopt;
  std::optional<FoundAxis> found;
  int most = kEnough - 1;
  for (std::size_t d = 0; d < now.size(); ++d)
    for (std::size_t a = 0; a < now[d].size(); ++a) {
      const int moved = std::abs(now[d][a] - before[d][a]);
      if (moved <= most) continue;
      most = moved;
      found = FoundAxis{d, static_cast<int>(a)};
    }
  return found;
}

Travels widened(Travels travels, const HandsView& view) {
  for (std::size_t k = 0; k < kAxes; ++k) {
    if (!view.axes[k].source) continue;
    travels[k].low = std::min(travels[k].low, view.axes[k].raw);
    travels[k].high = std::max(travels[k].high, view.axes[k].raw);
  }
  return travels;
}

Settings calibrated_settings(Settings settings, const Travels& travels, const HandsView& view) {
  constexpr int kEnough = 8192;  // an eighth of the whole range: less was a touch, not a travel
  for (std::size_t k = 0; k < kAxes; ++k) {
    if (!view.axes[k].source || travels[k].high - travels[k].low < kEnough) continue;
    make_own(settings, static_cast<Axis>(k), view);
    AxisShape& shape = settings.axes[k].shape;
    shape.low = travels[k].low;
    shape.high = travels[k].high;
    shape.centre = std::clamp(view.axes[k].raw, shape.low, shape.high);
  }
  return settings;
}

void make_own(Settings& settings, Axis axis, const HandsView& view) {
  const auto& source = view.axes[place_of(axis)].source;
  if (!source || settings.axes[place_of(axis)].device != kAutomatic) return;
  const DeviceInfo& device = (*view.devices)[source->device];
  settings.axes[place_of(axis)] = {device.guid, device.name, source->axis, source->shape};
}

}  // namespace stallwright::input
