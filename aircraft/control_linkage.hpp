#pragma once
#include <vector>

#include "aircraft/airframe_state.hpp"
#include "aircraft/math/elementary.hpp"

namespace stallwright {

/// Effect of the flap at its present angle, interpolated linearly between the settings of the type.
template <class T>
struct FlapEffect {
  T zero_lift_rad{}, stall_rad{}, drag{}, moment{};
};

template <class T>
FlapEffect<T> flap_effect(const std::vector<FlapSetting>& settings, T flap_rad) {
  FlapEffect<T> out;
  out.zero_lift_rad = T(settings[0].zero_lift_shift_rad);
  out.stall_rad = T(settings[0].stall_shift_rad);
  out.drag = T(settings[0].profile_drag);
  out.moment = T(settings[0].moment);
  for (std::size_t k = 1; k < settings.size(); ++k) {
    const FlapSetting& a = settings[k - 1];
    const FlapSetting& b = settings[k];
    const T t =
        math::clamp((flap_rad - a.deflection_rad) / (b.deflection_rad - a.deflection_rad), T(0), T(1));
    out.zero_lift_rad = out.zero_lift_rad + t * (b.zero_lift_shift_rad - a.zero_lift_shift_rad);
    out.stall_rad = out.stall_rad + t * (b.stall_shift_rad - a.stall_shift_rad);
    out.drag = out.drag + t * (b.profile_drag - a.profile_drag);
    out.moment = out.moment + t * (b.moment - a.moment);
  }
  return out;
}

/// Deflection that the linkage asks for at a stick position in -1..1: linear to each stop.
///   towards_positive > 0 drives the trailing edge to its positive stop.
template <class T>
T geared(const ControlSurface& surface, T towards_positive) {
  const T stick = math::clamp(towards_positive, T(-1), T(1));
  return math::where(stick > T(0), stick * surface.max_positive_rad, stick * surface.max_negative_rad);
}

/// Rate of a surface on its way to a deflection: a first-order follow-up of 0.05 s (hands and cables), limited.
template <class T>
T follow_rate(T target, T present, double rate_limit) {
  constexpr double kFollow_s = 0.05;
  return math::clamp((target - present) / kFollow_s, T(-rate_limit), T(rate_limit));
}

/// Rates of every control state for what the hands ask. Aileron is kept as its up-going angle, rolling right +.
template <class T>
void control_rates(const AircraftType& type, const AirframeState<T>& state, const Controls<T>& controls,
                   AirframeState<T>& rate) {
  rate.elevator_rad = follow_rate(geared(type.elevator, -controls.stick_aft), state.elevator_rad,
                                  type.elevator.rate_limit_radps);
  const T roll = math::clamp(controls.stick_right, T(-1), T(1));
  rate.aileron_rad =
      follow_rate(T(roll * type.aileron.max_negative_rad), state.aileron_rad, type.aileron.rate_limit_radps);
  rate.rudder_rad =
      follow_rate(geared(type.rudder, -controls.pedal_right), state.rudder_rad, type.rudder.rate_limit_radps);
  rate.flap_rad = follow_rate(controls.flap_rad, state.flap_rad, type.flap_rate_radps);
  rate.throttle = (math::clamp(controls.throttle, T(0), T(1)) - state.throttle) / type.engine.throttle_lag_s;
}

}  // namespace stallwright
