#pragma once
#include <array>
#include <vector>

#include "sim/reduction/own_table.hpp"
#include "sim/reduction/own_time.hpp"

namespace stallwright {

inline constexpr double kRowInterval_s = 0.02;

/// The numbers of a log at even moments, stretch by stretch; quantities the log lacks are empty, as in OwnTable.
struct EvenSamples {
  std::vector<double> t_s;
  std::array<std::vector<double>, kQuantities> values;
  std::size_t gaps = 0;
  double largest_gap_s = 0.0;
};

/// In a straight line between neighbours; marks and flaps are held. Moments at which some mapped quantity is not known,
/// because its neighbours are too far apart, are left out.
EvenSamples resampled(const OwnTable& table, const OwnTime& time);

}  // namespace stallwright
