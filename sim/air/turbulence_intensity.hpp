#pragma once
#include <optional>
#include <string>
#include <vector>

#include "aircraft/math/elementary.hpp"
#include "aircraft/math/table.hpp"
#include "aircraft/math/units.hpp"
#include "sim/air/turbulence_model.hpp"

/// How strong the turbulence is and how long its eddies, by height above the ground. [MIL-F-8785C 3.7]
///
///   10 to 1000 ft:  sigma_w = 0.1 W20,  sigma_u = sigma_v = sigma_w / (0.177 + 0.000823 h)^0.4
///                   L_w = h,            L_u = L_v = h / (0.177 + 0.000823 h)^1.2
///   above 2000 ft:  sigma_u = sigma_v = sigma_w from the exceedance curve of the severity,
///                   L = 1750 ft for Dryden's spectra, 2500 ft for von Karman's
///   between:        straight lines from the values at 1000 ft to those at 2000 ft
///     h  height above ground, ft, here only;  W20  mean wind at 20 ft
///   light: W20 15 kt and the 1e-1 curve;  moderate: 30 kt, 1e-3;  severe: 45 kt, 1e-5;  calm: none
/// Below 10 ft the values at 10 ft hold, above 80,000 ft those at 80,000 ft.
/// Known kink of the source: the two intensities come from different pictures and need not be alike (light:
/// sigma_w 1.5 kt at 1000 ft, 2.1 kt at 2000 ft); the light curve ends at 15,000 ft, above which light air is
/// still.
namespace stallwright {

enum class Severity { kCalm, kLight, kModerate, kSevere };

/// "calm", "light", "moderate", "severe", and back; an unknown word gives nothing.
std::string severity_name(Severity severity);
std::optional<Severity> severity_from_name(const std::string& name);

/// Intensity as the step needs it; made once by one of the functions below.
struct TurbulenceIntensity {
  double low_sigma_w_mps = 0.0;       ///< below 1000 ft
  bool low_layer_anisotropic = true;  ///< whether sigma_u and sigma_v grow towards the ground
  std::vector<double> height_m;       ///< axis of the exceedance curve
  std::vector<double> sigma_mps;      ///< one for each height
  /// Convection on top of it (convection.hpp), empty without: variances add, scale lengths by share of variance.
  std::vector<double> convective_height_m{}, convective_sigma_u_mps{}, convective_sigma_w_mps{};
  double convective_length_m = 0.0;
  double high_length_m =
      stallwright::high_length_m(TurbulenceModel::kDryden);  ///< scale length above 2000 ft
  friend bool operator==(const TurbulenceIntensity&, const TurbulenceIntensity&) = default;
};

TurbulenceIntensity turbulence_intensity(Severity severity);
/// The same sigma for u, v and w at every height; the scale lengths still follow the height.
TurbulenceIntensity uniform_intensity(double sigma_mps);
/// The sigma of such an intensity; none: another one, or convection on top.
std::optional<double> uniform_sigma(const TurbulenceIntensity& intensity);

/// Standard deviation (m/s) and scale length (m) of each gust component.
template <class T>
struct TurbulenceScales {
  T sigma_u_mps, sigma_v_mps, sigma_w_mps, length_u_m, length_v_m, length_w_m;
};

/// Scales of the specification with those of convection added.
template <class T>
TurbulenceScales<T> with_convection(const TurbulenceIntensity& intensity, const T& height_m,
                                    const TurbulenceScales<T>& s) {
  const T length(intensity.convective_length_m);
  const auto join = [&](const std::vector<double>& table, T& sigma, T& scale) {
    const T more = math::interpolate(intensity.convective_height_m, table, height_m);
    const T variance = sigma * sigma + more * more;
    scale =
        math::where(variance > T(0),
                    (sigma * sigma * scale + more * more * length) / math::max(variance, T(1e-12)), scale);
    sigma = math::sqrt(variance);
  };
  TurbulenceScales<T> out = s;
  join(intensity.convective_sigma_u_mps, out.sigma_u_mps, out.length_u_m);
  out.sigma_v_mps = out.sigma_u_mps;
  out.length_v_m = out.length_u_m;
  join(intensity.convective_sigma_w_mps, out.sigma_w_mps, out.length_w_m);
  return out;
}

template <class T>
TurbulenceScales<T> turbulence_scales(const TurbulenceIntensity& intensity, const T& height_m) {
  const T low_ft = math::clamp(height_m / T(kFoot), T(10.0), T(1000.0));
  const T log_bracket = math::log(T(0.177) + T(0.000823) * low_ft);
  const T low_w(intensity.low_sigma_w_mps);
  // 0.4, as the specification prints it; copies with 1.2 here are in circulation and wrong.
  const T low_u = intensity.low_layer_anisotropic ? low_w * math::exp(T(-0.4) * log_bracket) : low_w;
  const T low_length_w = low_ft * T(kFoot);
  const T low_length_u = low_length_w * math::exp(T(-1.2) * log_bracket);

  const T high =
      math::interpolate(intensity.height_m, intensity.sigma_mps, math::max(height_m, T(2000.0 * kFoot)));
  const T high_length(intensity.high_length_m);
  // Below 1000 ft the share is 0 and above 2000 ft it is 1, so one line serves the three layers.
  const T share = math::clamp(height_m / T(1000.0 * kFoot) - T(1.0), T(0.0), T(1.0));
  const auto mix = [&share](const T& low, const T& top) { return low + share * (top - low); };
  const T sigma_u = mix(low_u, high), length_u = mix(low_length_u, high_length);
  const TurbulenceScales<T> scales{sigma_u,  sigma_u,  mix(low_w, high),
                                   length_u, length_u, mix(low_length_w, high_length)};
  return intensity.convective_height_m.empty() ? scales : with_convection(intensity, height_m, scales);
}

/// RMS gust that is exceeded with this probability, m/s: figure 7 of the specification, straight between its heights and
/// in the logarithm of the probability; below 500 ft and above 80,000 ft its ends hold.
/// Throws std::invalid_argument outside 1e-6 to 0.2.
double exceedance_sigma_mps(double probability, double height_m);

/// Standard deviation of the vertical gust, kt, for a page or a label.
double severity_sigma_kt(Severity severity, double height_agl_m);

}  // namespace stallwright
