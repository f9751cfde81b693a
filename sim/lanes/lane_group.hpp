#pragma once
#include <vector>

#include "sim/motion/felt.hpp"
#include "sim/motion/flight.hpp"

namespace stallwright {

/// What is kept of a group of aeroplanes that are stepped side by side. Numbers of type T only, so that the group of lanes
/// and the group of one (T = double) have their numbers in the same order: number k of lane l lies at k * lanes + l.
template <class T>
struct LaneGroup {
  FlightState<T> flight;
  FlightState<T> slope;  ///< of flight, as last looked at
  AirSample<T> air;
  Controls<T> controls;
  Felt<T> felt;
};

/// The loops over lanes, built for one kind of processor.
struct LaneKernel {
  const char* name = "";  ///< "x86-64-v3"; the psABI's names of processor levels
  int lanes = 1;
  /// Loads and rates at flight and air: fills slope and felt.
  void (*look)(const Aircraft& aircraft, double* group) = nullptr;
  /// Flight one step on; `slope` must be that of flight and air.
  void (*step_from_slope)(const Aircraft& aircraft, double* group) = nullptr;
  void (*step)(const Aircraft& aircraft, double* group) = nullptr;
};

/// Every kernel that this processor can run, the simplest (one lane, our own scalar code) first, the widest last.
std::vector<LaneKernel> lane_kernels();
/// The widest; or the one named by the environment variable STALLWRIGHT_LANES ("scalar", "x86-64-v2", -v3, -v4).
/// Throws InputError for a name that is not among them.
LaneKernel chosen_lane_kernel();

}  // namespace stallwright
