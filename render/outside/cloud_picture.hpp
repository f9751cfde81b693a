#pragma once
#include <cstdint>
#include <vector>

namespace stallwright::outside {

inline constexpr int kCloudWide_px = 256, kCloudHigh_px = 128;

/// A cumulus from the side: heaps on a flat base. Four channels a px, rows from the base up: the surface's direction to the
/// right and upwards (128: none), how much of it faces the eye, and how dense it is (0: none).
std::vector<std::uint8_t> cloud_picture(std::uint32_t which);

}  // namespace stallwright::outside
