#pragma once
#include <array>
#include <bit>
#include <cstddef>

namespace stallwright {

/// A state made of nothing but numbers of type T, seen as one array (and back). No copy survives optimisation.
template <class T, class State>
using AsArray = std::array<T, sizeof(State) / sizeof(T)>;

/// One step of the classical fourth-order Runge-Kutta method for dy/dt = f(y), f constant in time over the step.
///   k1 = f(y), k2 = f(y + h/2 k1), k3 = f(y + h/2 k2), k4 = f(y + h k3), y' = y + h/6 (k1 + 2 k2 + 2 k3 + k4)
/// Global error O(h^4) while f is smooth. State must hold numbers of type T only.
///   k1  f(y), where it is known already
template <class T, class State, class Derivative>
State runge_kutta_step(const State& y, T h, const State& k1, Derivative&& f) {
  static_assert(sizeof(State) % sizeof(T) == 0);
  using Array = AsArray<T, State>;
  const auto array = [](const State& s) { return std::bit_cast<Array>(s); };
  const auto moved = [&](T step, const State& slope) {
    Array to = array(y);
    const Array k = array(slope);
    for (std::size_t i = 0; i < to.size(); ++i) to[i] = to[i] + step * k[i];
    return std::bit_cast<State>(to);
  };
  const State k2 = f(moved(T(0.5) * h, k1));
  const State k3 = f(moved(T(0.5) * h, k2));
  const State k4 = f(moved(h, k3));
  const Array a1 = array(k1), a2 = array(k2), a3 = array(k3), a4 = array(k4);
  Array to = array(y);
  const T sixth = h / T(6);
  for (std::size_t i = 0; i < to.size(); ++i)
    to[i] = to[i] + sixth * (a1[i] + T(2) * (a2[i] + a3[i]) + a4[i]);
  return std::bit_cast<State>(to);
}
template <class T, class State, class Derivative>
State runge_kutta_step(const State& y, T h, Derivative&& f) {
  return runge_kutta_step(y, h, f(y), f);
}

}  // namespace stallwright
