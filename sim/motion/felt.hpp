#pragma once
#include "sim/motion/flight.hpp"

namespace stallwright {

/// What is felt aboard at one moment: the part of the loads and rates that instruments and logs ask for.
template <class T>
struct Felt {
  Vec3<T> specific_force_B_mps2;  ///< at the centre of gravity
  Vec3<T> angular_acceleration_B_radps2;
  Vec3<T> probe_velocity_B_mps;  ///< see probe_velocity
  T climb_mps{}, thrust_n{};
};

template <class T>
Felt<T> felt(const Aircraft& aircraft, const FlightState<T>& state, const AirSample<T>& air,
             const FlightDerivative<T>& now) {
  return {now.specific_force_B_mps2, now.rate.rigid.rate_B_radps,
          probe_velocity(aircraft, relative_flow(state.rigid, air), now.loads.circulation_m2ps),
          -now.rate.rigid.position_E_m.z, now.loads.thrust_n};
}

}  // namespace stallwright
