#pragma once
#include <array>
#include <optional>
#include <vector>

#include "render/input/hands_now.hpp"

namespace stallwright::input {

/// Raw values of all devices at one look.
using RawAxes = std::vector<std::array<int, HandsView::kRaw>>;

struct FoundAxis {
  std::size_t device = 0;
  int axis = 0;
};

/// The axis that has been moved most since `before`, once that is a quarter of the whole range; nothing yet otherwise, or
/// when the devices are no longer the same. Pure.
std::optional<FoundAxis> moved_axis(const RawAxes& before, const RawAxes& now);

/// How far each of the four movements has been taken while calibrating.
struct Travel {
  int low = 32767, high = -32768;
};
using Travels = std::array<Travel, kAxes>;

/// With what the devices show now. Pure.
Travels widened(Travels travels, const HandsView& view);

/// The settings with the travels taken over, and where each axis rests now as its centre. An axis that was hardly moved
/// keeps what it had. Pure.
Settings calibrated_settings(Settings settings, const Travels& travels, const HandsView& view);

/// Makes an axis that a device serves automatically a choice of its own, so that it can be changed. Without a device: as it is.
void make_own(Settings& settings, Axis axis, const HandsView& view);

}  // namespace stallwright::input
