#pragma once
// The loops of a kernel, included by one file for each kind of processor.
#include <cstring>

#include "sim/lanes/lane_group.hpp"

namespace stallwright::lanes {

template <class T>
LaneGroup<T>& as_group(double* numbers) {
  static_assert(std::is_trivially_copyable_v<LaneGroup<T>>);
  return *reinterpret_cast<LaneGroup<T>*>(numbers);
}

template <class T>
void look(const Aircraft& aircraft, double* numbers) {
  LaneGroup<T>& g = as_group<T>(numbers);
  const FlightDerivative<T> now = flight_derivative(aircraft, g.flight, g.controls, g.air);
  g.slope = now.rate;
  g.felt = felt(aircraft, g.flight, g.air, now);
}

template <class T>
void step_from_slope(const Aircraft& aircraft, double* numbers) {
  LaneGroup<T>& g = as_group<T>(numbers);
  g.flight = flight_step_from(g.slope, aircraft, g.flight, g.controls, g.air);
}

template <class T>
void step(const Aircraft& aircraft, double* numbers) {
  LaneGroup<T>& g = as_group<T>(numbers);
  g.flight = flight_step(aircraft, g.flight, g.controls, g.air);
}

template <class T>
LaneKernel kernel(const char* name) {
  return {name, static_cast<int>(sizeof(T) / sizeof(double)), look<T>, step_from_slope<T>, step<T>};
}

}  // namespace stallwright::lanes
