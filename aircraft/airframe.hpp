#pragma once
#include "aircraft/aircraft.hpp"
#include "aircraft/control_linkage.hpp"
#include "aircraft/propulsion.hpp"
#include "aircraft/section.hpp"

namespace stallwright {

/// Forces and moments of the whole airframe about the centre of gravity.
template <class T>
struct AirframeForces {
  Vec3<T> force_B, moment_B;                    ///< all but weight
  Vec3<T> angular_momentum_B;                   ///< of the propeller, for the gyroscopic term
  std::array<T, kWingStrips> circulation_m2ps;  ///< bound, of every wing strip (see wing_circulation)
  T thrust_n, shaft_power_w, spin_rate_radps2;
};

/// The same, and how the airframe's memory changes.
template <class T>
struct AirframeLoads : AirframeForces<T> {
  AirframeState<T> rate;  ///< d(state)/dt
};

/// Local flow at a strip, in its own chord-normal plane.
template <class T>
struct StripFlow {
  T along_mps, normal_mps, speed_mps, alpha_rad;
};

/// Fastest that any flow memory follows, 1/s: above what an aeroplane of this size shows below V_NE, and inside
/// the stability limit of the 100 Hz step (2.78/0.01 s for RK4) in the wildest upset.
inline constexpr double kFastestSeparation_ps = 200.0;
inline constexpr double kFastestInflow_ps = 40.0;
/// Unsteady lift of a wing: of a sudden normal velocity a section feels this share at once (Wagner: one half) and the rest
/// as the vorticity that it sheds is left behind, over this travel in chords; meanwhile the trailing vorticity builds up.
/// Together they give a wing of aspect ratio A, kappa = a0/(pi A), the indicial lift
///   1 - (1 - kappa)/2 exp(-(1 + kappa) s/kInflowChords)  of its steady one, s in chords;
/// for A = 6 that begins at 0.66 and lacks 0.43 chords of travel in all, Jones's curve 0.64 and 0.47
/// (1 - 0.361 exp(-0.762 s)) [JONES-1940].
inline constexpr double kShedShare = 0.5;  // kInflowChords stands in strip.hpp

namespace detail {

template <class T>
Vec3<T> lift(const Vec3<double>& v) {
  return {T(v.x), T(v.y), T(v.z)};
}

template <class T>
T wrapped(T angle) {
  return angle - math::round(angle * (1.0 / (2.0 * math::kPi))) * (2.0 * math::kPi);
}

}  // namespace detail

/// Deflection of the control on strip i, rad, in the strip's own sense (towards normal_B positive).
template <class T>
T control_deflection(const Aircraft& aircraft, std::size_t i, const AirframeState<T>& state) {
  if (i < kWingStrips) {
    const ControlSurface& a = aircraft.type.aileron;
    // Differential gearing: the aileron that goes down moves by the smaller travel.
    const double ratio = a.max_positive_rad / a.max_negative_rad;
    const T up = i < kWingStrips / 2 ? -state.aileron_rad : state.aileron_rad;  // >0: this aileron goes up
    return math::where(up > T(0), -up, -up * ratio);
  }
  if (i < kWingStrips + kTailStrips) return state.elevator_rad;
  return -state.rudder_rad;  // trailing edge left is away from the fin's normal (right)
}

/// What flap and control do to the section of strip i.
///   flap  of the whole aeroplane at its present angle;  root_x  root_attached of the strip's separation
template <class T>
SectionShift<T> section_shift(const Aircraft& aircraft, std::size_t i, const AirframeState<T>& state,
                              const FlapEffect<T>& flap, T root_x) {
  const Strip& strip = aircraft.strips[i];
  SectionShift<T> shift;
  shift.stall_rad = T(strip.stall_offset_rad);
  if (strip.flap_share > 0.0) {
    shift.zero_lift_rad = shift.zero_lift_rad + strip.flap_share * flap.zero_lift_rad;
    shift.stall_rad = shift.stall_rad + strip.flap_share * flap.stall_rad;
    shift.drag = shift.drag + strip.flap_share * flap.drag;
    shift.moment = shift.moment + strip.flap_share * flap.moment;
  }
  if (strip.control_share > 0.0) {
    const ControlSurface& control = i < kWingStrips                 ? aircraft.type.aileron
                                    : i < kWingStrips + kTailStrips ? aircraft.type.elevator
                                                                    : aircraft.type.rudder;
    const T deflection = control_deflection(aircraft, i, state);
    // A control in separated flow loses grip beyond the loss of slope: the part of the flow that has left the
    // surface ahead of the hinge cannot be turned by it. Taken as sqrt(x), 1 attached.  (tuned to nothing)
    const T grip = math::max(root_x, T(0.2));
    shift.zero_lift_rad =
        shift.zero_lift_rad - strip.control_share * control.effectiveness * grip * deflection;
    shift.stall_rad = shift.stall_rad - strip.control_share * control.stall_shift * deflection;
    shift.drag = shift.drag + strip.control_share * control.drag_per_rad2 * deflection * deflection;
  }
  return shift;
}

/// Normal velocity of strip i before its own induction: its motion, slipstream, flow round the body (wing), downwash of the
/// wing (tail), sidewash of the wing (fin). And the velocity along its chord.
template <class T>
struct StripMotion {
  T along_mps, normal_mps;
};

/// Flow that strip i meets: its motion less the induced inflow.
template <class T>
StripMotion<T> strip_motion(const Aircraft& aircraft, std::size_t i, const AirframeState<T>& state,
                            const RelativeFlow<T>& flow, const Propulsion<T>& power) {
  const Strip& strip = aircraft.strips[i];
  const Vec3<T> r = detail::lift<T>(strip.r_B);
  Vec3<T> v = flow.velocity_B + cross(flow.rate_B, r);
  if (strip.slipstream_share > 0.0) {
    v.x = v.x + strip.slipstream_share * strip.slipstream_growth * power.wash_mps;
    if (i >= kWingStrips) {
      // Swirl turns with the propeller (about +x): air above the axis moves right, so the fin meets flow from
      // the left; the right tail meets air moving down.
      const T swirl = aircraft.type.propeller.swirl_recovery * strip.slipstream_share * power.swirl_radps;
      v.y = v.y + swirl * (strip.r_B.z - aircraft.hub_B.z);
      v.z = v.z - swirl * (strip.r_B.y - aircraft.hub_B.y);
    }
  }
  if (i < kWingStrips) v.z = v.z - strip.body_crossflow * v.y;
  StripMotion<T> out;
  out.along_mps = dot(v, detail::lift<T>(strip.chord_B));
  out.normal_mps = dot(v, detail::lift<T>(strip.normal_B));
  if (i >= kWingStrips + kTailStrips)
    out.normal_mps = out.normal_mps - state.sidewash_mps[i - kWingStrips - kTailStrips];
  else if (i >= kWingStrips)
    out.normal_mps = out.normal_mps - state.downwash_mps[i - kWingStrips];
  return out;
}

template <class T>
T strip_normal(const AirframeState<T>& state, std::size_t i, const StripMotion<T>& motion) {
  return (T(1) - T(kShedShare)) * motion.normal_mps - state.inflow_mps[i];
}
template <class T>
StripFlow<T> strip_flow(const AirframeState<T>& state, std::size_t i, const StripMotion<T>& motion) {
  StripFlow<T> out;
  out.along_mps = motion.along_mps;
  out.normal_mps = strip_normal(state, i, motion);
  out.speed_mps = math::sqrt(out.along_mps * out.along_mps + out.normal_mps * out.normal_mps);
  out.alpha_rad = math::atan2(out.normal_mps, out.along_mps);
  return out;
}

/// Bound circulation of every wing strip, m2/s (Kutta and Joukowski: Gamma = V c c_l/2).
template <class T>
std::array<T, kWingStrips> wing_circulation(const Aircraft& aircraft, const AirframeState<T>& state,
                                            const RelativeFlow<T>& flow);

/// Velocity of the air at the AOA probe relative to it, as the probe meets it: motion less the wing's induction.
///   circulation  of the wing's strips, as wing_circulation or the loads give it
template <class T>
Vec3<T> probe_velocity(const Aircraft& aircraft, const RelativeFlow<T>& flow,
                       const std::array<T, kWingStrips>& circulation);
template <class T>
Vec3<T> probe_velocity(const Aircraft& aircraft, const AirframeState<T>& state, const RelativeFlow<T>& flow);

/// Loads and rates of the whole airframe, put where the caller has room for them. Pure: no clock, no random numbers, nothing kept.
/// Valid for any attitude to the flow and any speed from rest to about 1.2 V_NE (see kFastestSeparation_ps).
template <class T>
void find_airframe_loads(const Aircraft& aircraft, const AirframeState<T>& state, const RelativeFlow<T>& flow,
                         const Controls<T>& controls, AirframeForces<T>& out, AirframeState<T>& rate);
template <class T>
AirframeLoads<T> airframe_loads(const Aircraft& aircraft, const AirframeState<T>& state,
                                const RelativeFlow<T>& flow, const Controls<T>& controls);

}  // namespace stallwright

#include "aircraft/airframe_impl.hpp"
