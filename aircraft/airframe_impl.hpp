#pragma once
// Definitions of the templates declared in airframe.hpp.

namespace stallwright {

/// Velocity deficit of the wing's separated wake where tail or fin stand full in it, and the wake's half width in
/// mean chords (order of magnitude from tests of wakes behind stalled wings; from memory).
inline constexpr double kWakeDeficit = 0.25;
inline constexpr double kWakeHalfWidthChords = 0.5;
/// Flow-angle shake at tail and fin, as a share of the airspeed, full in the wake.
inline constexpr double kWakeShake = 0.06;
inline constexpr std::size_t kRootStrips = 6;  ///< middle strips of the wing whose wake meets the tail

namespace detail {

/// Which of the shake channels a strip of wing or tail feels: outer wing, inner wing or tail, left or right.
inline std::size_t shake_channel(std::size_t i) {
  if (i < kWingStrips) {
    const bool left = i < kWingStrips / 2;
    const std::size_t from_tip = left ? i : kWingStrips - 1 - i;
    return (from_tip < kWingStrips / 4 ? 0u : 2u) + (left ? 0u : 1u);
  }
  return i < kWingStrips + kTailStrips / 2 ? 4u : 5u;
}

/// The shake that a strip feels; the fin, between the two sides of the tail, their difference (of unit variance too).
template <class T>
T shake_at(const RelativeFlow<T>& flow, std::size_t i) {
  constexpr double kRootHalf = 0.70710678118654752440;
  if (i >= kWingStrips + kTailStrips) return (flow.shake[5] - flow.shake[4]) * kRootHalf;
  return flow.shake[shake_channel(i)];
}

/// Mean share of the wing root that is separated.
template <class T>
T root_separation(const AirframeState<T>& state) {
  constexpr std::size_t first = (kWingStrips - kRootStrips) / 2;
  T sum(0);
  for (std::size_t i = first; i < first + kRootStrips; ++i) sum = sum + (T(1) - state.separation[i]);
  return sum / T(kRootStrips);
}

/// Slope of the wake's middle line against the body x axis: it leaves the wing along the flow less the downwash.
template <class T>
T wake_slope(const AirframeState<T>& state, const RelativeFlow<T>& flow) {
  const T along = math::max(flow.velocity_B.x, T(1));
  const T downwash = (state.downwash_mps[kTailStrips / 2 - 1] + state.downwash_mps[kTailStrips / 2]) * T(0.5);
  return math::clamp((flow.velocity_B.z - T(0.5) * downwash) / along, T(-1.5), T(1.5));
}

/// How squarely a place behind the wing stands in its wake, 0..1: a bell over the distance from the wake's middle line.
/// The fin stands behind the cabin too, whose separated flow fills what lies below that line: full there.
template <class T>
T wake_closeness(const Aircraft& aircraft, const Strip& place, bool on_fin, T slope) {
  const T off =
      (place.wake_rise_m - place.wake_arm_m * slope) / (kWakeHalfWidthChords * aircraft.mean_chord_m);
  const T bell = math::exp(-math::min(off * off, T(40)));
  return on_fin ? math::where(off < T(0), T(1), bell) : bell;
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
  std::array<T, kWingStrips> circulation;
  for (std::size_t i = 0; i < kWingStrips; ++i) {
    const StripFlow<T> local = strip_flow(state, i, strip_motion(aircraft, i, state, flow, power));
    const SectionCoefficients<T> section = section_coefficients(
        aircraft.type.wing.section, local.alpha_rad, state.separation[i], section_shift(aircraft, i, state));
    circulation[i] = T(0.5) * local.speed_mps * aircraft.strips[i].chord_m * section.lift;
  }
  return circulation;
}

template <class T>
Vec3<T> probe_velocity(const Aircraft& aircraft, const AirframeState<T>& state, const RelativeFlow<T>& flow) {
  Vec3<T> v = flow.velocity_B + cross(flow.rate_B, detail::lift<T>(aircraft.probe_B));
  const std::array<T, kWingStrips> circulation = wing_circulation(aircraft, state, flow);
  for (std::size_t j = 0; j < kWingStrips; ++j)
    v = v - detail::lift<T>(aircraft.probe_by_wing[j]) * circulation[j];
  return v;
}

/// What every strip meets. An array a quantity: each step below is a loop without branches whose rounds do not wait for each
/// other, which a compiler turns into vector instructions and a processor overlaps.
template <class T>
struct StripsMet {
  std::array<T, kStrips> own_normal_mps;  ///< before induction
  std::array<T, kStrips> along_mps, normal_mps, speed_mps, alpha_rad;
  std::array<T, kStrips> sine, cosine, fade;  ///< see SectionAngle
  std::array<SectionShift<T>, kStrips> shift;
  SectionAngle<T> angle(std::size_t i) const { return {sine[i], cosine[i], fade[i]}; }
};

inline const SectionType& section_of(const AircraftType& type, std::size_t i) {
  return i < kWingStrips                 ? type.wing.section
         : i < kWingStrips + kTailStrips ? type.tail.section
                                         : type.fin.section;
}

template <class T>
StripsMet<T> strips_met(const Aircraft& aircraft, const AirframeState<T>& state, const RelativeFlow<T>& flow,
                        const Propulsion<T>& power) {
  StripsMet<T> met;
  std::array<T, kStrips> zero_lift;
  const T slope = detail::wake_slope(state, flow);
  const T tail_wake =
      state.wake * detail::wake_closeness(aircraft, aircraft.strips[kWingStrips], false, slope);
  for (std::size_t i = 0; i < kStrips; ++i) {
    const StripMotion<T> motion = strip_motion(aircraft, i, state, flow, power);
    met.own_normal_mps[i] = motion.normal_mps;
    T along = motion.along_mps, normal = strip_normal(state, i, motion);
    if (i >= kWingStrips) {
      const T wake = i < kWingStrips + kTailStrips
                         ? tail_wake
                         : state.wake * detail::wake_closeness(aircraft, aircraft.strips[i], true, slope);
      const T before = math::sqrt(along * along + normal * normal);
      along = along * (T(1) - kWakeDeficit * wake);
      normal = normal + kWakeShake * wake * detail::shake_at(flow, i) * before;
    }
    met.along_mps[i] = along;
    met.normal_mps[i] = normal;
    met.shift[i] = section_shift(aircraft, i, state);
    zero_lift[i] = section_of(aircraft.type, i).zero_lift_rad + met.shift[i].zero_lift_rad;
  }
  for (std::size_t i = 0; i < kStrips; ++i)
    met.speed_mps[i] =
        math::sqrt(met.along_mps[i] * met.along_mps[i] + met.normal_mps[i] * met.normal_mps[i]);
  for (std::size_t i = 0; i < kStrips; ++i)
    met.alpha_rad[i] = math::atan2(met.normal_mps[i], met.along_mps[i]);
  for (std::size_t i = 0; i < kStrips; ++i) {
    const SectionAngle<T> angle = section_angle(met.alpha_rad[i], zero_lift[i]);
    met.sine[i] = angle.sine;
    met.cosine[i] = angle.cosine;
    met.fade[i] = angle.fade;
  }
  return met;
}

/// Quasi-static separation of every strip at the angle that its boundary layer has seen.
template <class T>
std::array<T, kStrips> static_separations(const Aircraft& aircraft, const AirframeState<T>& state,
                                          const std::array<SectionShift<T>, kStrips>& shift) {
  std::array<T, kStrips> upper, lower, x;
  for (std::size_t i = 0; i < kStrips; ++i) {
    const SeparationArguments<T> e = separation_arguments(
        section_of(aircraft.type, i), detail::wrapped(state.lagged_alpha_rad[i]), shift[i].stall_rad);
    upper[i] = e.upper;
    lower[i] = e.lower;
  }
  for (std::size_t i = 0; i < kStrips; ++i) x[i] = T(1) / (T(1) + math::exp(upper[i]) + math::exp(lower[i]));
  return x;
}

template <class T>
AirframeLoads<T> airframe_loads(const Aircraft& aircraft, const AirframeState<T>& state,
                                const RelativeFlow<T>& flow, const Controls<T>& controls) {
  const AircraftType& type = aircraft.type;
  const Propulsion<T> power = propulsion(aircraft, state, flow);
  AirframeLoads<T> out;
  out.force_B = power.force_B;
  out.moment_B = power.moment_B;
  out.angular_momentum_B = power.angular_momentum_B;
  out.thrust_n = power.thrust_n;
  out.shaft_power_w = power.shaft_power_w;
  out.spin_rate_radps2 = power.spin_rate_radps2;
  out.rate.propeller_radps = power.spin_rate_radps2;

  const StripsMet<T> met = strips_met(aircraft, state, flow, power);
  const std::array<T, kStrips>& speed = met.speed_mps;
  std::array<T, kStrips> circulation, relax;
  const T half_rho = T(0.5) * flow.density_kgpm3;
  for (std::size_t i = 0; i < kStrips; ++i) {
    const Strip& strip = aircraft.strips[i];
    const SectionType& section = section_of(type, i);
    const SectionCoefficients<T> c =
        section_coefficients(section, met.angle(i), state.separation[i], met.shift[i]);

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
    const T chords_ps = speed[i] / strip.chord_m;
    const T delay = math::min(chords_ps / section.tau2_chords, T(kFastestSeparation_ps));
    relax[i] = math::min(chords_ps / section.tau1_chords, T(kFastestSeparation_ps));
    out.rate.lagged_alpha_rad[i] = detail::wrapped(T(met.alpha_rad[i] - state.lagged_alpha_rad[i])) * delay;
  }
  const std::array<T, kStrips> quasi_static = static_separations(aircraft, state, met.shift);
  for (std::size_t i = 0; i < kStrips; ++i) {
    T towards = quasi_static[i];
    if (i < kWingStrips) {
      towards = T(0);
      for (std::size_t j = 0; j < kWingStrips; ++j)
        towards = towards + aircraft.separation_spread[i][j] * quasi_static[j];
    }
    out.rate.separation[i] = (towards - state.separation[i]) * relax[i];
  }

  detail::add_body(aircraft, flow, out.force_B, out.moment_B);

  // Induced flow follows the circulation, and shed vorticity is left behind, over some chords of travel.
  const auto induced = [&](const auto& influence, std::size_t first, std::size_t count) {
    for (std::size_t k = 0; k < count; ++k) {
      T steady(0);
      for (std::size_t j = 0; j < count; ++j) steady = steady + influence[k][j] * circulation[first + j];
      const T rate = math::min(speed[first + k] / (kInflowChords * aircraft.strips[first + k].chord_m),
                               T(kFastestInflow_ps));
      out.rate.inflow_mps[first + k] =
          (steady - kShedShare * met.own_normal_mps[first + k] - state.inflow_mps[first + k]) * rate;
    }
  };
  induced(aircraft.wing_influence, 0, kWingStrips);
  induced(aircraft.tail_influence, kWingStrips, kTailStrips);
  induced(aircraft.fin_influence, kWingStrips + kTailStrips, kFinStrips);

  const T airspeed = math::sqrt(dot(flow.velocity_B, flow.velocity_B));
  const T travel = math::min(airspeed / aircraft.wake_travel_m, T(kFastestInflow_ps));
  for (std::size_t k = 0; k < kTailStrips; ++k) {
    T steady(0);
    for (std::size_t j = 0; j < kWingStrips; ++j)
      steady = steady + aircraft.tail_by_wing[k][j] * circulation[j];
    out.rate.downwash_mps[k] = (steady - state.downwash_mps[k]) * travel;
  }
  for (std::size_t k = 0; k < kFinStrips; ++k) {
    T steady(0);
    for (std::size_t j = 0; j < kWingStrips; ++j)
      steady = steady + aircraft.fin_by_wing[k][j] * circulation[j];
    out.rate.sidewash_mps[k] = (steady - state.sidewash_mps[k]) * travel;
  }
  out.rate.wake = (detail::root_separation(state) - state.wake) * travel;

  control_rates(type, state, controls, out.rate);
  return out;
}

}  // namespace stallwright
