#pragma once
#include <cstdint>
#include <variant>

#include "sim/air/dryden.hpp"
#include "sim/air/turbulence_model.hpp"
#include "sim/air/von_karman.hpp"

/// Turbulence of a sortie in the form that its air preset names, for whoever steps it. Each form has its own random
/// channels, so choosing one leaves the numbers of the other as they were.
namespace stallwright {

/// Memory of whichever filters are in use.
using TurbulenceState = std::variant<DrydenState<double>, VonKarmanState<double>>;

/// Drawn from the stationary distribution.
inline TurbulenceState stationary_start(TurbulenceModel model, const TurbulenceScales<double>& scales,
                                        double span_m, const random::Key& key) {
  if (model == TurbulenceModel::kVonKarman)
    return stationary_start(VonKarmanParams<double>{scales, span_m}, von_karman_noise(key, 0, true));
  return stationary_start(DrydenParams<double>{scales, span_m}, dryden_noise(key, 0, true));
}

/// One step later.
///   tick  number of the step within the sortie
inline TurbulenceState advance(const TurbulenceState& state, const TurbulenceScales<double>& scales,
                               double span_m, double airspeed_mps, double dt_s, const random::Key& key,
                               std::uint64_t tick) {
  if (const auto* x = std::get_if<VonKarmanState<double>>(&state))
    return advance(VonKarmanParams<double>{scales, span_m}, *x, airspeed_mps, dt_s,
                   von_karman_noise(key, tick));
  return advance(DrydenParams<double>{scales, span_m}, std::get<DrydenState<double>>(state), airspeed_mps,
                 dt_s, dryden_noise(key, tick));
}

/// What the air does at this state.
inline Gust<double> gust(const TurbulenceState& state, const TurbulenceScales<double>& scales,
                         double span_m) {
  if (const auto* x = std::get_if<VonKarmanState<double>>(&state))
    return gust(VonKarmanParams<double>{scales, span_m}, *x);
  return gust(DrydenParams<double>{scales, span_m}, std::get<DrydenState<double>>(state));
}

}  // namespace stallwright
