#pragma once
// Definitions of the templates declared in airframe.hpp.
#include <algorithm>

#include "aircraft/strips_met.hpp"

namespace stallwright {

inline constexpr std::size_t kRootStrips = 6;  ///< middle strips of the wing whose wake meets the tail

namespace detail {

/// Mean share of the wing root that is separated.
template <class T>
T root_separation(const AirframeState<T>& state) {
  constexpr std::size_t first = (kWingStrips - kRootStrips) / 2;
  T sum(0);
  for (std::size_t i = first; i < first + kRootStrips; ++i) sum = sum + (T(1) - state.separation[i]);
  return sum / T(kRootStrips);
}

template <class T>
void add(Vec3<T>& to, const Vec3<T>& what) {
  to = to + what;
}

/// Fuselage, gear and all else that is not a strip.
template <class T>
void add_body(const Aircraft& aircraft, const RelativeFlow<T>& flow, Vec3<T>& force, Vec3<T>& moment) {
  const BodyType& body = aircraft.type.body;
  const Vec3<T> centre = lift<T>(aircraft.body_centre_B);
  const Vec3<T> v = flow.velocity_B + cross(flow.rate_B, centre);
  const T speed = math::sqrt(dot(v, v));
  const T half_rho = T(0.5) * flow.density_kgpm3;
  Vec3<T> f = v * (-half_rho * speed * body.drag_area_m2);
  f.y =
      f.y - half_rho * v.y * (speed * body.side_force_area_m2 + math::abs(v.y) * body.crossflow_area_side_m2);
  f.z = f.z - half_rho * v.z * math::abs(v.z) * body.crossflow_area_up_m2;
  add(force, f);
  add(moment, cross(centre, f));
  // Munk's moment of a slender body, 2 qbar (k2 - k1) vol sin cos: it turns the body across the flow.
  const T munk = flow.density_kgpm3 * body.munk_volume_m3 * v.x;
  add(moment, Vec3<T>{T(0), munk * v.z, -munk * v.y});
}

}  // namespace detail

template <class T>
std::array<T, kWingStrips> wing_circulation(const Aircraft& aircraft, const AirframeState<T>& state,
                                            const RelativeFlow<T>& flow) {
  const Propulsion<T> power = propulsion(aircraft, state, flow);
  const FlapEffect<T> flap = flap_effect(aircraft.type.flaps, state.flap_rad);
  std::array<T, kWingStrips> circulation;
  for (std::size_t i = 0; i < kWingStrips; ++i) {
    const StripFlow<T> local = strip_flow(state, i, strip_motion(aircraft, i, state, flow, power));
    const T root_x = root_attached(state.separation[i]);
    const SectionCoefficients<T> section =
        section_coefficients(aircraft.type.wing.section, local.alpha_rad, state.separation[i],
                             section_shift(aircraft, i, state, flap, root_x));
    circulation[i] = T(0.5) * local.speed_mps * aircraft.strips[i].chord_m * section.lift;
  }
  return circulation;
}

template <class T>
Vec3<T> probe_velocity(const Aircraft& aircraft, const RelativeFlow<T>& flow,
                       const std::array<T, kWingStrips>& circulation) {
  Vec3<T> v = flow.velocity_B + cross(flow.rate_B, detail::lift<T>(aircraft.probe_B));
  for (std::size_t j = 0; j < kWingStrips; ++j)
    v = v - detail::lift<T>(aircraft.probe_by_wing[j]) * circulation[j];
  return v;
}

template <class T>
Vec3<T> probe_velocity(const Aircraft& aircraft, const AirframeState<T>& state, const RelativeFlow<T>& flow) {
  return probe_velocity(aircraft, flow, wing_circulation(aircraft, state, flow));
}

template <class T>
AirframeLoads<T> airframe_loads(const Aircraft& aircraft, const AirframeState<T>& state,
                                const RelativeFlow<T>& flow, const Controls<T>& controls) {
  AirframeLoads<T> out;
  find_airframe_loads(aircraft, state, flow, controls, out, out.rate);
  return out;
}

template <class T>
void find_airframe_loads(const Aircraft& aircraft, const AirframeState<T>& state, const RelativeFlow<T>& flow,
                         const Controls<T>& controls, AirframeForces<T>& out, AirframeState<T>& rate) {
  const AircraftType& type = aircraft.type;
  const Propulsion<T> power = propulsion(aircraft, state, flow);
  out.force_B = power.force_B;
  out.moment_B = power.moment_B;
  out.angular_momentum_B = power.angular_momentum_B;
  out.thrust_n = power.thrust_n;
  out.shaft_power_w = power.shaft_power_w;
  out.spin_rate_radps2 = power.spin_rate_radps2;
  rate.propeller_radps = power.spin_rate_radps2;

  const StripsMet<T> met = strips_met(aircraft, state, flow, power);
  const std::array<T, kStrips>& speed = met.speed_mps;
  std::array<T, kStrips> circulation, relax;
  const T half_rho = T(0.5) * flow.density_kgpm3;
  for (std::size_t i = 0; i < kStrips; ++i) {
    const Strip& strip = aircraft.strips[i];
    const SectionType& section = section_of(type, i);
    const SectionCoefficients<T> c =
        section_coefficients(section, met.angle(i), state.separation[i], met.root_attached[i], met.shift[i]);

    // Forces across and along the local flow, in the strip's own axes, then turned to body axes.
    const T q_area = half_rho * speed[i] * strip.area_m2;  // times speed once more, below
    const T buffet = i < kWingStrips
                         ? type.buffet_strength * (T(1) - state.separation[i]) * detail::shake_at(flow, i)
                         : T(0);
    const T lift_force = q_area * (c.lift + buffet);
    const T drag_force = q_area * c.drag;
    const T forward = lift_force * met.normal_mps[i] - drag_force * met.along_mps[i];
    const T towards_normal = -lift_force * met.along_mps[i] - drag_force * met.normal_mps[i];
    const Vec3<T> force =
        detail::lift<T>(strip.chord_B) * forward + detail::lift<T>(strip.normal_B) * towards_normal;
    const Vec3<T> r = detail::lift<T>(strip.r_B);
    detail::add(out.force_B, force);
    detail::add(out.moment_B, cross(r, force) + detail::lift<T>(strip.span_B) *
                                                    (q_area * speed[i] * strip.chord_m * c.moment));

    circulation[i] = T(0.5) * speed[i] * strip.chord_m * c.lift;

    // Goman and Khrabrov: tau1 dx/dt + x = x0(alpha - tau2 dalpha/dt). The delayed angle is kept as a lag of
    // tau2, which equals alpha - tau2 d(alpha)/dt on any steady ramp and stays finite in gusts.
    const T delay = math::min(speed[i] * strip.delay_per_m, T(kFastestSeparation_ps));
    relax[i] = math::min(speed[i] * strip.separation_per_m, T(kFastestSeparation_ps));
    rate.lagged_alpha_rad[i] = detail::wrapped(T(met.alpha_rad[i] - state.lagged_alpha_rad[i])) * delay;
  }
  const std::array<T, kStrips> quasi_static = static_separations(aircraft, state, met.shift);
  for (std::size_t i = 0; i < kStrips; ++i) {
    T towards = quasi_static[i];
    if (i < kWingStrips) {
      towards = T(0);
      for (std::size_t j = 0; j < kWingStrips; ++j)
        towards = towards + aircraft.separation_spread[i][j] * quasi_static[j];
    }
    rate.separation[i] = (towards - state.separation[i]) * relax[i];
  }

  detail::add_body(aircraft, flow, out.force_B, out.moment_B);

  // Induced flow follows the circulation, and shed vorticity is left behind, over some chords of travel.
  const auto induced = [&](const auto& influence, std::size_t first, std::size_t count) {
    for (std::size_t k = 0; k < count; ++k) {
      T steady(0);
      for (std::size_t j = 0; j < count; ++j) steady = steady + influence[k][j] * circulation[first + j];
      const T pace =
          math::min(speed[first + k] * aircraft.strips[first + k].inflow_per_m, T(kFastestInflow_ps));
      rate.inflow_mps[first + k] =
          (steady - kShedShare * met.own_normal_mps[first + k] - state.inflow_mps[first + k]) * pace;
    }
  };
  std::copy(circulation.begin(), circulation.begin() + kWingStrips, out.circulation_m2ps.begin());
  induced(aircraft.wing_influence, 0, kWingStrips);
  induced(aircraft.tail_influence, kWingStrips, kTailStrips);
  induced(aircraft.fin_influence, kWingStrips + kTailStrips, kFinStrips);

  const T airspeed = math::sqrt(dot(flow.velocity_B, flow.velocity_B));
  const T travel = math::min(airspeed * (1.0 / aircraft.wake_travel_m), T(kFastestInflow_ps));
  for (std::size_t k = 0; k < kTailStrips; ++k) {
    T steady(0);
    for (std::size_t j = 0; j < kWingStrips; ++j)
      steady = steady + aircraft.tail_by_wing[k][j] * circulation[j];
    rate.downwash_mps[k] = (steady - state.downwash_mps[k]) * travel;
  }
  for (std::size_t k = 0; k < kFinStrips; ++k) {
    T steady(0);
    for (std::size_t j = 0; j < kWingStrips; ++j)
      steady = steady + aircraft.fin_by_wing[k][j] * circulation[j];
    rate.sidewash_mps[k] = (steady - state.sidewash_mps[k]) * travel;
  }
  rate.wake = (detail::root_separation(state) - state.wake) * travel;

  control_rates(type, state, controls, rate);
}

}  // namespace stallwright
