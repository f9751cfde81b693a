#pragma once
#include <cstdint>
#include <vector>

namespace stallwright::outside {

/// Side of the tiling noise picture, px.
inline constexpr int kGrain_px = 256;

/// Two channels of noise that tiles, kGrain_px square, rows from the south, 0 .. 255 about 128: red and green apart.
std::vector<std::uint8_t> grain_picture();

}  // namespace stallwright::outside
