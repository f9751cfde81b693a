#include "sim/air/turbulence_intensity.hpp"

#include <array>
#include <stdexcept>

namespace stallwright {

namespace {

struct ExceedanceRow {
  double probability;
  std::array<double, 12> sigma_ftps;
};

// [MIL-F-8785C fig. 7]: RMS gust by height and probability of exceedance, ft/s. For the named severities the 500 ft point is
// used by nothing but the shape of the curve.
constexpr std::array<double, 12> kHeight_ft{500,   1750,  3750,  7500,  15000, 25000,
                                            35000, 45000, 55000, 65000, 75000, 80000};
constexpr std::array<ExceedanceRow, 7> kExceedance{{
    {2e-1, {3.2, 2.2, 1.5, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0}},
    {1e-1, {4.2, 3.6, 3.3, 1.6, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0}},
    {1e-2, {6.6, 6.9, 7.4, 6.7, 4.6, 2.7, 0.4, 0.0, 0.0, 0.0, 0.0, 0.0}},
    {1e-3, {8.6, 9.6, 10.6, 10.1, 8.0, 6.6, 5.0, 4.2, 2.7, 0.0, 0.0, 0.0}},
    {1e-4, {11.8, 13.0, 16.0, 15.1, 11.6, 9.7, 8.1, 8.2, 7.9, 4.9, 3.2, 2.1}},
    {1e-5, {15.6, 17.6, 23.0, 23.6, 22.1, 20.0, 16.0, 15.1, 12.1, 7.9, 6.2, 5.1}},
    {1e-6, {18.7, 21.5, 28.4, 30.2, 30.7, 31.0, 25.2, 23.1, 17.5, 10.7, 8.4, 7.2}},
}};

struct SeverityRow {
  const char* name;
  double wind_at_20_ft_kt, probability;  ///< 0: no turbulence
};
constexpr std::array<SeverityRow, 4> kRows{
    {{"calm", 0.0, 0.0}, {"light", 15.0, 1e-1}, {"moderate", 30.0, 1e-3}, {"severe", 45.0, 1e-5}}};

/// Curve of a severity, ft/s.
std::array<double, 12> curve_ftps(const SeverityRow& severity) {
  for (const ExceedanceRow& row : kExceedance)
    if (row.probability == severity.probability) return row.sigma_ftps;
  return {};
}

const SeverityRow& row_of(Severity severity) { return kRows[static_cast<std::size_t>(severity)]; }

}  // namespace

std::string severity_name(Severity severity) { return row_of(severity).name; }

std::optional<Severity> severity_from_name(const std::string& name) {
  for (std::size_t i = 0; i < kRows.size(); ++i)
    if (name == kRows[i].name) return static_cast<Severity>(i);
  return std::nullopt;
}

TurbulenceIntensity turbulence_intensity(Severity severity) {
  const SeverityRow& row = row_of(severity);
  TurbulenceIntensity result{0.1 * row.wind_at_20_ft_kt * kKnot, true, {}, {}};
  const std::array<double, 12> sigma_ftps = curve_ftps(row);
  for (std::size_t i = 0; i < kHeight_ft.size(); ++i) {
    result.height_m.push_back(kHeight_ft[i] * kFoot);
    result.sigma_mps.push_back(sigma_ftps[i] * kFoot);
  }
  return result;
}

TurbulenceIntensity uniform_intensity(double sigma_mps) {
  if (!(sigma_mps >= 0.0 && sigma_mps <= 20.0)) throw std::invalid_argument("sigma_mps: expected 0 to 20");
  return {sigma_mps, false, {0.0}, {sigma_mps}};
}

std::optional<double> uniform_sigma(const TurbulenceIntensity& intensity) {
  const bool uniform = !intensity.low_layer_anisotropic && intensity.sigma_mps.size() == 1 &&
                       intensity.sigma_mps.front() == intensity.low_sigma_w_mps &&
                       intensity.convective_height_m.empty();
  return uniform ? std::optional(intensity.low_sigma_w_mps) : std::nullopt;
}

double exceedance_sigma_mps(double probability, double height_m) {
  if (!(probability >= kExceedance.back().probability && probability <= kExceedance.front().probability))
    throw std::invalid_argument("probability: expected 1e-6 to 0.2");
  const std::vector<double> heights(kHeight_ft.begin(), kHeight_ft.end());
  const auto at = [&](const ExceedanceRow& row) {
    return kFoot *
           math::interpolate(heights, {row.sigma_ftps.begin(), row.sigma_ftps.end()}, height_m / kFoot);
  };
  std::size_t i = 1;
  while (i + 1 < kExceedance.size() && kExceedance[i].probability > probability) ++i;
  const ExceedanceRow &more = kExceedance[i - 1], &less = kExceedance[i];
  const double share =
      math::log(probability / more.probability) / math::log(less.probability / more.probability);
  return at(more) + share * (at(less) - at(more));
}

double severity_sigma_kt(Severity severity, double height_agl_m) {
  return turbulence_scales(turbulence_intensity(severity), height_agl_m).sigma_w_mps / kKnot;
}

}  // namespace stallwright
