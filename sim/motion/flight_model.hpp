#pragma once
#include <concepts>
#include <cstddef>

#include "sim/motion/flight.hpp"

namespace stallwright {

/// What trim and linearise ask of an aeroplane: any model of forces and moments that offers this may be flown,
/// trimmed and linearised.
///   State                      all that moves, doubles only: `rigid`, what the aeroplane remembers, its controls
///   kMemory                    how many numbers it remembers (0 or more)
///   each_memory(state, visit)  calls visit(number, unit) for each of them; unit is the size of a middling change
///   each_input(state, visit)   calls visit(number) for elevator, aileron, rudder (rad), throttle, then any more
///   rate(state)                d(state)/dt; what it gives for the inputs is not looked at
///   gravity_mps2(altitude_m)   of the field that `rate` flies in
template <class M>
concept FlightModel = requires(const M& model, typename M::State& state) {
  { model.rate(state) } -> std::same_as<typename M::State>;
  { model.gravity_mps2(0.0) } -> std::same_as<double>;
  { M::kMemory } -> std::convertible_to<std::size_t>;
  { state.rigid } -> std::same_as<RigidState<double>&>;
  M::each_memory(state, [](double&, double) {});
  M::each_input(state, [](double&) {});
};

/// Our own aeroplanes in air that is held.
struct AircraftModel {
  using State = FlightState<double>;
  /// Induced inflow, lagged angle and separation of every strip, downwash, sidewash, wake, propeller speed.
  static constexpr std::size_t kMemory = 3 * kStrips + kTailStrips + kFinStrips + 2;

  const Aircraft& aircraft;
  AirSample<double> air;

  State rate(const State& s) const { return flight_derivative(aircraft, s, Controls<double>{}, air).rate; }
  double gravity_mps2(double altitude_m) const { return gravity(altitude_m); }

  template <class S, class Visit>
  static void each_memory(S& state, Visit&& visit) {
    auto& s = state.airframe;
    for (auto& v : s.inflow_mps) visit(v, 10.0);
    for (auto& v : s.lagged_alpha_rad) visit(v, 1.0);
    for (auto& v : s.separation) visit(v, 1.0);
    for (auto& v : s.downwash_mps) visit(v, 10.0);
    for (auto& v : s.sidewash_mps) visit(v, 10.0);
    visit(s.wake, 1.0);
    visit(s.propeller_radps, 100.0);
  }

  template <class S, class Visit>
  static void each_input(S& state, Visit&& visit) {
    auto& s = state.airframe;
    visit(s.elevator_rad);
    visit(s.aileron_rad);
    visit(s.rudder_rad);
    visit(s.throttle);
    visit(s.flap_rad);
  }
};
static_assert(FlightModel<AircraftModel>);

}  // namespace stallwright
