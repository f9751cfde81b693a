#pragma once
#include "aircraft/airframe.hpp"
#include "sim/air/standard_atmosphere.hpp"
#include "sim/motion/rigid_body.hpp"
#include "sim/motion/runge_kutta.hpp"

namespace stallwright {

/// Everything about the aeroplane that must survive a step: its motion and what its airframe remembers.
template <class T>
struct FlightState {
  RigidState<T> rigid;
  AirframeState<T> airframe;
  friend bool operator==(const FlightState&, const FlightState&) = default;
};

/// The air around the aeroplane, held over one step.
template <class T>
struct AirSample {
  T density_kgpm3{T(1.225)};
  Vec3<T> wind_E_mps;  ///< steady wind, towards (not from), earth axes
  Vec3<T> gust_B_mps;  ///< turbulence at the centre of gravity, velocity of the air, body axes
  Vec3<T>
      gust_rate_B_radps;  ///< rotation of the air about the centre of gravity: air at r moves by gust + rate x r
  std::array<T, kShakes> shake{};
};

inline constexpr double kStep_s = 0.01;  ///< the one time step of the flight, 100 Hz
inline constexpr double kStandardGravity_mps2 = 9.80665;

/// How the air meets the aeroplane: its own motion less that of the air, in body axes.
template <class T>
RelativeFlow<T> relative_flow(const RigidState<T>& s, const AirSample<T>& air) {
  RelativeFlow<T> flow;
  const Mat3<T> r = rotation_EB(s.attitude_EB);
  const Vec3<T> wind_B = transpose(r) * air.wind_E_mps;
  flow.velocity_B = s.velocity_B_mps - wind_B - air.gust_B_mps;
  flow.rate_B = s.rate_B_radps - air.gust_rate_B_radps;
  flow.density_kgpm3 = air.density_kgpm3;
  flow.shake = air.shake;
  return flow;
}

/// Forces and rates of the whole aeroplane at one moment.
template <class T>
struct FlightDerivative {
  FlightState<T> rate;
  AirframeForces<T> loads;
  /// What an accelerometer at the centre of gravity feels: force other than weight over mass, body axes, m/s2.
  Vec3<T> specific_force_B_mps2;
};

template <class T>
FlightDerivative<T> flight_derivative(const Aircraft& aircraft, const FlightState<T>& s,
                                      const Controls<T>& controls, const AirSample<T>& air) {
  FlightDerivative<T> out;
  find_airframe_loads(aircraft, s.airframe, relative_flow(s.rigid, air), controls, out.loads,
                      out.rate.airframe);
  Inertia<T> inertia;
  inertia.mass_kg = T(aircraft.mass.mass_kg);
  for (std::size_t i = 0; i < 9; ++i) {
    inertia.tensor_kgm2.m[i] = T(aircraft.mass.inertia.m[i]);
    inertia.inverse.m[i] = T(aircraft.inertia_inverse.m[i]);
  }
  // The shaft's own acceleration is inside the engine torque already (see propulsion.hpp).
  const Wrench<T> on{out.loads.force_B, out.loads.moment_B, out.loads.angular_momentum_B};
  out.rate.rigid = rigid_rates(s.rigid, inertia, on, gravity(T(-s.rigid.position_E_m.z)));
  out.specific_force_B_mps2 = out.loads.force_B * (T(1) / inertia.mass_kg);
  return out;
}

/// The flight one step on, air and controls held.
///   first  flight_derivative of this state in this air, under whatever controls: they move nothing at once but their own
///          rates, which are found anew
template <class T>
FlightState<T> flight_step_from(const FlightState<T>& first, const Aircraft& aircraft,
                                const FlightState<T>& s, const Controls<T>& controls, const AirSample<T>& air,
                                T step_s = T(kStep_s)) {
  FlightState<T> slope = first;
  control_rates(aircraft.type, s.airframe, controls, slope.airframe);
  FlightState<T> next = runge_kutta_step(s, step_s, slope, [&](const FlightState<T>& at) {
    return flight_derivative(aircraft, at, controls, air).rate;
  });
  next.rigid.attitude_EB = normalised(next.rigid.attitude_EB);
  // In a dive, thrown from one flow into another, a step of this lag may overshoot: a share of the chord stays one.
  for (T& x : next.airframe.separation) x = math::clamp(x, T(0), T(1));
  return next;
}
template <class T>
FlightState<T> flight_step(const Aircraft& aircraft, const FlightState<T>& s, const Controls<T>& controls,
                           const AirSample<T>& air, T step_s = T(kStep_s)) {
  return flight_step_from(flight_derivative(aircraft, s, controls, air).rate, aircraft, s, controls, air,
                          step_s);
}

}  // namespace stallwright
