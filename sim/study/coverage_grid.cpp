#include "sim/study/coverage_grid.hpp"

#include <bit>
#include <cmath>

namespace stallwright {
namespace {

constexpr double kLeastWindow_s = 9.0;  ///< three blocks of 3 s, see sim/reduction/steady_point.cpp

std::uint64_t hash_byte(std::uint64_t before, std::uint64_t byte) {
  return (before ^ (byte & 0xffu)) * 0x100000001b3u;
}

std::uint64_t hash_number(std::uint64_t hash, double value) {
  const auto bits = std::bit_cast<std::uint64_t>(value);
  for (int byte = 0; byte < 8; ++byte) hash = hash_byte(hash, bits >> (8 * byte));
  return hash;
}

}  // namespace

std::uint64_t hash_bytes(std::uint64_t before, const std::string& bytes) {
  for (const char c : bytes) before = hash_byte(before, static_cast<unsigned char>(c));
  return before;
}

std::uint64_t hash_values(std::uint64_t before, const std::vector<WindowValue>& values) {
  for (const WindowValue& value : values) {
    before = hash_number(before, value.error_kt);
    before = hash_number(before, value.half_width_kt);
    before = hash_byte(before, (value.found ? 1u : 0u) | (value.covered ? 2u : 0u));
  }
  return before;
}

std::string hash_text(std::uint64_t hash) {
  constexpr char kHex[] = "0123456789abcdef";
  std::string text(16, '0');
  for (std::size_t k = 0; k < 16; ++k) text[15 - k] = kHex[(hash >> (4 * k)) & 0xfu];
  return text;
}

void CoverageTally::add(const WindowValue& value) {
  if (!value.found) return;
  ++found;
  covered += value.covered ? 1 : 0;
  squared_kt2 += value.error_kt * value.error_kt;
  half_widths_kt += value.half_width_kt;
}

double CoverageTally::rms_error_kt() const { return found > 0 ? std::sqrt(squared_kt2 / found) : kNone; }

Interval shares_within(int found) {
  int least = 0, most = found;
  while (clopper_pearson(least, found).upper < kAskedCoverage.lower) ++least;
  while (clopper_pearson(most, found).lower > kAskedCoverage.upper) --most;
  return {static_cast<double>(least) / found, static_cast<double>(most) / found};
}

CoverageGround coverage_ground(const WindowLine& line, const AirPreset& air) {
  if (line.is_stall) return CoverageGround::stall_entry;
  if (line.window_s < kLeastWindow_s) return CoverageGround::short_window;
  const bool matched =
      air.severity && *air.severity <= Severity::kLight && !air.convection && air.gusts.empty();
  return matched ? CoverageGround::holds : CoverageGround::unmatched_air;
}

std::string ground_word(CoverageGround ground) {
  switch (ground) {
    case CoverageGround::holds:
      return "holds";
    case CoverageGround::short_window:
      return "window";
    case CoverageGround::unmatched_air:
      return "air";
    case CoverageGround::stall_entry:
      return "stall";
  }
  return "";
}

}  // namespace stallwright
