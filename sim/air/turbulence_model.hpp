#pragma once
#include <string>

#include "aircraft/math/units.hpp"

/// Which of the specification's two forms the spectra of continuous turbulence have. [MIL-F-8785C 3.7]
///   Dryden      rational spectra that fall as the frequency squared: dryden.hpp
///   von Karman  spectra that fall with the power 5/3, as measured ones do: von_karman.hpp
/// Both use the same intensities. Up to 1000 ft they use the same scale lengths too; above 2000 ft L is 1750 ft for
/// Dryden and 2500 ft for von Karman, which puts the knee of the two vertical spectra near each other.
namespace stallwright {

enum class TurbulenceModel { kDryden, kVonKarman };

/// "dryden", "von-karman".
inline std::string turbulence_model_name(TurbulenceModel model) {
  return model == TurbulenceModel::kDryden ? "dryden" : "von-karman";
}

/// Scale length above 2000 ft, m.
constexpr double high_length_m(TurbulenceModel model) {
  return (model == TurbulenceModel::kDryden ? 1750.0 : 2500.0) * kFoot;
}

}  // namespace stallwright
