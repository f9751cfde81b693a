#pragma once
#include "aircraft/math/elementary.hpp"

namespace stallwright {

/// One exact step of a first-order lag of white noise (Ornstein and Uhlenbeck), of unit variance whatever the step:
///   x <- e^-h x + sqrt(1 - e^-2h) n,   h  step over the lag's length or time, 0 or more;  n  standard normal
template <class T>
T lag_step(const T& state, const T& h, const T& noise) {
  const T phi = math::exp(-h);
  return phi * state + math::sqrt(math::max(T(1.0) - phi * phi, T(0.0))) * noise;
}

}  // namespace stallwright
