#pragma once
#include "aircraft/aircraft.hpp"
#include "aircraft/math/elementary.hpp"
#include "aircraft/math/table.hpp"

namespace stallwright {

/// What engine and propeller do at one moment.
template <class T>
struct Propulsion {
  Vec3<T> force_B, moment_B;   ///< about the centre of gravity
  Vec3<T> angular_momentum_B;  ///< of the turning parts
  T thrust_n, shaft_power_w, advance_ratio;
  T spin_rate_radps2;  ///< d(propeller speed)/dt
  T wash_mps;          ///< induced axial speed at the disc (twice that far behind)
  T swirl_radps;       ///< mean rotation of the slipstream far behind, about the shaft
};

/// Share of sea-level power that air of this density leaves a naturally aspirated engine.
///   P/P0 = sigma - (1 - sigma)/7.55                      [GAGG_FERRAR, from memory]
template <class T>
T altitude_power(T density_kgpm3) {
  const T sigma = density_kgpm3 / 1.225;
  return sigma - (T(1) - sigma) / 7.55;
}

/// Torque that motoring the engine costs, N m, against the way it turns: half of it dry friction, half growing with
/// speed (common practice). Dry friction sets in over the first 10 rad/s, so that a stopped propeller stays stopped.
template <class T>
T friction_torque(const EngineType& engine, T speed_radps) {
  const T dry = speed_radps / math::sqrt(speed_radps * speed_radps + T(100));
  return engine.friction_torque_nm * (T(0.5) * dry + T(0.5) * speed_radps / engine.rated_speed_radps);
}

/// Engine torque at the shaft, N m.
///   Q = Q_full [throttle + (1 - throttle) share min(1, speed_idle/speed)] f(density) - Q_friction
/// Open, torque is taken constant over speed, as for a piston engine near rated speed. Closed, the throttle is choked
/// and passes a fixed flow of air, so it is the power that stays and torque falls as the propeller windmills faster.
///   share  of full torque that just turns the propeller at idle speed in still air
template <class T>
T engine_torque(const EngineType& engine, double idle_share, T throttle, T speed_radps, T density_kgpm3) {
  const double full = engine.rated_power_w / engine.rated_speed_radps + engine.friction_torque_nm;
  const T slowed = math::min(T(1), T(engine.idle_speed_radps) / math::max(speed_radps, T(1)));
  const T share = throttle + (T(1) - throttle) * idle_share * slowed;
  return full * altitude_power(density_kgpm3) * share - friction_torque(engine, speed_radps);
}

/// Propeller and engine.
///   T = rho n^2 D^4 C_T(J),  Q = rho n^2 D^5 C_P(J)/(2 pi),  J = u/(n D)          (definitions)
///   disc induced speed v = (-u + sqrt(u^2 + 2 T/(rho A)))/2                       [momentum theory, GLAUERT]
///   normal force and asymmetric-loading moment proportional to the sine of the inflow angle at the disc:
///   N = slope qbar A sin(angle),  M = slope T D sin(angle) (nose left for flow from below; right-hand rotation).
/// The torque that the airframe feels is the engine's, -Q_engine: what exceeds the propeller's spins it up.
/// Table ends are held; n is kept above 1 rev/s, where the forces have all but vanished.
template <class T>
Propulsion<T> propulsion(const Aircraft& aircraft, const AirframeState<T>& state,
                         const RelativeFlow<T>& flow) {
  const PropellerType& propeller = aircraft.type.propeller;
  const double diameter = propeller.diameter_m;
  const Vec3<double>& shaft = aircraft.shaft_B;
  const Vec3<T> hub = {T(aircraft.hub_B.x), T(aircraft.hub_B.y), T(aircraft.hub_B.z)};
  const Vec3<T> axis = {T(shaft.x), T(shaft.y), T(shaft.z)};

  const Vec3<T> v = flow.velocity_B + cross(flow.rate_B, hub);
  const T u = dot(v, axis);
  const Vec3<T> across = v - axis * u;
  const T speed = math::sqrt(dot(v, v));
  const T n = math::max(state.propeller_radps / (2.0 * math::kPi), T(1));
  const T rho = flow.density_kgpm3;

  Propulsion<T> out;
  out.advance_ratio = u / (n * diameter);
  const T ct = math::interpolate(propeller.advance_ratio, propeller.thrust_coefficient, out.advance_ratio);
  const T cp = math::interpolate(propeller.advance_ratio, propeller.power_coefficient, out.advance_ratio);
  const double d4 = diameter * diameter * diameter * diameter;
  out.thrust_n = rho * n * n * d4 * ct;
  const T torque = rho * n * n * (d4 * diameter / (2.0 * math::kPi)) * cp;
  const T engine =
      engine_torque(aircraft.type.engine, aircraft.idle_throttle, state.throttle, state.propeller_radps, rho);
  out.shaft_power_w = engine * state.propeller_radps;
  out.spin_rate_radps2 = (engine - torque) / propeller.inertia_kgm2;

  // Momentum theory holds while the disc does not reverse the flow; the floor keeps the root real beyond that.
  const T along = math::max(u, T(0));
  const T jet =
      math::max(along * along + T(2) * out.thrust_n / (rho * aircraft.disc_area_m2), T(0.25) * along * along);
  out.wash_mps = T(0.5) * (math::sqrt(jet) - along);
  // Angular momentum carried away: Q = (mass flow) x (mean radius^2) x swirl, mean radius^2 = R^2/2.
  const T mass_flow = rho * aircraft.disc_area_m2 * math::max(along + out.wash_mps, T(1));
  out.swirl_radps = torque / (mass_flow * (diameter * diameter / 8.0));

  const Vec3<T> side = across * (T(1) / math::max(speed, T(1)));  // sine of the inflow angle, as a vector
  const T qbar = T(0.5) * rho * speed * speed;
  const Vec3<T> normal_force = side * (-propeller.normal_force_slope * qbar * aircraft.disc_area_m2);
  out.force_B = axis * out.thrust_n + normal_force;
  const T loading = propeller.asymmetric_moment * out.thrust_n * diameter;
  // The blade that moves against the cross flow bites more. Flow from below (side.z > 0) loads the descending
  // right blade: nose left (-z). Flow from the right (side.y > 0) loads the upper blade, moving right: nose down.
  const Vec3<T> disc_moment = {T(0), -loading * side.y, -loading * side.z};
  out.moment_B = cross(hub, out.force_B) + disc_moment - axis * engine;
  out.angular_momentum_B = axis * (propeller.inertia_kgm2 * state.propeller_radps);
  return out;
}

}  // namespace stallwright
