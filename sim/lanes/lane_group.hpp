#pragma once
#include <vector>

#include "sim/motion/felt.hpp"
#include "sim/sortie/sortie_air.hpp"

namespace stallwright {

/// What is kept of a group of aeroplanes that are stepped side by side. Numbers of type T only, so that the group of lanes
/// and the group of one (T = double) have their numbers in the same order: number k of lane l lies at k * lanes + l.
template <class T>
struct LaneGroup {
  FlightState<T> flight;
  FlightState<T> slope;  ///< of flight, as last observed
  AirSample<T> air;
  DrydenState<T> turbulence;
  ShakeState<T> shake;
  random::NoiseKey<T> key;
  T tick;  ///< whole; counts from the start of each sortie
  Controls<T> controls;
  Felt<T> felt;
  SystematicErrors<T> errors;
  SampleGrade<T> grade;
  T sigma_mps;  ///< of the gusts, where the scene's air is of one strength at every height
  InstrumentState<T> instruments;
  SensedTruth<T> sensed;
  Readings<T> readings;
  T attached_root;
  T unsound;  ///< 0 while every number of flight is finite, otherwise NaN
};

/// What all lanes of a group have in common.
struct LaneScene {
  const Aircraft* aircraft = nullptr;
  const SortieAir* air = nullptr;
  /// The kernel makes the air and moves it on: Dryden turbulence alone. Otherwise whoever calls it puts the air of every
  /// lane into the group before `observe` and before `second_step`.
  bool makes_air = false;
  /// The air made is of one strength at every height: each lane's own, LaneGroup::sigma_mps, and not that of `air`.
  bool own_sigma = false;
};

/// The loops over lanes, built for one kind of processor. A tick: observe, (controls are put in), first_step, second_step.
struct LaneKernel {
  const char* name = "";  ///< "x86-64-v3"; the psABI's names of processor levels
  int lanes = 1;
  /// Loads, rates and what the instruments read: fills slope, felt, sensed, readings, attached_root.
  void (*observe)(const LaneScene& scene, double* group) = nullptr;
  void (*first_step)(const LaneScene& scene, double* group) = nullptr;
  void (*second_step)(const LaneScene& scene, double* group) = nullptr;
};

/// Every kernel that this processor can run, the simplest (one lane, our own scalar code) first, the widest last.
std::vector<LaneKernel> lane_kernels();
/// The widest; or the one named by the environment variable STALLWRIGHT_LANES ("scalar", "x86-64-v2", -v3, -v4).
/// Throws InputError for a name that is not among them.
LaneKernel chosen_lane_kernel();

}  // namespace stallwright
