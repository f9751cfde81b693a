#pragma once
#include "aircraft/math/elementary.hpp"

/// How a sampled instrument follows its input and how finely it shows it.
///
/// A first-order lag, tau dy/dt + y = u, taken over one sample in closed form with the input straight between
/// samples:
///   y1 = u1 + a (y0 - u0) - g (u1 - u0),   a = exp(-dt/tau),   g = (1 - a) tau/dt
///     u, y  input and output, any unit;  tau  time constant, s;  dt  sample interval, s
/// On a ramp the output trails by exactly tau du/dt; in steady conditions it equals the input to the last
/// bit. Holding the input flat over the sample instead would move every reading by half a sample, as much as
/// the tubes do. Below 1 microsecond a lag is none. A tau that changes is taken as constant within the
/// sample.
namespace stallwright {

inline constexpr double kLeastLag_s = 1e-6;

/// What one sample does to a lag of a given time constant.
template <class T>
struct LagStep {
  T decay{}, hold{};  ///< a, g above
};

template <class T>
LagStep<T> lag_step(const T& tau_s, double sample_s) {
  const T x = T(sample_s) / math::max(tau_s, T(kLeastLag_s));
  const T decay = math::exp(T(0.0) - x);
  const T hold = (T(1.0) - decay) / x;
  const auto some = tau_s > T(kLeastLag_s);
  return {math::where(some, decay, T(0.0)), math::where(some, hold, T(0.0))};
}

/// A lag's memory.
template <class T>
struct Lag {
  T output{}, input{};
  friend bool operator==(const Lag&, const Lag&) = default;
};

/// A lag that has been at this input for long.
template <class T>
Lag<T> settled_lag(const T& input) {
  return {input, input};
}

template <class T>
Lag<T> followed(const Lag<T>& lag, const T& input, const LagStep<T>& step) {
  return {input + step.decay * (lag.output - lag.input) - step.hold * (input - lag.input), input};
}

/// An angle less its whole turns, -pi to pi.
template <class T>
T within_half_turn(const T& angle_rad) {
  return angle_rad - math::round(angle_rad / T(2.0 * math::kPi)) * T(2.0 * math::kPi);
}

/// A heading, 0 to below 2 pi.
template <class T>
T as_heading(const T& angle_rad) {
  const T half = within_half_turn(angle_rad);
  const T whole = math::where(half < T(0.0), half + T(2.0 * math::kPi), half);
  // A negative angle too small to see rounds up to a full turn, which is north again.
  return math::where(whole < T(2.0 * math::kPi), whole, T(0.0));
}

/// The lag of an angle goes the short way round.
template <class T>
Lag<T> followed_angle(const Lag<T>& lag, const T& input_rad, const LagStep<T>& step) {
  return {input_rad + step.decay * within_half_turn(T(lag.output - lag.input)) -
              step.hold * within_half_turn(T(input_rad - lag.input)),
          input_rad};
}

/// The nearest multiple of the step; a step of zero shows every digit.
///   error of a signal that moves over many steps: evenly spread, standard deviation step/sqrt(12)
template <class T>
T quantised(const T& value, const T& step) {
  return math::where(step > T(0.0), math::round(T(value / step)) * step, value);
}

}  // namespace stallwright
