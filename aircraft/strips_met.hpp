#pragma once
// What the air does to every strip of the airframe; part of airframe.hpp, which includes it.

namespace stallwright {

/// Velocity deficit of the wing's separated wake where tail or fin stand full in it, and the wake's half width in
/// mean chords (order of magnitude from tests of wakes behind stalled wings; from memory).
inline constexpr double kWakeDeficit = 0.25;
inline constexpr double kWakeHalfWidthChords = 0.5;
/// Flow-angle shake at tail and fin, as a share of the airspeed, full in the wake.
inline constexpr double kWakeShake = 0.06;

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
      (place.wake_rise_m - place.wake_arm_m * slope) * (1.0 / (kWakeHalfWidthChords * aircraft.mean_chord_m));
  const T bell = math::exp_within(-math::min(off * off, T(40)));
  return on_fin ? math::where(off < T(0), T(1), bell) : bell;
}

}  // namespace detail

/// What every strip meets. An array a quantity: each step below is a loop without branches whose rounds do not wait for each
/// other, which a compiler turns into vector instructions and a processor overlaps.
template <class T>
struct StripsMet {
  std::array<T, kStrips> own_normal_mps;  ///< before induction
  std::array<T, kStrips> along_mps, normal_mps, speed_mps, alpha_rad;
  std::array<T, kStrips> root_attached;       ///< sqrt of the separation point
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
  const FlapEffect<T> flap = flap_effect(aircraft.type.flaps, state.flap_rad);
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
    met.root_attached[i] = root_attached(state.separation[i]);
    met.shift[i] = section_shift(aircraft, i, state, flap, met.root_attached[i]);
    zero_lift[i] = section_of(aircraft.type, i).zero_lift_rad + met.shift[i].zero_lift_rad;
  }
  for (std::size_t i = 0; i < kStrips; ++i)
    met.speed_mps[i] =
        math::sqrt(met.along_mps[i] * met.along_mps[i] + met.normal_mps[i] * met.normal_mps[i]);
  for (std::size_t i = 0; i < kStrips; ++i)
    met.alpha_rad[i] = math::atan2(met.normal_mps[i], met.along_mps[i]);
  for (std::size_t i = 0; i < kStrips; ++i) {
    const T per_speed = T(1) / math::max(met.speed_mps[i], T(1e-9));  // at rest there is no force to turn
    const SectionAngle<T> angle =
        section_angle(met.normal_mps[i] * per_speed, met.along_mps[i] * per_speed, zero_lift[i]);
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
  std::array<T, kStrips> exponent, x;
  for (std::size_t i = 0; i < kStrips; ++i)
    exponent[i] = separation_exponent(section_of(aircraft.type, i), aircraft.strips[i].per_stall_width,
                                      detail::wrapped(state.lagged_alpha_rad[i]), shift[i].stall_rad);
  for (std::size_t i = 0; i < kStrips; ++i)
    x[i] = attached_share(math::exp_within(exponent[i]), aircraft.strips[i].separation_gap);
  return x;
}

}  // namespace stallwright
