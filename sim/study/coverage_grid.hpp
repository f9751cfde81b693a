#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "sim/reduction/intervals.hpp"
#include "sim/study/nested_windows.hpp"

namespace stallwright {

/// The coverage study: in each cell, one air and one pilot, how often do the 95 % intervals hold the truth, by set point
/// and window length? What a cell gave is known again by a hash of all its values.

/// 64-bit FNV-1a; it goes on from a hash before, so that the hash after 400 sorties can be checked in parts, each
/// from where the one before it ended.
inline constexpr std::uint64_t kHashSeed = 0xcbf29ce484222325u;
std::uint64_t hash_bytes(std::uint64_t before, const std::string& bytes);
/// Over the exact bits of each line's error and half-width and its two flags, low byte first.
std::uint64_t hash_values(std::uint64_t before, const std::vector<WindowValue>& values);
std::string hash_text(std::uint64_t hash);  ///< 16 hexadecimal digits

/// One line over all sorties of a cell.
struct CoverageTally {
  int found = 0, covered = 0;
  double squared_kt2 = 0.0, half_widths_kt = 0.0;  ///< sums over those found

  void add(const WindowValue& value);
  double share() const { return found > 0 ? static_cast<double>(covered) / found : kNone; }
  double rms_error_kt() const;
  double mean_half_width_kt() const { return found > 0 ? half_widths_kt / found : kNone; }
};

/// What is asked of a share: the interval of Clopper and Pearson, 95 %, meets 0.93 to 0.97.
inline constexpr Interval kAskedCoverage{0.93, 0.97};
/// Shares of `found` sorties whose interval meets it, from the least to the greatest; found >= 1.
Interval shares_within(int found);

/// Whether what a line's interval takes for granted is so, as far as that is known without its outcome.
enum class CoverageGround {
  holds,
  short_window,  ///< under three blocks of 3 s: what moves slowly cannot be seen in the record, and is left out
  unmatched_air,  ///< the share of slow motion was matched to light air; gusts that are stronger, or thermals, differ
  stall_entry,  ///< no steady record: the lag of lift is taken as known, and one entry stands for all
};
CoverageGround coverage_ground(const WindowLine& line, const AirPreset& air);
std::string ground_word(CoverageGround ground);  ///< "holds", "window", "air", "stall"

}  // namespace stallwright
