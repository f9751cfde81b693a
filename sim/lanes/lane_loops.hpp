#pragma once
// The loops of a kernel, included by one file for each kind of processor.
#include <type_traits>

#include "sim/lanes/lane_group.hpp"

namespace stallwright::lanes {

template <class T>
LaneGroup<T>& as_group(double* numbers) {
  static_assert(std::is_trivially_copyable_v<LaneGroup<T>>);
  return *reinterpret_cast<LaneGroup<T>*>(numbers);
}

template <class T>
DrydenParams<T> turbulence_now(const LaneScene& scene, const LaneGroup<T>& g, const T& height_m) {
  DrydenParams<T> now{turbulence_scales(scene.air->intensity, height_m), T(scene.air->span_m)};
  if (scene.own_sigma) now.scales.sigma_u_mps = now.scales.sigma_v_mps = now.scales.sigma_w_mps = g.sigma_mps;
  return now;
}

template <class T>
void make_air(const LaneScene& scene, LaneGroup<T>& g) {
  const SortieAir& here = *scene.air;
  const T height = height_above_ground(here, g.flight.rigid);
  g.air = air_sample(here, g.flight.rigid, gust(turbulence_now(scene, g, height), g.turbulence), g.shake);
}

/// Turbulence and shaking one step on, over the way that the step began with.
template <class T>
void move_air(const LaneScene& scene, const T& height_m, const T& airspeed_mps, const T& step,
              LaneGroup<T>& g) {
  const SortieAir& here = *scene.air;
  g.turbulence = advance(turbulence_now(scene, g, height_m), g.turbulence, airspeed_mps, T(kStep_s),
                         dryden_noise(g.key, step));
  g.shake = advance_shake(g.shake, airspeed_mps, here.mean_chord_m, kStep_s, shake_noise(g.key, step));
}

template <class T>
void observe(const LaneScene& scene, double* numbers) {
  LaneGroup<T>& g = as_group<T>(numbers);
  const Aircraft& aircraft = *scene.aircraft;
  if (scene.makes_air) make_air(scene, g);
  const FlightDerivative<T> now = flight_derivative(aircraft, g.flight, g.controls, g.air);
  g.slope = now.rate;
  g.felt = felt(aircraft, g.flight, g.air, now);
  g.sensed = sensed_truth(*scene.air, g.flight, g.air, g.felt, g.controls);
  const T fixes(static_cast<double>(kGpsSamples));
  const auto fix = g.tick - fixes * math::floor(T(g.tick / fixes)) == T(0.0);
  const Sensed<T> sensed =
      advance(aircraft.type, g.grade, g.errors, sensor_noise(g.key, g.tick), g.instruments, g.sensed, fix);
  g.instruments = sensed.state;
  g.readings = sensed.readings;
  g.attached_root = attached_root(g.flight.airframe);
}

/// Steps flight, then air.
///   number  of the step within the tick
template <class T, class Step>
void step(const LaneScene& scene, double number, LaneGroup<T>& g, Step&& flight) {
  const T height = height_above_ground(*scene.air, g.flight.rigid);
  const T airspeed = norm(relative_flow(g.flight.rigid, g.air).velocity_B);
  g.flight = flight();
  if (scene.makes_air) move_air(scene, height, airspeed, T(g.tick * T(2.0) + T(number)), g);
}

template <class T>
void first_step(const LaneScene& scene, double* numbers) {
  LaneGroup<T>& g = as_group<T>(numbers);
  step(scene, 0.0, g,
       [&] { return flight_step_from(g.slope, *scene.aircraft, g.flight, g.controls, g.air); });
  if (scene.makes_air) make_air(scene, g);
}

template <class T>
void second_step(const LaneScene& scene, double* numbers) {
  LaneGroup<T>& g = as_group<T>(numbers);
  step(scene, 1.0, g, [&] { return flight_step(*scene.aircraft, g.flight, g.controls, g.air); });
  g.tick = g.tick + T(1.0);
  const auto flight = std::bit_cast<AsArray<T, FlightState<T>>>(g.flight);
  g.unsound = T(0.0);
  for (const T& number : flight) g.unsound = g.unsound + (number - number);
}

template <class T>
LaneKernel kernel(const char* name) {
  return {name, static_cast<int>(sizeof(T) / sizeof(double)), observe<T>, first_step<T>, second_step<T>};
}

}  // namespace stallwright::lanes
