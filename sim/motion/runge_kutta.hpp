#pragma once
#include <array>
#include <bit>
#include <cstddef>
#include <type_traits>

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
  static_assert(sizeof(State) % sizeof(T) == 0 && std::is_trivially_copyable_v<State>);
  constexpr std::size_t n = sizeof(State) / sizeof(T);
  State at = y;
  T* to = reinterpret_cast<T*>(&at);
  const T* from = reinterpret_cast<const T*>(&y);
  const auto move = [&](T step, const State& slope) {
    const T* k = reinterpret_cast<const T*>(&slope);
    for (std::size_t i = 0; i < n; ++i) to[i] = from[i] + step * k[i];
  };
  move(T(0.5) * h, k1);
  const State k2 = f(at);
  move(T(0.5) * h, k2);
  const State k3 = f(at);
  move(h, k3);
  const State k4 = f(at);
  const T *a1 = reinterpret_cast<const T*>(&k1), *a2 = reinterpret_cast<const T*>(&k2),
          *a3 = reinterpret_cast<const T*>(&k3), *a4 = reinterpret_cast<const T*>(&k4);
  const T sixth = h / T(6);
  for (std::size_t i = 0; i < n; ++i) to[i] = from[i] + sixth * (a1[i] + T(2) * (a2[i] + a3[i]) + a4[i]);
  return at;
}
template <class T, class State, class Derivative>
State runge_kutta_step(const State& y, T h, Derivative&& f) {
  return runge_kutta_step(y, h, f(y), f);
}

}  // namespace stallwright
